/** Ticks of a value axis: round figures in the units people read. */
import { formatNumber, fromSI, toSI, unitOf } from '../../sim/quantity/index.ts';
import type { Display } from '../engine/protocol.ts';

export type Measure = 'level' | 'flow';

export interface Tick {
  /** SI. */
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
  const [from, to] = [fromSI(low, unit), fromSI(high, unit)];
  const step = roundStep((to - from) / count);
  const decimals = Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9)));
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const figure = (first + i) * step;
    return { at: toSI(figure, unit), label: formatNumber(figure, decimals) };
  });
}

/** The 1, 2 or 5 times a power of ten that is nearest to a step by ratio. */
function roundStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  const rest = step / power;
  return power * (rest < Math.SQRT2 ? 1 : rest < Math.sqrt(10) ? 2 : rest < Math.sqrt(50) ? 5 : 10);
}
