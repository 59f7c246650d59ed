import { momentText } from '../quantity/index.ts';
import type { Series } from './answer.ts';

/**
 * The columns of a run as lines of a CSV file (RFC 4180: fields with a comma or quote are quoted, lines end in CRLF):
 * seconds from the start, the site's clock, levels in m with the pond's first, flows in m³/s with the main's first.
 * Always SI, every figure to its last digit.
 *
 * @param starts local clock time of t = 0
 * @param more columns after those of the flows, as long as the series
 */
export function* csvLines(series: Series, starts: string, more: readonly Column[] = []): Generator<string, void> {
  const levels = columnsOf(series.levels, 'pond', 'm');
  const flows = columnsOf(series.flows, 'main', 'm3/s');
  const columns = [...levels, ...flows, ...more];
  yield lineOf(['t[s]', 'clock', ...columns.map(({ head }) => quoted(head))]);
  for (let row = 0; row < series.t.length; row++) {
    const t = series.t[row];
    yield lineOf([figure(t), momentText(starts, t), ...columns.map(({ values }) => figure(values[row]))]);
  }
}

/** A column of figures under its name and unit. */
export interface Column {
  readonly head: string;
  readonly values: Float64Array;
}

function columnsOf(named: Record<string, Float64Array>, first: string, unit: string): Column[] {
  const names = Object.keys(named).sort((a, b) => Number(b === first) - Number(a === first));
  return names.map((name) => ({ head: `${name}[${unit}]`, values: named[name] }));
}

const lineOf = (fields: readonly string[]): string => `${fields.join(',')}\r\n`;

const quoted = (field: string): string => (/[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field);

/** The shortest text that reads back as the same double; a zero has no sign. */
const figure = (value: number): string => String(value === 0 ? 0 : value);
