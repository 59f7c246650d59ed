import { levelOf, volumeAt } from '../laws/storage.ts';
import { denseValue, firstCrossing, flatPoints } from '../solver/dense.ts';
import type { RunRecord } from './record.ts';

/** An extreme is timed where the level first comes within this of it, m: a flat extreme has no sharper time. */
const FLAT = 1e-6;

/** A level and the moment at which it is reached, m and s. */
export interface Extreme {
  readonly t: number;
  readonly value: number;
}

/**
 * Highest (+1) or lowest (−1) level of a basin between two rows of a record, looked for inside the steps too.
 *
 * @param from first row, a row at which a step starts
 * @param to last row
 */
export function extremeBetween(record: RunRecord, basin: number, direction: 1 | -1, from: number, to: number): Extreme {
  const { storage } = record.network.parts.basins[basin];
  let most = record.volume(from, basin);
  for (let row = from + 1; row <= to; row++) {
    const y1 = record.volume(row, basin);
    if (direction * (y1 - most) > 0) most = y1;
    if (record.restarts(row)) continue;
    const y0 = record.volume(row - 1, basin);
    const k1 = record.inner1(row - 1, basin);
    const k2 = record.inner2(row - 1, basin);
    const bulge = 0.25 * Math.max(Math.abs(k1), Math.abs(k1 + k2));
    if (Math.max(direction * y0, direction * y1) + bulge <= direction * most) continue;
    for (const theta of flatPoints(y0, y1, k1, k2)) {
      const y = denseValue(y0, y1, k1, k2, theta);
      if (direction * (y - most) > 0) most = y;
    }
  }
  const value = levelOf(storage, most);
  return { t: firstReach(record, basin, volumeAt(storage, value - direction * FLAT), direction, from, to), value };
}

/** First moment between two rows at which a basin's volume reaches a value from one side; that of `to` where never. */
export function firstReach(
  record: RunRecord,
  basin: number,
  volume: number,
  direction: 1 | -1,
  from: number,
  to: number,
): number {
  if (direction * (record.volume(from, basin) - volume) >= 0) return record.time(from);
  for (let row = from; row < to; row++) {
    if (record.restarts(row + 1)) continue;
    const y0 = record.volume(row, basin);
    const y1 = record.volume(row + 1, basin);
    const theta = firstCrossing(y0, y1, record.inner1(row, basin), record.inner2(row, basin), volume, direction);
    if (theta >= 0) return record.time(row) + theta * (record.time(row + 1) - record.time(row));
  }
  return record.time(to);
}
