import { levelOf } from '../laws/storage.ts';
import type { Series } from './answer.ts';
import { restoreNetwork } from './inside.ts';
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
