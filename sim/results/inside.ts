import { denseValue } from '../solver/dense.ts';
import type { RunRecord } from './record.ts';

/** Volumes at a moment of a record, m³; after a restart that falls on it. */
export function volumesAt(record: RunRecord, t: number, out: Float64Array): void {
  const row = record.rowAt(t);
  const last = row + 1 >= record.length;
  const size = last ? 0 : record.time(row + 1) - record.time(row);
  const theta = size > 0 ? (t - record.time(row)) / size : 0;
  for (let i = 0; i < out.length; i++) {
    const y0 = record.volume(row, i);
    out[i] =
      theta > 0 ? denseValue(y0, record.volume(row + 1, i), record.inner1(row, i), record.inner2(row, i), theta) : y0;
  }
}

/**
 * Puts the network of a record where it was at a moment: its levels, flows and media head are then those of the
 * moment, by the settings in force.
 */
export function restoreNetwork(record: RunRecord, t: number, volumes: Float64Array): void {
  const { network } = record;
  volumesAt(record, t, volumes);
  network.apply(record.settingsAt(record.rowAt(t)));
  network.rates(t, volumes, new Float64Array(network.size), new Float64Array(network.quadratures));
}
