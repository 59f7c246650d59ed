/** Where all checks of the balance hold: along a line through the present point, and over the whole map. */
import type { BalanceCheck, MapPoint, OperatingMap, Stretch } from './answer.ts';

/** A border is found to this, −: a tenth of a degree of a handle. */
const NARROW = 1e-3;

/**
 * Stretches of an axis on which all checks hold, each end found by bisection between a point that holds and its neighbor
 * that does not; what is narrower than the values are apart may be missed.
 *
 * @param values ascending
 * @param at the point at a value of the axis
 */
export function holdingAlong(values: readonly number[], at: (value: number) => MapPoint): Stretch[] {
  const points = values.map(at);
  const stretches: Stretch[] = [];
  for (let i = 0; i < values.length; i++) {
    if (!holds(points[i]) || (i > 0 && holds(points[i - 1]))) continue;
    let last = i;
    while (last + 1 < values.length && holds(points[last + 1])) last++;
    const low = i > 0 ? border(values[i], values[i - 1], at) : { inside: values[i], beyond: null };
    const high =
      last + 1 < values.length ? border(values[last], values[last + 1], at) : { inside: values[last], beyond: null };
    stretches.push({ from: low.inside, to: high.inside, below: low.beyond, above: high.beyond });
  }
  return stretches;
}

const holds = ({ found, fails }: MapPoint): boolean => found && fails === null;

/** The last value that holds on the way to one that does not, and the check that fails beyond; null where there is no balance. */
function border(
  holding: number,
  failing: number,
  at: (value: number) => MapPoint,
): { readonly inside: number; readonly beyond: BalanceCheck | null } {
  let [inside, outside] = [holding, failing];
  while (Math.abs(outside - inside) > NARROW) {
    const middle = (inside + outside) / 2;
    if (holds(at(middle))) inside = middle;
    else outside = middle;
  }
  return { inside, beyond: at(outside).fails };
}

/** The media float up. */
export const isLifted = ({ lift }: Pick<MapPoint, 'lift'>): boolean => lift !== null && lift >= 1;

/** How many points hold, at how many the media float, and how many fail by each check named there. */
export function tally({ points }: Pick<OperatingMap, 'points'>): {
  readonly found: number;
  readonly hold: number;
  readonly lifted: number;
  readonly failing: readonly (readonly [BalanceCheck, number])[];
} {
  const found = points.filter((point) => point.found);
  const failing = new Map<BalanceCheck, number>();
  for (const { fails } of found) if (fails !== null) failing.set(fails, (failing.get(fails) ?? 0) + 1);
  return {
    found: found.length,
    hold: found.filter(({ fails }) => fails === null).length,
    lifted: found.filter(isLifted).length,
    failing: [...failing].sort((a, b) => b[1] - a[1]),
  };
}
