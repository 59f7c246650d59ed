import { levelOf, volumeAt } from '../laws/storage.ts';
import { denseValue, firstCrossing, flatPoints } from '../solver/dense.ts';
import type { Range } from './answer.ts';
import type { RunRecord } from './record.ts';

/** An extreme is timed where the level first comes within this of it, m: a flat extreme has no sharper time. */
const FLAT = 1e-6;

/** Start, end and extremes of every basin's level, found inside the steps too. */
export function levelRanges(record: RunRecord): Record<string, Range> {
  const last = record.length - 1;
  const ranges: Record<string, Range> = {};
  record.network.parts.basins.forEach(({ name, storage }, basin) => {
    ranges[name] = {
      start: levelOf(storage, record.volume(0, basin)),
      end: levelOf(storage, record.volume(last, basin)),
      min: extreme(record, basin, -1),
      max: extreme(record, basin, 1),
    };
  });
  return ranges;
}

function extreme(record: RunRecord, basin: number, direction: 1 | -1): { t: number; value: number } {
  const { storage } = record.network.parts.basins[basin];
  let most = record.volume(0, basin);
  for (let row = 1; row < record.length; row++) {
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
  return { t: firstWithin(record, basin, volumeAt(storage, value - direction * FLAT), direction), value };
}

function firstWithin(record: RunRecord, basin: number, volume: number, direction: 1 | -1): number {
  if (direction * (record.volume(0, basin) - volume) >= 0) return record.time(0);
  for (let row = 0; row + 1 < record.length; row++) {
    if (record.restarts(row + 1)) continue;
    const theta = firstCrossing(
      record.volume(row, basin),
      record.volume(row + 1, basin),
      record.inner1(row, basin),
      record.inner2(row, basin),
      volume,
      direction,
    );
    if (theta >= 0) return record.time(row) + theta * (record.time(row + 1) - record.time(row));
  }
  return record.time(record.length - 1);
}

/** Range of any figure of a row, by rows alone: both sides of every restart are rows of their own. */
export function rowRange(record: RunRecord, figure: (row: number) => number): Range {
  const range: Range = {
    start: figure(0),
    end: figure(record.length - 1),
    min: { t: record.time(0), value: figure(0) },
    max: { t: record.time(0), value: figure(0) },
  };
  for (let row = 1; row < record.length; row++) {
    const value = figure(row);
    if (value < range.min.value) range.min = { t: record.time(row), value };
    if (value > range.max.value) range.max = { t: record.time(row), value };
  }
  return range;
}

/** Ranges of all named flows. */
export function flowRanges(record: RunRecord): Record<string, Range> {
  return Object.fromEntries(
    record.network.parts.flowNames.map((name, i) => [name, rowRange(record, (row) => record.flow(row, i))]),
  );
}

/** Channeled share and head across the media over a run; null without media. The share counts 0 where nothing goes up. */
export function mediaRanges(record: RunRecord): { channeled: Range; head: Range } | null {
  const { circuit, flowNames } = record.network.parts;
  const { media, gap } = circuit.flow;
  if (media < 0) return null;
  const channeled = rowRange(record, (row) => {
    const through = record.flow(row, media);
    const round = record.flow(row, gap);
    return through + round > 1e-9 ? round / (through + round) : 0;
  });
  return { channeled, head: rowRange(record, (row) => record.flow(row, flowNames.length)) };
}
