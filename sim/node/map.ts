import { operatingMap } from '../map/map.ts';
import { mapCsv, mapJson, mapText } from '../map/text.ts';
import type { Problem, Scenario } from '../scenario/scenario.ts';
import { writeLines } from './files.ts';

/** What a call wants of a map, as it was typed. */
export interface MapWishes {
  readonly json: boolean;
  readonly csv: string | undefined;
  readonly plane: string | undefined;
  readonly bottom: string | undefined;
  readonly top: string | undefined;
}

/** Handle positions every 15°, from shut to open, and shares and speeds that fit a terminal. */
const HANDLES = [0, 1, 2, 3, 4, 5, 6].map((n) => n / 6);
const SPEEDS = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
const SHARES = [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1];
const FEWEST = 2;

/** Everything that is wrong with the wishes at once. */
export function mapProblems({ plane, bottom, top }: Omit<MapWishes, 'json' | 'csv'>): Problem[] {
  const problems: Problem[] = [];
  if (plane && plane !== 'valves' && plane !== 'flow')
    problems.push({ place: '--plane', found: JSON.stringify(plane), wanted: 'valves or flow' });
  for (const [place, text] of [
    ['--bottom', bottom],
    ['--top', top],
  ] as const) {
    if (!text) continue;
    const wanted = 'openings from 0 to 1, ascending, at least two, as 0,0.5,1';
    if (openingsOf(text) === undefined) problems.push({ place, found: JSON.stringify(text), wanted });
    else if (plane === 'flow')
      problems.push({ place, found: 'it with --plane flow', wanted: 'it with --plane valves' });
  }
  return problems;
}

function openingsOf(text: string): number[] | undefined {
  const openings = text.split(',').map((each) => (each.trim() === '' ? Number.NaN : Number(each)));
  const ascend = openings.every((each, i) => each >= 0 && each <= 1 && (i === 0 || each > openings[i - 1]));
  return ascend && openings.length >= FEWEST ? openings : undefined;
}

/** The operating map of a site, printed; its rows are written by the way. A site that has none answers why. */
export function mapCommand(s: Scenario, wishes: MapWishes): { output: string; code: 0 } {
  const { json, csv } = wishes;
  const plane = wishes.plane === 'flow' ? 'flow' : 'valves';
  const x = wishes.bottom === undefined ? undefined : openingsOf(wishes.bottom);
  const y = wishes.top === undefined ? undefined : openingsOf(wishes.top);
  const map = operatingMap(s, { plane, ...(x && { x }), ...(y && { y }) });
  if (!map.ok)
    return { output: json ? `${JSON.stringify({ title: s.title, ...map }, null, 2)}\n` : `${map.says}\n`, code: 0 };
  if (csv !== undefined) writeLines(csv, mapCsv(map));
  if (json) return { output: `${JSON.stringify(mapJson(s, map), null, 2)}\n`, code: 0 };
  const coarse = operatingMap(s, plane === 'valves' ? { x: HANDLES, y: HANDLES } : { plane, x: SPEEDS, y: SHARES });
  return { output: coarse.ok ? mapText(s, map, coarse) : `${coarse.says}\n`, code: 0 };
}
