/** The same numbers as rows: more of them where the minutes are opened. */
import { formatClock } from '../../sim/quantity/index.ts';
import type { Display } from '../engine/protocol.ts';
import { inWords, type LevelsBy } from './level-words.ts';
import type { Line } from './subjects.ts';
import { valueAt } from './thin.ts';
import type { Axis } from './time-axis.ts';
import { stepFor } from './time-ticks.ts';

export interface Row {
  readonly t: number;
  /** The site's clock, with seconds. */
  readonly clock: string;
  /** What happened then; '' mostly. */
  readonly what: string;
  readonly figures: readonly string[];
}

/** Rows of each piece of the axis, about. */
const ROWS = { opened: 26, beside: 12 };

/** Moments worth a row: round steps of each piece, its ends, and the events, in order. */
export function rowTimes(axis: Axis, events: readonly number[]): number[] {
  const times = new Set<number>([0, axis.span]);
  for (const { from, to, opened } of axis.pieces) {
    const step = stepFor((to - from) / (opened ? ROWS.opened : ROWS.beside), 1);
    for (let t = Math.ceil(from / step) * step; t <= to; t += step) times.add(t);
  }
  for (const t of events) times.add(t);
  return [...times].sort((a, b) => a - b);
}

/** The clock to the second, '12:04:30'. */
export function clockToSecond(starts: string, t: number): string {
  const seconds = String(((Math.floor(t) % 60) + 60) % 60).padStart(2, '0');
  return `${formatClock(starts, t)}:${seconds}`;
}

export function tableRows(
  axis: Axis,
  lines: readonly Line[],
  events: readonly { readonly t: number; readonly what: string }[],
  starts: string,
  display: Display,
  by: LevelsBy,
): Row[] {
  return rowTimes(
    axis,
    events.map(({ t }) => t),
  ).map((t) => ({
    t,
    clock: clockToSecond(starts, t),
    what: events
      .filter((event) => event.t === t)
      .map(({ what }) => what)
      .join(', '),
    figures: lines.map((line) => inWords(valueAt(line.times, line.values, t), line, display, by)),
  }));
}
