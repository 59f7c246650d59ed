/** Where all checks of the balance hold: along a line through the present point, and over the whole map. */
import type { MapPoint, OperatingMap } from './answer.ts';
import { figureAt } from './between.ts';
import type { BalanceCheck } from './margins.ts';

/** A stretch of an axis; beyond an end some check fails, or the map ends or is blank (null). */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly below: BalanceCheck | null;
  readonly above: BalanceCheck | null;
}

type Laid = Pick<OperatingMap, 'x' | 'y' | 'points'>;

/** Stretches of an axis on which all checks hold while the other axis stands at a value, the border between points by interpolation. */
export function holdingAlong(map: Laid, axis: 'x' | 'y', at: number): Stretch[] {
  const values = map[axis];
  const margin = (value: number): number | null =>
    axis === 'x' ? figureAt(map, 'margin', value, at) : figureAt(map, 'margin', at, value);
  const margins = values.map(margin);
  const holds = margins.map((m) => m !== null && m >= 0);
  const stretches: Stretch[] = [];
  for (let i = 0; i < values.length; i++) {
    if (!holds[i] || (i > 0 && holds[i - 1])) continue;
    let last = i;
    while (last + 1 < values.length && holds[last + 1]) last++;
    const low = i > 0 ? border(values, margins, i, i - 1) : values[i];
    const high = last + 1 < values.length ? border(values, margins, last, last + 1) : values[last];
    stretches.push({
      from: low,
      to: high,
      below: i > 0 ? failingNear(map, axis, values[i - 1], at) : null,
      above: last + 1 < values.length ? failingNear(map, axis, values[last + 1], at) : null,
    });
  }
  return stretches;
}

/** Where the margin passes 0 between a point that holds and its neighbor; the point itself where the neighbor is blank. */
function border(values: readonly number[], margins: readonly (number | null)[], holds: number, beyond: number): number {
  const [inside, outside] = [margins[holds] ?? 0, margins[beyond]];
  if (outside === null || !(inside - outside > 0)) return values[holds];
  return values[holds] + ((values[beyond] - values[holds]) * inside) / (inside - outside);
}

/** The check that fails at the nearest point of the map. */
function failingNear(map: Laid, axis: 'x' | 'y', value: number, at: number): BalanceCheck | null {
  const [x, y] = axis === 'x' ? [value, at] : [at, value];
  const near = (each: MapPoint): number =>
    Math.abs(each.x - x) / span(map.x) + Math.abs(each.y - y) / span(map.y) + (each.fails === null ? 1 : 0);
  return map.points.reduce((best, each) => (near(each) < near(best) ? each : best)).fails;
}

const span = (axis: readonly number[]): number => axis[axis.length - 1] - axis[0];

/** How many points hold, and how many fail by each check that is named there. */
export function tally({ points }: Pick<OperatingMap, 'points'>): {
  readonly found: number;
  readonly hold: number;
  readonly failing: readonly (readonly [BalanceCheck, number])[];
} {
  const found = points.filter((point) => point.found);
  const failing = new Map<BalanceCheck, number>();
  for (const { fails } of found) if (fails !== null) failing.set(fails, (failing.get(fails) ?? 0) + 1);
  return {
    found: found.length,
    hold: found.filter(({ fails }) => fails === null).length,
    failing: [...failing].sort((a, b) => b[1] - a[1]),
  };
}
