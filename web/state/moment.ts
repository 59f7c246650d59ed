import type { Series } from '../../sim/results/answer.ts';

/** The site at one moment: levels in m by basin name, flows in m³/s by flow name. */
export interface Moment {
  readonly t: number;
  readonly levels: Readonly<Record<string, number>>;
  readonly flows: Readonly<Record<string, number>>;
}

/** Last row at or before a time: after a restart that falls on it. */
export function rowAt(t: Float64Array, time: number): number {
  let low = 0;
  let high = t.length - 1;
  while (low < high) {
    const mid = (low + high + 1) >> 1;
    if (t[mid] <= time) low = mid;
    else high = mid - 1;
  }
  return low;
}

/** Levels and flows at a time, straight between the rows of a series. */
export function momentAt(series: Series, time: number): Moment {
  const { t, levels, flows } = series;
  return { t: time, levels: columnsAt(levels, t, time), flows: columnsAt(flows, t, time) };
}

/** Columns by name at a time, straight between their rows. */
export function columnsAt(
  columns: Record<string, Float64Array>,
  t: Float64Array,
  time: number,
): Record<string, number> {
  const row = rowAt(t, time);
  const next = Math.min(row + 1, t.length - 1);
  const size = t[next] - t[row];
  const share = size > 0 ? Math.min(1, Math.max(0, (time - t[row]) / size)) : 0;
  return Object.fromEntries(Object.entries(columns).map(([name, c]) => [name, c[row] + share * (c[next] - c[row])]));
}
