import type { Action } from '../scenario/scenario.ts';

const DAY = 86400;

/** Hours of a day in which daily timetables have the pump on; all day where there is none. */
export function hoursADay(actions: readonly Action[]): number {
  const edges = actions
    .flatMap((action) => ('daily' in action ? action.daily.map((at, i) => ({ at: at % DAY, on: i % 2 === 0 })) : []))
    .sort((a, b) => a.at - b.at);
  if (edges.length === 0) return 24;
  let seconds = 0;
  edges.forEach(({ at, on }, i) => {
    const next = i + 1 < edges.length ? edges[i + 1].at : edges[0].at + DAY;
    if (on) seconds += next - at;
  });
  return seconds / 3600;
}
