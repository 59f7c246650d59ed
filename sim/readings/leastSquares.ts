import { Matrix, QrDecomposition } from 'ml-matrix';

/** Where an estimate stands: its figures, their covariance, and the whitened residuals and slopes there. */
export interface Estimate {
  readonly u: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** (reading − model)/standard deviation. */
  readonly residuals: readonly number[];
  /** Slopes of the whitened model: one row a reading, one column an unknown. */
  readonly slopes: readonly (readonly number[])[];
  readonly converged: boolean;
}

/** A model that is asked for whitened values, and for their slopes. */
export interface Whitened {
  /** (model − reading)/standard deviation of each reading at u. */
  misfit(u: readonly number[]): readonly number[];
  slopes(u: readonly number[], misfit: readonly number[]): readonly (readonly number[])[];
}

/** Steps shorter than this (prior standard deviations) end it. */
const SHORT = 1e-4;
const LONGEST = 2;
const MOST = 20;
const MOST_HALVINGS = 8;

/**
 * Least squares of readings and priors together: the u that minimizes |misfit(u)|² + |u|², each unknown being standard
 * normal before anything is read. That is the maximum a posteriori estimate; its covariance is (JᵀJ + I)⁻¹ (Tarantola
 * 2005, Inverse Problem Theory, sec. 3.2; Bates & Watts 1988, Nonlinear Regression Analysis, secs. 2.2 and 3.2: Gauss–
 * Newton steps halved until the sum falls).
 *
 * The steps are ml-matrix's QR solutions of the stacked equations. ml-levenberg-marquardt 5.1 serves less here: it ends
 * only where the sum of squares itself vanishes, takes steps that raise it, and gives no covariance.
 * @param from where to start
 */
export function estimate(
  model: Whitened,
  unknowns: number,
  from: readonly number[] = Array(unknowns).fill(0),
): Estimate {
  let u = [...from];
  let misfit = model.misfit(u);
  for (let i = 0; ; i++) {
    const slopes = model.slopes(u, misfit);
    const step = solveStacked(slopes, misfit, u);
    const length = Math.hypot(...step);
    const converged = length < SHORT;
    if (converged || i === MOST) return finished(u, slopes, misfit, converged);
    const next = downhill(model, u, misfit, step, Math.min(1, LONGEST / length));
    if (next === undefined) return finished(u, slopes, misfit, length < 100 * SHORT);
    u = next.u;
    misfit = next.misfit;
  }
}

const squares = (x: readonly number[]): number => x.reduce((sum, each) => sum + each * each, 0);

function downhill(
  model: Whitened,
  u: readonly number[],
  misfit: readonly number[],
  step: readonly number[],
  whole: number,
): { u: number[]; misfit: readonly number[] } | undefined {
  const before = squares(misfit) + squares(u);
  for (let halving = 0, share = whole; halving <= MOST_HALVINGS; halving++, share /= 2) {
    const next = u.map((each, k) => each + share * step[k]);
    const there = model.misfit(next);
    if (squares(there) + squares(next) < before) return { u: next, misfit: there };
  }
  return undefined;
}

/** The step that solves [J; I] step = −[misfit; u] in least squares. */
function solveStacked(slopes: Estimate['slopes'], misfit: readonly number[], u: readonly number[]): number[] {
  const right = Matrix.columnVector([...misfit, ...u]).mul(-1);
  return new QrDecomposition(stacked(slopes, u.length)).solve(right).to1DArray();
}

function stacked(slopes: Estimate['slopes'], unknowns: number): Matrix {
  return new Matrix([...slopes.map((row) => [...row]), ...Matrix.identity(unknowns).to2DArray()]);
}

/** (JᵀJ + I)⁻¹ = R⁻¹R⁻ᵀ of the stacked equations. */
export function covarianceOf(slopes: Estimate['slopes'], unknowns: number): number[][] {
  const { upperTriangularMatrix } = new QrDecomposition(stacked(slopes, unknowns));
  const inverse = new QrDecomposition(upperTriangularMatrix).solve(Matrix.identity(unknowns));
  return inverse.mmul(inverse.transpose()).to2DArray();
}

function finished(u: number[], slopes: Estimate['slopes'], misfit: readonly number[], converged: boolean): Estimate {
  const residuals = misfit.map((each) => -each);
  return { u, covariance: covarianceOf(slopes, u.length), residuals, slopes, converged };
}

/** Standard deviation of what moves with the unknowns by these slopes. */
export function deviation(slopes: readonly number[], covariance: Estimate['covariance']): number {
  const sum = slopes.reduce((all, a, i) => all + a * slopes.reduce((row, b, k) => row + b * covariance[i][k], 0), 0);
  return Math.sqrt(Math.max(0, sum));
}
