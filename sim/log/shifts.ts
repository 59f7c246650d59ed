import type { Estimate } from '../readings/leastSquares.ts';
import { deviation } from '../readings/leastSquares.ts';
import type { Track } from './track.ts';
import type { Shifts } from './unknowns.ts';

/** What does not go with the rest of a log: a reading, or a rise or fall between two of them. */
export interface Shift {
  readonly kind: 'stray' | 'jump';
  /** Index of the reading, or of the leg in which the level jumped. */
  readonly at: number;
  /** In standard deviations; positive: higher than the others make it. */
  readonly distance: number;
  /** By how much, in standard deviations of a reading. */
  readonly by: number;
}

/** Less of a shift than this is not held by the other unknowns' slack. */
const LEAST = 0.02;

/**
 * The reading or jump that is farthest beside a fit, as the one shift more that would lower its squares most: the score
 * test of a mean-shift outlier (Cook & Weisberg 1982, Residuals and Influence in Regression, sec. 2.2.2).
 */
export function worstShift(
  track: Track,
  { residuals, slopes, covariance }: Estimate,
  shifts: Shifts,
): Shift | undefined {
  const counted = track.readings.map((_, i) => i).filter((i) => !shifts.strays.includes(i));
  const by = (direction: readonly number[]): { distance: number; by: number } | undefined => {
    const along = slopes[0].map((_, k) => direction.reduce((all, each, i) => all + each * slopes[i][k], 0));
    const own = direction.reduce((all, each) => all + each * each, 0);
    const left = own - deviation(along, covariance) ** 2;
    if (left < LEAST * own) return undefined;
    const score = direction.reduce((all, each, i) => all + each * residuals[i], 0);
    return { distance: score / Math.sqrt(left), by: score / left };
  };
  const last = track.readings.length - 1;
  const strays = counted.flatMap((at, k): Shift[] => {
    const off = by(counted.map((_, i) => Number(i === k)));
    // A last reading that stands too high tells of water that came in just as well.
    return off === undefined || (at === last && off.distance > 0) ? [] : [{ kind: 'stray', at, ...off }];
  });
  const jumps = track.legs.flatMap(({ reading }, at): Shift[] => {
    if (reading === undefined || shifts.jumps.includes(at)) return [];
    // Where the pump was switched the pond rises or falls by what it is not known well enough for.
    if (track.readings[reading].on !== track.readings[reading - 1].on) return [];
    const off = by(counted.map((i) => Number(i >= reading)));
    return off === undefined ? [] : [{ kind: 'jump', at, ...off }];
  });
  // A single reading beside the others is the simpler tale where both tell it alike.
  return [...strays, ...jumps].reduce<Shift | undefined>(
    (worst, each) => (Math.abs(each.distance) > Math.abs(worst?.distance ?? 0) + 1e-6 ? each : worst),
    undefined,
  );
}
