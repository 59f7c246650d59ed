/** Steps of equal size through a case, and what the errors shrink with. */
import { RosenbrockStep } from '../../sim/solver/step.ts';
import type { Case } from '../cases.ts';

export interface March {
  /** States and sums at the end. */
  readonly end: number[];
  /** Largest error of the dense output inside any step. */
  readonly inside: number;
}

/**
 * Marches through a case in equal steps.
 *
 * @param embedded whether to go on with the lower of the two solutions, of order 3, that the estimate is the gap between
 */
export function march({ system, start, end, exact }: Case, count: number, embedded = false): March {
  const step = new RosenbrockStep(system);
  const y = Float64Array.from(start);
  const sums = new Float64Array(system.quadratures);
  const h = end / count;
  let inside = 0;
  for (let i = 0; i < count; i++) {
    step.begin(i * h, y);
    step.attempt(h);
    step.prepareDense();
    inside = Math.max(inside, ...insideErrors(step, exact, i * h, h));
    for (let k = 0; k < y.length; k++) y[k] = embedded ? step.end[k] - step.error[k] : step.end[k];
    for (let r = 0; r < sums.length; r++) sums[r] += step.growth[r];
  }
  return { end: [...y, ...sums], inside };
}

/** Places inside a step, away from its ends. */
const PLACES = [0.2, 0.35, 0.5, 0.65, 0.8];

function insideErrors(step: RosenbrockStep, exact: Case['exact'], t: number, h: number): number[] {
  const { start, end, inner1, inner2 } = step;
  return PLACES.flatMap((theta) => {
    const y = exact(t + theta * h);
    return Array.from(start, (from, k) => {
      const rest = 1 - theta;
      return Math.abs(rest * from + theta * (end[k] + rest * (inner1[k] + theta * inner2[k])) - y[k]);
    });
  });
}

/** Slope of log error over log step size, by least squares. */
export function slope(counts: readonly number[], errorOf: (count: number) => number): number {
  const x = counts.map((count) => -Math.log(count));
  const y = counts.map((count) => Math.log(errorOf(count)));
  const mean = (v: readonly number[]): number => v.reduce((sum, each) => sum + each, 0) / v.length;
  const [mx, my] = [mean(x), mean(y)];
  const rise = x.reduce((sum, each, i) => sum + (each - mx) * (y[i] - my), 0);
  return rise / x.reduce((sum, each) => sum + (each - mx) ** 2, 0);
}
