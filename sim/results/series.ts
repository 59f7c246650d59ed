import { levelOf } from '../laws/storage.ts';
import type { Series } from './answer.ts';
import { restoreNetwork, volumesAt } from './inside.ts';
import type { RunRecord } from './record.ts';

function emptySeries(record: RunRecord, length: number): Series {
  const { basins, flowNames } = record.network.parts;
  return {
    t: new Float64Array(length),
    levels: Object.fromEntries(basins.map((b) => [b.name, new Float64Array(length)])),
    flows: Object.fromEntries(flowNames.map((name) => [name, new Float64Array(length)])),
  };
}

/**
 * The columns of a record: a row at each step's end and two at each restart, or evenly spaced with the end as its
 * last row.
 *
 * @param every spacing, s, > 0; left out: the record's own rows
 */
export function seriesOf(record: RunRecord, every?: number): Series {
  return every === undefined ? ownRows(record) : evenRows(record, every);
}

function ownRows(record: RunRecord): Series {
  const { basins, flowNames } = record.network.parts;
  const series = emptySeries(record, record.length);
  for (let row = 0; row < record.length; row++) series.t[row] = record.time(row);
  basins.forEach(({ name, storage }, i) => {
    const column = series.levels[name];
    for (let row = 0; row < column.length; row++) column[row] = levelOf(storage, record.volume(row, i));
  });
  flowNames.forEach((name, i) => {
    const column = series.flows[name];
    for (let row = 0; row < column.length; row++) column[row] = record.flow(row, i);
  });
  return series;
}

function evenRows(record: RunRecord, every: number): Series {
  const { network } = record;
  const begin = record.time(0);
  const end = record.time(record.length - 1);
  const count = Math.ceil((end - begin) / every - 1e-9) + 1;
  const series = emptySeries(record, count);
  const volumes = new Float64Array(network.size);
  for (let k = 0; k < count; k++) {
    const t = Math.min(end, begin + k * every);
    restoreNetwork(record, t, volumes);
    series.t[k] = t;
    network.parts.basins.forEach(({ name }, i) => {
      series.levels[name][k] = network.level[i];
    });
    network.parts.flowNames.forEach((name, i) => {
      series.flows[name][k] = network.flow[i];
    });
  }
  return series;
}

/**
 * The columns of a record with rows added inside its steps, so that straight lines between rows follow every level.
 *
 * @param within greatest distance of a level from the line, m, > 0
 */
export function refinedSeries(record: RunRecord, within: number): Series {
  const { network } = record;
  const { basins, flowNames } = network.parts;
  const times = refinedTimes(record, within);
  const series = emptySeries(record, times.length);
  const levels = basins.map(({ name }) => series.levels[name]);
  const flows = flowNames.map((name) => series.flows[name]);
  const volumes = new Float64Array(network.size);
  times.forEach(({ t, row }, k) => {
    series.t[k] = t;
    if (row !== undefined) {
      for (let i = 0; i < levels.length; i++) levels[i][k] = levelOf(basins[i].storage, record.volume(row, i));
      for (let i = 0; i < flows.length; i++) flows[i][k] = record.flow(row, i);
      return;
    }
    restoreNetwork(record, t, volumes);
    for (let i = 0; i < levels.length; i++) levels[i][k] = network.level[i];
    for (let i = 0; i < flows.length; i++) flows[i][k] = network.flow[i];
  });
  return series;
}

interface RefinedTime {
  readonly t: number;
  /** The record's own row; undefined for a moment inside a step. */
  readonly row: number | undefined;
}

/** Between probes at the quarters a cubic strays from its chord by at most a fifteenth more than at them. */
const BETWEEN_PROBES = 0.9;
/** A step is halved at most this often: what still bends then is a kink of the basin itself. */
const MOST_HALVINGS = 8;

function refinedTimes(record: RunRecord, within: number): RefinedTime[] {
  const times: RefinedTime[] = [];
  const levels = levelsInside(record);
  for (let row = 0; row < record.length; row++) {
    times.push({ t: record.time(row), row });
    if (row + 1 === record.length || record.restarts(row + 1)) continue;
    const [from, to] = [record.time(row), record.time(row + 1)];
    halve(levels, from, levels(from, row), to, levels(to, row), row, within * BETWEEN_PROBES, MOST_HALVINGS, times);
  }
  return times;
}

type LevelsInside = (t: number, row: number) => Float64Array;

/** Levels at a moment of the step that starts in a row. */
function levelsInside(record: RunRecord): LevelsInside {
  const { basins } = record.network.parts;
  const volumes = new Float64Array(record.network.size);
  return (t, row) => {
    if (t < record.time(row + 1)) volumesAt(record, t, volumes);
    else for (let i = 0; i < volumes.length; i++) volumes[i] = record.volume(row + 1, i);
    return Float64Array.from(basins, ({ storage }, i) => levelOf(storage, volumes[i]));
  };
}

/** Adds the moments inside a stretch of a step at which its levels are to be read, in order. */
function halve(
  levels: LevelsInside,
  from: number,
  atFrom: Float64Array,
  to: number,
  atTo: Float64Array,
  row: number,
  within: number,
  left: number,
  times: RefinedTime[],
): void {
  const strays = (share: number, at: Float64Array): boolean =>
    at.some((z, i) => Math.abs(z - (atFrom[i] + share * (atTo[i] - atFrom[i]))) > within);
  const mid = (from + to) / 2;
  const atMid = levels(mid, row);
  const bends = [0.25, 0.75].some((share) => strays(share, levels(from + share * (to - from), row)));
  if (left === 0 || !(bends || strays(0.5, atMid))) return;
  halve(levels, from, atFrom, mid, atMid, row, within, left - 1, times);
  times.push({ t: mid, row: undefined });
  halve(levels, mid, atMid, to, atTo, row, within, left - 1, times);
}
