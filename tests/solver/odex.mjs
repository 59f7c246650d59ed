/** Hairer & Wanner's extrapolation code ODEX: its own package ships sources that strict TypeScript refuses. */
import odex from 'odex';

/**
 * Solution of a non-stiff system at `end`, to a relative and absolute tolerance.
 *
 * @param {(t: number, y: number[]) => number[]} rates
 * @param {number[]} start
 * @param {number} end
 * @param {number} tolerance
 * @returns {number[]}
 */
export function extrapolate(rates, start, end, tolerance) {
  const solver = new odex.Solver(start.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 1e5;
  const { y, outcome } = solver.solve(rates, 0, start, end);
  if (outcome !== odex.Outcome.Converged) throw new Error(`odex ends with outcome ${outcome}`);
  return y;
}
