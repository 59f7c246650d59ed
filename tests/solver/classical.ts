/** The method in its untransformed form, worked out of the transformed coefficients as Hairer & Wanner (1996), IV.7. */
import { A, C, GAMMA, M, STAGES } from '../../sim/solver/tableau.ts';

type Matrix = number[][];

const indices = Array.from({ length: STAGES }, (_, i) => i);
const at = (rows: readonly (readonly number[])[], i: number, j: number): number => rows[i][j] ?? 0;

export const sum = (x: readonly number[]): number => x.reduce((total, each) => total + each, 0);
export const dot = (x: readonly number[], y: readonly number[]): number => sum(x.map((each, i) => each * y[i]));
export const times = (a: Matrix, x: readonly number[]): number[] => a.map((row) => dot(row, x));
const column = (a: Matrix, j: number): number[] => a.map((row) => row[j]);
const product = (a: readonly (readonly number[])[], b: Matrix): Matrix =>
  indices.map((i) => indices.map((j) => sum(indices.map((k) => at(a, i, k) * b[k][j]))));

/** Γ, the inverse of I/γ − C, column by column. */
function inverseOfC(): Matrix {
  const gamma: Matrix = indices.map(() => indices.map(() => 0));
  for (const j of indices)
    for (const i of indices)
      gamma[i][j] = GAMMA * ((i === j ? 1 : 0) + sum(indices.slice(0, i).map((k) => at(C, i, k) * gamma[k][j])));
  return gamma;
}

export const Gamma = inverseOfC();
/** α, and β = α + Γ. */
export const alpha = product(A, Gamma);
export const beta = alpha.map((row, i) => row.map((each, j) => each + Gamma[i][j]));
export const ones = indices.map(() => 1);
/** Weights of the step, and of the embedded one, which leaves out the last stage. */
export const b = indices.map((j) => dot(M, column(Gamma, j)));
export const embedded = indices.map((j) => dot(M.slice(0, STAGES - 1), column(Gamma, j)));

/** β⁻¹ x; β is lower triangular with γ on its diagonal. */
export function solveBeta(x: readonly number[]): number[] {
  const y: number[] = [];
  for (const i of indices) y[i] = (x[i] - sum(indices.slice(0, i).map((j) => beta[i][j] * y[j]))) / GAMMA;
  return y;
}

/** Stability function R(z) = 1 + z bᵀ (I − z β)⁻¹ 1 at z = x + i y: its modulus. */
export function stability(weights: readonly number[], x: number, y: number): number {
  const re: number[] = [];
  const im: number[] = [];
  for (const i of indices) {
    let p = 1;
    let q = 0;
    for (let j = 0; j < i; j++) {
      p += beta[i][j] * (x * re[j] - y * im[j]);
      q += beta[i][j] * (x * im[j] + y * re[j]);
    }
    const [u, v] = [1 - x * GAMMA, -y * GAMMA];
    re[i] = (p * u + q * v) / (u * u + v * v);
    im[i] = (q * u - p * v) / (u * u + v * v);
  }
  const [sr, si] = [dot(weights, re), dot(weights, im)];
  return Math.hypot(1 + x * sr - y * si, x * si + y * sr);
}
