/** What is told beside a dye: where it is now, and in what part of a run it was poured. */
import type { DyeWatch } from '../../sim/dye/answer.ts';
import { formatDuration, formatPercent } from '../../sim/quantity/index.ts';
import type { DyeGiven, DyeIn } from '../engine/filter-asked.ts';
import { rowAt } from '../state/moment.ts';

/** Parts of the dye under this are not told. */
const TOLD = 0.005;

/** '2 min 10 s after it was poured: 31 % below the rack, 52 % among the media, 2 % beside them, 9 % above, 6 % over the lip.' */
export function whereWords(watch: DyeWatch, t: number): string {
  const since = t - watch.at;
  if (since < 0) return `The dye is poured ${formatDuration(-since)} from now.`;
  const row = rowAt(watch.t, t);
  const sum = (...kinds: string[]): number => partOf(watch, row, ...kinds);
  const parts = [
    [sum('plenum'), 'under the rack'],
    [sum('tank'), 'among the media'],
    [sum('gap'), 'in the gap'],
    [sum('beside'), 'in still water beside them'],
    [sum('free'), 'above them'],
    [sum('basin'), 'beyond the lip'],
    [sum('lost'), 'lost with water that left'],
  ] as const;
  const told = parts.filter(([part]) => part >= TOLD).map(([part, where]) => `${formatPercent(part)} ${where}`);
  return `${formatDuration(since)} after it was poured: ${told.join(', ')}.`;
}

/** '31 % of the dye is out after 3 min': beyond the lip, and not yet back. */
export function beyondWords(watch: DyeWatch, t: number): string {
  const since = t - watch.at;
  if (since < 0) return `the dye is poured ${formatDuration(-since)} from now`;
  const beyond = partOf(watch, rowAt(watch.t, t), 'basin', 'lost');
  return `${formatPercent(beyond)} of the dye is out after ${formatDuration(since)}`;
}

/** Part of the dye in places of some kinds at a row of its watch. */
const partOf = (watch: DyeWatch, row: number, ...kinds: readonly string[]): number =>
  watch.places.filter(({ kind }) => kinds.includes(kind)).reduce((all, { mass }) => all + mass[row], 0) / watch.mass;

/** Why the case kept has no curve; '' where it has one. */
export function keptWords(kept: DyeIn | null): string {
  if (kept === null) return 'As kept: this case has no run.';
  return kept.test.fed ? '' : `As kept: ${kept.test.says}`;
}

/** Why two cases have no curves beside each other, or none yet; '' where both have theirs. */
export function bothWords(given: DyeGiven | undefined): string {
  if (given?.kept === undefined) return 'The dye is being computed …';
  const { kept, test } = given;
  const there = keptWords(kept);
  const here = test.fed ? there && 'The curve is that of the present case.' : `Now: ${test.says}`;
  return [there, here].filter((words) => words !== '').join(' ');
}

const SPEEDS = [1, 2, 5, 10, 20, 30, 50, 100, 200, 500, 1000];
/** A dye is played within about this long, s. */
const PLAYED = 30;

/** How many times as fast as in truth a dye that lasts so many seconds is played. */
export const playedAt = (lasts: number): number => SPEEDS.find((each) => lasts / each <= PLAYED) ?? 2000;
