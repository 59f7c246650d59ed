/** The coefficients themselves: order, stability and the conditions that keep the order under stiff forcing. */
import { describe, expect, test } from 'vitest';
import { A, ALPHA, B, B_TIME, D, GAMMA, H1, H2, M, STAGES } from '../../sim/solver/tableau.ts';
import { alpha, b, beta, dot, embedded, Gamma, ones, solveBeta, stability, sum, times } from './classical.ts';

/** The published coefficients have sixteen digits; sums of products of size 100 leave this. */
const ROUNDING = 2e-13;
const near = (got: number, expected: number): void => expect(Math.abs(got - expected)).toBeLessThan(ROUNDING);

const a1 = alpha.map(sum);
const b1 = beta.map(sum);
const powers = (p: number): number[] => a1.map((each) => each ** p);

/** Hairer & Wanner (1996), table IV.7.1, with β holding γ on its diagonal. */
const conditions = (w: readonly number[]): [number, string, number, number][] => [
  [1, 'Σ b', sum(w), 1],
  [2, 'Σ b β', dot(w, b1), 1 / 2],
  [3, 'Σ b α²', dot(w, powers(2)), 1 / 3],
  [3, 'Σ b β β', dot(w, times(beta, b1)), 1 / 6],
  [4, 'Σ b α³', dot(w, powers(3)), 1 / 4],
  [
    4,
    'Σ b α α β',
    dot(
      w,
      times(alpha, b1).map((each, i) => each * a1[i]),
    ),
    1 / 8,
  ],
  [4, 'Σ b β α²', dot(w, times(beta, powers(2))), 1 / 12],
  [4, 'Σ b β β β', dot(w, times(beta, times(beta, b1))), 1 / 24],
];

describe('the step', () => {
  test.each(conditions(b))('fulfills the condition of order %i on %s', (_, __, got, expected) => near(got, expected));

  test('is stiffly accurate: its weights are the last row of β', () => {
    for (let j = 0; j < STAGES; j++) near(b[j], beta[STAGES - 1][j]);
    expect(M).toEqual([...A[STAGES - 1], 1]);
  });

  // Lubich & Ostermann (1995), IMA J. Numer. Anal. 15, 555–583; Steinebach (1995) adds them to those of RODAS.
  test.each([0, 1, 2, 3])('keeps its order under stiff forcing: bᵀ β^%i (2 β² 1 − α²) = 0', (j) => {
    let x = times(beta, b1).map((each, i) => 2 * each - a1[i] ** 2);
    for (let turn = 0; turn < j; turn++) x = times(beta, x);
    near(dot(b, x), 0);
  });
});

describe('the embedded step', () => {
  const lower = conditions(embedded).filter(([order]) => order < 4);
  test.each(lower)('fulfills the condition of order %i on %s', (_, __, got, expected) => near(got, expected));

  test('is of no higher order, so that the difference says something', () => {
    const higher = conditions(embedded).filter(([order]) => order === 4);
    expect(Math.max(...higher.map(([, , got, expected]) => Math.abs(got - expected)))).toBeGreaterThan(1e-3);
  });
});

describe('stability', () => {
  const heights = Array.from({ length: 2001 }, (_, k) => 10 ** (-3 + (9 * k) / 2000));

  test.each([
    ['the step', b],
    ['the embedded step', embedded],
  ])('L-stable, %s: R vanishes at infinity and is at most 1 on the imaginary axis', (_, weights) => {
    // R(−∞) = 1 − wᵀ β⁻¹ 1.
    near(dot(weights, solveBeta(ones)), 1);
    expect(Math.max(...heights.map((y) => stability(weights, 0, y)))).toBeLessThanOrEqual(1 + 1e-12);
  });

  test('follows the exponential at small z to order 4', () => {
    const gap = (z: number): number => Math.abs(stability(b, z, 0) - Math.exp(z));
    expect(Math.log2(gap(-0.1) / gap(-0.05))).toBeCloseTo(5, 0);
  });
});

describe('derived coefficients', () => {
  test('moments and weights by time are the row sums of α and Γ', () => {
    for (let i = 0; i < STAGES; i++) {
      near(a1[i], ALPHA[i]);
      near(sum(Gamma[i]), D[i]);
      near(Gamma[i][i], GAMMA);
    }
  });

  test('classical weights of the quadratures', () => {
    for (let i = 0; i < STAGES; i++) near(B[i], b[i]);
    near(B_TIME, dot(b, times(Gamma, ones)));
  });

  // The cubic's weights, b(θ): conditions of order 3 at θ with 1, θ, θ²/… on the right (Hairer & Wanner, IV.7).
  test.each([0.1, 0.25, 0.5, 0.8])('dense output is of order 3 at θ = %f', (theta) => {
    const rest = 1 - theta;
    const m = M.map((each, i) => theta * (each + rest * (H1[i] + theta * H2[i])));
    const w = ones.map((_, j) =>
      dot(
        m,
        Gamma.map((row) => row[j]),
      ),
    );
    near(sum(w), theta);
    near(dot(w, b1), theta ** 2 / 2);
    near(dot(w, powers(2)), theta ** 3 / 3);
    near(dot(w, times(beta, b1)), theta ** 3 / 6);
  });
});
