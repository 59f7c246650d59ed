import { volumeAt } from '../laws/storage.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { firstCrossing } from '../solver/dense.ts';
import type { LoggedEvent } from './answer.ts';
import { restoreNetwork } from './inside.ts';
import type { RunRecord } from './record.ts';

/** A level whose crossing is worth a line in the log. */
interface Mark {
  readonly basin: number;
  readonly volume: number;
  readonly direction: 1 | -1;
  readonly what: string;
  /** What is said when the level goes back; '' nothing. */
  readonly back: string;
  /** Volume by which it has to go back before the same line is written again, m³. */
  readonly slack: number;
  /** A level that is kept: a run that starts there, to rounding, does not reach it. */
  readonly kept: boolean;
}

/** A level has to go back this far before its mark is written again, m. */
const SLACK = 1e-4;

function lowest(crest: readonly (readonly [number, number])[]): number {
  return Math.min(...crest.map(([, z]) => z));
}

function marksOf(s: Scenario, record: RunRecord): Mark[] {
  const { basins } = record.network.parts;
  const marks: Mark[] = [];
  const add = (name: string, level: number, direction: 1 | -1, what: string, more: Partial<Mark> = {}): void => {
    const basin = basins.findIndex((b) => b.name === name);
    const volume = volumeAt(basins[basin].storage, level);
    const slack = Math.abs(volume - volumeAt(basins[basin].storage, level - direction * SLACK));
    marks.push({ basin, volume, direction, what, back: '', slack, kept: false, ...more });
  };
  add('pond', lowest(s.pond.rim.crest), 1, 'pond at rim', { back: 'pond below rim' });
  if (s.pond.fillMark !== undefined) add('pond', s.pond.fillMark, 1, 'pond at fill mark', { kept: true });
  add('vault', s.pump.minimum, -1, 'vault at minimum');
  if (s.filter) add('filter', lowest(s.filter.rim.crest), 1, 'filter overtopped');
  for (const reach of s.watercourse) {
    const edge =
      reach.kind === 'pool' ? lowest(reach.rim.crest) : reach.edge ? reach.foot + reach.edge.height : undefined;
    if (edge !== undefined) add(reach.name, edge, 1, `${reach.name} overtopped`);
  }
  return marks;
}

/** Lines of the log that follow from levels: each mark reached, once until the level has clearly gone back. */
export function levelEvents(s: Scenario, record: RunRecord): LoggedEvent[] {
  return marksOf(s, record).flatMap((mark) => crossings(record, mark));
}

function crossings(record: RunRecord, mark: Mark): LoggedEvent[] {
  const events: LoggedEvent[] = [];
  const { basin, direction, volume } = mark;
  const past = direction * (record.volume(0, basin) - volume);
  const near = mark.kept ? mark.slack / 2 : 0;
  let there = past > -near;
  if (past > near) events.push({ t: record.time(0), what: mark.what });
  for (let row = 0; row + 1 < record.length; row++) {
    if (record.restarts(row + 1)) continue;
    const from = record.time(row);
    const size = record.time(row + 1) - from;
    let theta = 0;
    // Within one step a level may go there, clearly back, and there again; a cubic turns at most twice.
    for (let turn = 0; turn < 3 && theta >= 0 && theta < 1; turn++) {
      const target = there ? volume - direction * mark.slack : volume;
      theta = reach(record, row, basin, target, there ? (-direction as 1 | -1) : direction, theta);
      if (theta < 0) break;
      there = !there;
      const what = there ? mark.what : mark.back;
      if (what !== '') events.push({ t: from + theta * size, what });
    }
  }
  return events;
}

/** First θ from `after` on at which the volume reaches a value in a step; −1 where it doesn't. */
function reach(record: RunRecord, row: number, basin: number, value: number, direction: 1 | -1, after: number): number {
  const y0 = record.volume(row, basin);
  const y1 = record.volume(row + 1, basin);
  const k1 = record.inner1(row, basin);
  const k2 = record.inner2(row, basin);
  if (after === 0 && direction * (y0 - value) >= 0) return 0;
  return firstCrossing(y0, y1, k1, k2, value, direction, after);
}

/** Moments at which the media lift, the head across them passing the lift head: looked for at rows, both sides of restarts. */
export function liftEvents(record: RunRecord, liftHead: number): LoggedEvent[] {
  const head = record.network.flow.length;
  const events: LoggedEvent[] = [];
  let lifted = false;
  for (let row = 0; row < record.length; row++) {
    const now = record.flow(row, head) > liftHead;
    if (now && !lifted) events.push({ t: liftMoment(record, row, liftHead), what: 'media lifts' });
    lifted = now;
  }
  return events;
}

/** The moment within the step that leads to a row, by halving it. */
function liftMoment(record: RunRecord, row: number, liftHead: number): number {
  if (record.restarts(row)) return record.time(row);
  const { network } = record;
  const volumes = new Float64Array(network.size);
  let from = record.time(row - 1);
  let to = record.time(row);
  for (let mid = (from + to) / 2; mid > from && mid < to; mid = (from + to) / 2) {
    restoreNetwork(record, mid, volumes);
    if (network.mediaHead > liftHead) to = mid;
    else from = mid;
  }
  return to;
}
