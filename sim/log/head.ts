import { spelledOut, unitOf } from '../quantity/units.ts';
import type { Measured } from './reading.ts';

/** What the first line of a log says of its columns. */
export interface Head {
  /** Unit of bare levels and of bare times. */
  readonly unit: string | undefined;
  readonly time: 'd' | 'h' | undefined;
  readonly measured: Measured | undefined;
}

const NAMES = /date|time|day|hour|level|depth|pump|reading|ruler|gauge|staff|below|height|note|remark/i;
const UP = /ruler|gauge|staff|height|above|over the floor/i;
const DOWN = /below|down|depth|from the edge/i;

/** The head of a log: a line of names, where the text has one. */
export function headOf(fields: readonly string[]): Head | undefined {
  const [time = '', ...rest] = fields;
  if (!NAMES.test(fields.join(' ')) || /\d/.test(fields.join(' ')) || !/^[A-Za-z"(]/.test(time.trim()))
    return undefined;
  const words = rest.join(' ').split(/[\s()[\],;]+/);
  const unit = words.map(spelledOut).find((word) => unitOf('length', word) !== undefined);
  const all = fields.join(' ');
  return {
    unit,
    time: /hour|\bh\b/i.test(time) ? 'h' : /day|\bd\b/i.test(time) ? 'd' : undefined,
    measured: UP.test(all) ? 'up' : DOWN.test(all) ? 'down' : undefined,
  };
}
