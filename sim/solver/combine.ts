/**
 * Sums of stages over all states, unrolled by their number: outside the rates, most of a step's time is spent here.
 * Rows of coefficients and lists of stages are full length, whatever number of them is used.
 */

/** out = base + scale Σ c_j u_j over the first `count` stages, 1 to 5. */
export function addStages(
  out: Float64Array,
  base: Float64Array,
  scale: number,
  c: Float64Array,
  u: readonly Float64Array[],
  count: number,
): void {
  const n = out.length;
  const u0 = u[0];
  const u1 = u[1];
  const u2 = u[2];
  const u3 = u[3];
  const u4 = u[4];
  const c0 = scale * c[0];
  const c1 = scale * c[1];
  const c2 = scale * c[2];
  const c3 = scale * c[3];
  const c4 = scale * c[4];
  if (count === 1) for (let k = 0; k < n; k++) out[k] = base[k] + c0 * u0[k];
  else if (count === 2) for (let k = 0; k < n; k++) out[k] = base[k] + c0 * u0[k] + c1 * u1[k];
  else if (count === 3) for (let k = 0; k < n; k++) out[k] = base[k] + c0 * u0[k] + c1 * u1[k] + c2 * u2[k];
  else if (count === 4)
    for (let k = 0; k < n; k++) out[k] = base[k] + c0 * u0[k] + c1 * u1[k] + c2 * u2[k] + c3 * u3[k];
  else for (let k = 0; k < n; k++) out[k] = base[k] + (c0 * u0[k] + c1 * u1[k] + c2 * u2[k] + c3 * u3[k] + c4 * u4[k]);
}

/** out = scale Σ c_j u_j over all six stages. */
export function sumStages(out: Float64Array, scale: number, c: Float64Array, u: readonly Float64Array[]): void {
  const u0 = u[0];
  const u1 = u[1];
  const u2 = u[2];
  const u3 = u[3];
  const u4 = u[4];
  const u5 = u[5];
  const c0 = scale * c[0];
  const c1 = scale * c[1];
  const c2 = scale * c[2];
  const c3 = scale * c[3];
  const c4 = scale * c[4];
  const c5 = scale * c[5];
  for (let k = 0; k < out.length; k++)
    out[k] = c0 * u0[k] + c1 * u1[k] + c2 * u2[k] + c3 * u3[k] + c4 * u4[k] + c5 * u5[k];
}

/** out += scale x */
export function addScaled(out: Float64Array, scale: number, x: Float64Array): void {
  for (let k = 0; k < out.length; k++) out[k] += scale * x[k];
}
