/** Ticks of the two axes: round figures in the units people read, round moments of the site's own clock. */
import { scaleLinear, scaleUtc, utcFormat } from 'd3';
import { formatNumber, fromSI, parseMoment, toSI, unitOf } from '../../sim/quantity/index.ts';
import type { Display } from '../engine/protocol.ts';

export type Measure = 'level' | 'flow';

export interface Tick {
  /** SI value, or seconds from the start of the run. */
  at: number;
  label: string;
}

const dimensions = { level: 'length', flow: 'flow' } as const;

/** The unit in which a range of that size is read: mm and m, in and ft; L/min and m³/h, gpm and gph. */
export function axisUnit(measure: Measure, size: number, display: Display): string {
  if (measure === 'level') return display === 'us' ? (size < 1.2 ? 'in' : 'ft') : size < 2 ? 'mm' : 'm';
  if (display === 'us') return size < 0.00126 ? 'gpm' : 'gph';
  return size < 0.0166 ? 'L/min' : 'm3/h';
}

/** The way a unit is set in type. */
export const unitSign = (unit: string): string => unit.replace('3', '³');

/** About `count` round figures of a range given in SI. */
export function valueTicks(
  [low, high]: readonly [number, number],
  unitName: string,
  measure: Measure,
  count: number,
): Tick[] {
  const unit = unitOf(dimensions[measure], unitName)!;
  const scale = scaleLinear([fromSI(low, unit), fromSI(high, unit)], [0, 1]);
  const figures = scale.ticks(count);
  const step = figures.length > 1 ? figures[1]! - figures[0]! : 1;
  const decimals = Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9)));
  return figures.map((figure) => ({ at: toSI(figure, unit), label: formatNumber(figure, decimals) }));
}

const day = utcFormat('%-d %b');
const month = utcFormat('%b');
const minute = utcFormat('%H:%M');
const second = utcFormat('%H:%M:%S');

function momentLabel(date: Date, step: number): string {
  if (step < 60) return second(date);
  if (step < 86_400 && (date.getUTCHours() > 0 || date.getUTCMinutes() > 0)) return minute(date);
  return step > 20 * 86_400 ? month(date) : day(date);
}

/** About `count` round moments of a window in seconds from `starts`, by the site's own clock. */
export function timeTicks(starts: string, [from, to]: readonly [number, number], count: number): Tick[] {
  const zero = parseMoment(starts) ?? 0;
  const dates = scaleUtc([(zero + from) * 1000, (zero + to) * 1000], [0, 1]).ticks(count);
  const step = dates.length > 1 ? (dates[1]!.getTime() - dates[0]!.getTime()) / 1000 : 60;
  return dates.map((date) => ({ at: date.getTime() / 1000 - zero, label: momentLabel(date, step) }));
}
