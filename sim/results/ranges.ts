import { levelOf } from '../laws/storage.ts';
import type { Range } from './answer.ts';
import { extremeBetween } from './extreme.ts';
import type { RunRecord } from './record.ts';

/** Start, end and extremes of every basin's level, found inside the steps too. */
export function levelRanges(record: RunRecord): Record<string, Range> {
  const last = record.length - 1;
  const ranges: Record<string, Range> = {};
  record.network.parts.basins.forEach(({ name, storage }, basin) => {
    ranges[name] = {
      start: levelOf(storage, record.volume(0, basin)),
      end: levelOf(storage, record.volume(last, basin)),
      min: extremeBetween(record, basin, -1, 0, last),
      max: extremeBetween(record, basin, 1, 0, last),
    };
  });
  return ranges;
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
