import { Matrix, SVD } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { randomStream } from '../../sim/random.ts';
import { deviation, estimate, type Whitened } from '../../sim/readings/leastSquares.ts';
import { NINETY, spreadOver } from '../../sim/readings/prior.ts';
import { risingRoot } from '../../sim/readings/root.ts';
import { normal } from './sites.ts';

/** A straight model A u ≈ b, whitened. */
const straight = (a: readonly (readonly number[])[], b: readonly number[]): Whitened => ({
  misfit: (u) => a.map((row, i) => row.reduce((sum, each, k) => sum + each * u[k], 0) - b[i]),
  slopes: () => a,
});

describe('least squares with priors', () => {
  test('weigh one reading against its prior as two independent measures of one thing', () => {
    // JCGM 100:2008, 5.1.2 and B.2.1; in any textbook: weights 1/σ². Prior 0 ± 1, reading 3 ± 0.5: mean (0·1 + 3·4)/5,
    // variance 1/(1 + 4).
    const { u, covariance, converged } = estimate(straight([[2]], [6]), 1);
    expect(converged).toBe(true);
    expect(u[0]).toBeCloseTo(12 / 5, 12);
    expect(covariance[0][0]).toBeCloseTo(1 / 5, 12);
  });

  test('of a straight model are the closed form (AᵀA + I)⁻¹Aᵀb, its covariance (AᵀA + I)⁻¹, by singular values', () => {
    const random = randomStream('straight models');
    for (let run = 0; run < 50; run++) {
      const unknowns = 1 + Math.floor(random() * 6);
      const rows = 1 + Math.floor(random() * 8);
      const a = Array.from({ length: rows }, () => Array.from({ length: unknowns }, () => 3 * normal(random)));
      const b = a.map(() => 2 * normal(random));
      const { u, covariance, residuals } = estimate(straight(a, b), unknowns);
      // Another way than the QR solution: V diag(s/(s² + 1)) Uᵀ b (Tikhonov's filter factors; Hansen 1998).
      const svd = new SVD(new Matrix(a), { autoTranspose: true });
      const s = svd.diagonal;
      const [left, right] = [svd.leftSingularVectors, svd.rightSingularVectors];
      const filtered = Matrix.diag(s.map((each) => each / (each * each + 1)));
      const closed = right.mmul(filtered).mmul(left.transpose()).mmul(Matrix.columnVector(b)).to1DArray();
      const lost = Matrix.diag(s.map((each) => (each * each) / (each * each + 1)));
      const spread = Matrix.eye(unknowns).sub(right.mmul(lost).mmul(right.transpose())).to2DArray();
      for (let k = 0; k < unknowns; k++) {
        expect(u[k]).toBeCloseTo(closed[k], 9);
        for (let i = 0; i < unknowns; i++) expect(covariance[k][i]).toBeCloseTo(spread[k][i], 9);
      }
      a.forEach((row, i) => {
        expect(residuals[i]).toBeCloseTo(b[i] - row.reduce((sum, each, k) => sum + each * closed[k], 0), 8);
      });
    }
  });

  test('of a bent model end where the gradient vanishes', () => {
    // Bates & Watts (1988), sec. 2.2: at the minimum the residual is normal to the tangent plane.
    const bent: Whitened = {
      misfit: ([u]) => [4 * Math.exp(u) - 9, 2 * Math.exp(-u) - 1.2],
      slopes: ([u]) => [[4 * Math.exp(u)], [-2 * Math.exp(-u)]],
    };
    const { u, converged } = estimate(bent, 1);
    const gradient = (x: number): number => {
      const [[a], [b]] = bent.slopes([x], []);
      const [r, q] = bent.misfit([x]);
      return a * r + b * q + x;
    };
    expect(converged).toBe(true);
    expect(u[0]).toBeCloseTo(risingRoot(gradient, 0, 2, 1e-10), 4);
  });

  test('give a sum of unknowns the deviation of its variance law', () => {
    // JCGM 100:2008, 5.2.2: u² = a² u₁² + b² u₂² + 2 a b u₁₂.
    const covariance = [
      [4, 1],
      [1, 9],
    ];
    expect(deviation([2, -1], covariance)).toBeCloseTo(Math.sqrt(4 * 4 + 9 - 4), 12);
  });
});

describe('the spread of a value', () => {
  test('has its 90 % between 1.645 deviations, as in the tables of the normal distribution', () => {
    // JCGM 100:2008, table G.2, last row (infinite degrees of freedom): 1.64 at 90 %, 2.58 at 99 %; Φ by series.
    expect(NINETY).toBeCloseTo(1.645, 3);
    expect(2 * phi(NINETY) - 1).toBeCloseTo(0.9, 12);
  });

  test.each([
    [0.9, 0.82, 0.96],
    [0.12, 0.08, 0.18],
    [0.005, 0, 0.02],
    [1, 0.88, 1.12],
  ])('of %d from %d to %d passes through all three, rising', (value, low, high) => {
    const at = spreadOver(value, [low, high]);
    expect(at(0)).toBeCloseTo(value, 12);
    expect(at(-NINETY)).toBeCloseTo(low, 12);
    expect(at(NINETY)).toBeCloseTo(high, 12);
    for (let u = -3; u < 3; u += 0.1) expect(at(u + 0.1)).toBeGreaterThan(at(u));
  });

  test('is a plain lognormal where the band is a factor either way', () => {
    const at = spreadOver(0.12, [0.12 / 1.5, 0.12 * 1.5]);
    for (const u of [-2.5, -1, 0.3, 2]) expect(at(u)).toBeCloseTo(0.12 * 1.5 ** (u / NINETY), 12);
  });
});

/** Normal distribution by its power series (Abramowitz & Stegun 1964, 26.2.10). */
function phi(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 60; n++) {
    term *= (-x * x) / (2 * n);
    sum += term / (2 * n + 1);
  }
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
}
