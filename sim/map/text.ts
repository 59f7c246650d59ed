/** A map for a terminal, as rows, and as a table file. */
import { displayName, SAFETY } from '../results/summary.ts';
import { columns, hang, printable } from '../results/textLayout.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { BalanceCheck, MapPoint, OperatingMap } from './answer.ts';
import { mapSentences, regionWords } from './region-words.ts';
import { closed, NOT_MAPPED, shareWords } from './words.ts';

/** Width of a map's text, columns: seven settings side by side fit a terminal as it opens. */
const WIDTH = 80;

/** Checks by words of at most eight letters. */
const CELLS: Readonly<Record<BalanceCheck, string>> = {
  falls: 'falls',
  channeling: 'channels',
  headroom: 'headroom',
  reach: 'reach',
  velocity: 'velocity',
  duty: 'duty',
};

/** What stands in a cell of the table: the check that fails, or that all hold. */
const cell = ({ found, fails }: MapPoint): string => (found ? (fails === null ? 'holds' : CELLS[fails]) : '–');

/**
 * Where the present point lies, where all checks hold, and a coarse table of the plane.
 *
 * @param coarse the same plane at few points, as it fits a terminal
 */
export function mapText({ title, display }: Scenario, map: OperatingMap, coarse: OperatingMap): string {
  const sentences = [...mapSentences(map, display), ...map.says, NOT_MAPPED];
  const blocks = [
    hang('', `${printable(title)} · operating map · ${displayName(display)}`, 0, WIDTH),
    sentences.map((sentence) => hang('', sentence, 0, WIDTH)).join('\n'),
    tableText(coarse),
    SAFETY,
  ];
  return `${blocks.join('\n\n')}\n`;
}

function tableText({ plane, x, y, points }: OperatingMap): string {
  const words = plane === 'valves' ? angleWords : shareWords;
  const head = plane === 'valves' ? VALVES : FLOW;
  const rows = y.map((value, j) => [words(value), ...x.map((_, i) => cell(points[j * x.length + i]))]);
  const told = 'In each place the check that fails first:';
  return [hang('', `${head}. ${told}`, 0, WIDTH), columns([['', ...x.map(words)], ...rows.reverse()], 0)].join('\n');
}

const VALVES = 'Bottom valve across, top valve down, by the angle that each is closed';
const FLOW = 'Pump’s speed across, share by the bottom feed down';

/** 'open', '75°', 'shut'. */
function angleWords(opening: number): string {
  const angle = Math.round(closed(opening));
  return angle === 0 ? 'open' : angle >= 90 ? 'shut' : `${angle}°`;
}

export interface MapRow {
  readonly bottom: number | null;
  readonly top: number | null;
  readonly speed: number;
  readonly flow: number | null;
  readonly split: number | null;
  readonly channeled: number | null;
  readonly lift: number | null;
  readonly ebct: number | null;
  readonly pore: number | null;
  readonly headroom: number | null;
  readonly stone: number | null;
  readonly fails: string | null;
}

/** A point as a row of the answer: SI, openings and shares as fractions; what does not exist is null. */
export function rowOf(point: MapPoint): MapRow {
  const { bottom, top, speed, flow, split, channeled, lift, emptyBed, pore, headroom, stone, fails } = point;
  return { bottom, top, speed, flow, split, channeled, lift, ebct: emptyBed, pore, headroom, stone, fails };
}

const HEAD: readonly (readonly [keyof MapRow, string])[] = [
  ['bottom', 'bottom valve'],
  ['top', 'top valve'],
  ['speed', 'speed'],
  ['flow', 'main[m3/s]'],
  ['split', 'split'],
  ['channeled', 'channeled'],
  ['lift', 'lift'],
  ['ebct', 'empty bed contact[s]'],
  ['pore', 'pore contact[s]'],
  ['headroom', 'headroom[m]'],
  ['stone', 'main stone[m3/s]'],
  ['fails', 'fails'],
];

/** Rows as a CSV file (RFC 4180), SI; what does not exist is left empty. In the plane of flow its two axes come first. */
export function* mapCsv({ plane, points }: OperatingMap): Generator<string, void> {
  const axes = plane === 'flow' ? ['share asked'] : [];
  yield `${[...axes, ...HEAD.map(([, name]) => name)].join(',')}\r\n`;
  for (const point of points) {
    const row = rowOf(point);
    const figures = HEAD.map(([key]) => row[key] ?? '');
    yield `${[...(plane === 'flow' ? [point.y] : []), ...figures].join(',')}\r\n`;
  }
}

/** The answer as one object. */
export function mapJson({ title }: Scenario, map: OperatingMap): object {
  const { plane, now, along, fullSpeed, over, miss, says, points, x, y } = map;
  const sentences = regionWords(map);
  // What a map misses shows by its every second point: where there is none, it is not known.
  const known = x.length > 2 && y.length > 2 ? { miss } : {};
  return {
    title,
    plane,
    x,
    y,
    now: rowOf(now),
    along,
    fullSpeed,
    over,
    ...known,
    says,
    sentences,
    rows: points.map(rowOf),
  };
}
