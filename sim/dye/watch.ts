import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { DyeWatching } from './answer.ts';
import { NOT_FED, outsideWords, unfedWords } from './fed.ts';
import { filterWithMedia, flowsOf } from './filterState.ts';
import { DyeOnItsWay } from './follow.ts';
import { WatchRows } from './watchRows.ts';
import { neverWords } from './words.ts';

/** Dye is watched so long if nobody says how long, s, and seen at so many moments. */
const HOUR = 3600;
const ROWS = 361;

export interface WatchOptions {
  /** Moment of the run up to which it is watched, s; an hour after the pour by default, the run's end at the latest. */
  readonly until?: number;
  /** Moments at which it is seen, ≥ 2; 361 by default. */
  readonly rows?: number;
}

/**
 * A pulse of dye poured into the plenum at a moment of a run and carried by the run's own flows: up through the media
 * and round them, over the lip, down the water course, through pond, vault and pump and up again, less what is lost.
 *
 * The plenum, the tanks of the media, the free water and every basin are mixed; the gap is plug flow, as parcels that
 * move one behind the other. Where water turns round, dye goes with it.
 * @param at s of the run
 * @param mass of dye, kg, > 0
 */
export function watchDye(
  s: Scenario,
  record: RunRecord,
  at: number,
  mass: number,
  options: WatchOptions = {},
): DyeWatching {
  const never = neverWords(s);
  const filter = filterWithMedia(s);
  if (never !== undefined || !filter) return { poured: false, says: never ?? '' };
  const [begin, last] = [record.time(0), record.time(record.length - 1)];
  if (!(at >= begin && at < last)) {
    return { poured: false, says: outsideWords };
  }
  const end = Math.min(last, Math.max(at, options.until ?? at + HOUR));
  const dye = new DyeOnItsWay(record, filter.media, at, mass);
  const { network } = record;
  const says = flowsOf(network).bottom < NOT_FED ? unfedWords(s, record, at) : '';
  const count = Math.max(2, options.rows ?? ROWS);
  const rows = new WatchRows(dye, network, count, mass);
  const stops = rowTimes(record, at, end);
  let next = 0;
  for (let k = 0; k < count; k++) {
    const t = k === count - 1 ? end : at + ((end - at) * k) / (count - 1);
    for (; next < stops.length && stops[next] < t; next++) dye.to(stops[next]);
    dye.to(t);
    rows.add(k, t);
  }
  return rows.answer(at, says);
}

/** Moments of a record's rows inside a stretch of time: between two of them the flows are smooth. */
function rowTimes(record: RunRecord, from: number, to: number): number[] {
  const times: number[] = [];
  for (let row = record.rowAt(from) + 1; row < record.length && record.time(row) < to; row++) {
    if (record.time(row) > (times[times.length - 1] ?? from)) times.push(record.time(row));
  }
  return times;
}
