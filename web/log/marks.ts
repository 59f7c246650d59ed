/** Where everything of a log's plot stands, in px: dots, the fitted fall, the fall by evaporation alone. Pure. */
import type { LogPlot } from '../../sim/log/index.ts';
import { formatNumber } from '../../sim/quantity/index.ts';
import type { Display } from '../engine/protocol.ts';
import { stepFor } from '../plots/time-ticks.ts';
import { axisUnit, unitSign, valueTicks } from '../plots/value-ticks.ts';

const DAY = 86400;
const LEFT = 46;
const RIGHT = 10;
const TOP = 12;
const BOTTOM = 24;

export interface LogMarks {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly bottom: number;
  readonly dots: readonly { readonly x: number; readonly y: number; readonly counts: boolean }[];
  /** Paths of the two lines. */
  readonly fall: string;
  readonly dry: string;
  readonly levels: readonly { readonly y: number; readonly label: string }[];
  readonly times: readonly { readonly x: number; readonly label: string }[];
  readonly unit: string;
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** @param starts ms since 1970 of the first reading on its own calendar; undefined: days are counted */
export function logMarks(plot: LogPlot, width: number, display: Display, starts: number | undefined): LogMarks {
  const height = Math.round(Math.min(260, Math.max(170, width * 0.45)));
  const all = [...plot.dots, ...[...plot.fall, ...plot.dry].map(([t, level]) => ({ t, level }))];
  const [low, high] = [Math.min(...all.map(({ level }) => level)), Math.max(...all.map(({ level }) => level))];
  const slack = Math.max(0.002, 0.06 * (high - low));
  const end = Math.max(...all.map(({ t }) => t), 1);
  const x = (t: number): number => LEFT + (t / end) * (width - LEFT - RIGHT);
  const y = (level: number): number =>
    TOP + ((high + slack - level) / (high - low + 2 * slack)) * (height - TOP - BOTTOM);
  const path = (line: LogPlot['fall']): string =>
    line.map(([t, level], i) => `${i === 0 ? 'M' : 'L'}${x(t).toFixed(1)} ${y(level).toFixed(1)}`).join('');
  return {
    width,
    height,
    left: LEFT,
    bottom: height - BOTTOM,
    dots: plot.dots.map(({ t, level, counts }) => ({ x: x(t), y: y(level), counts })),
    fall: path(plot.fall),
    dry: path(plot.dry),
    ...levelTicks(plot, [low - slack, high + slack], y, display),
    times: timeTicks(end, width, starts).map(({ t, label }) => ({ x: x(t), label })),
  };
}

/** Round figures as they are read: down from the edge, or up a ruler. */
function levelTicks(
  { zero, sign }: LogPlot,
  [low, high]: readonly [number, number],
  y: (level: number) => number,
  display: Display,
): Pick<LogMarks, 'levels' | 'unit'> {
  const read = [zero + sign * low, zero + sign * high].sort((a, b) => a - b) as [number, number];
  const unit = axisUnit('level', read[1] - read[0], display);
  const ticks = valueTicks(read, unit, 'level', 4);
  return { unit: unitSign(unit), levels: ticks.map(({ at, label }) => ({ y: y(sign * (at - zero)), label })) };
}

function timeTicks(end: number, width: number, starts: number | undefined): { t: number; label: string }[] {
  const step = Math.max(DAY / 4, stepFor(end / (width - LEFT - RIGHT), starts === undefined ? 40 : 54));
  const zero = starts === undefined ? 0 : -((starts / 1000) % Math.max(step, DAY) || 0);
  const first = Math.ceil(-zero / step);
  const count = Math.floor((end - zero) / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => zero + (first + i) * step).map((t) => ({
    t,
    label: starts === undefined ? `${formatNumber(t / DAY, step < DAY ? 2 : 0)} d` : dateLabel(starts + 1000 * t, step),
  }));
}

function dateLabel(at: number, step: number): string {
  const date = new Date(Math.round(at));
  const isMidnight = date.getUTCHours() === 0 && date.getUTCMinutes() === 0;
  if (step >= DAY || isMidnight) return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
  return `${date.getUTCHours()}:${String(date.getUTCMinutes()).padStart(2, '0')}`;
}
