/**
 * Derivative of `f` at `x` by central differences of fourth order, four evaluations at ±h and ±2h.
 *
 * Exact for quartics; of what a smooth law loses by it some 1e-9 relative is left at the steps used here.
 */
export function derivative(f: (x: number) => number, x: number, h: number): number {
  return (8 * (f(x + h) - f(x - h)) - (f(x + 2 * h) - f(x - 2 * h))) / (12 * h);
}

/** |a − b| relative to the greater of |b| and `scale`. */
export function relativeError(a: number, b: number, scale = 0): number {
  return a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(b), scale);
}

/** Largest relative error of a law's slopes against differences, over its arguments one by one. */
export function worstSlope(
  law: (args: readonly number[]) => { readonly value: number; readonly slopes: readonly number[] },
  args: readonly number[],
  h: number,
): number {
  const { value, slopes } = law(args);
  const scale = 1e-9 * Math.abs(value);
  return Math.max(
    ...slopes.map((slope, i) => {
      const step = h * Math.max(Math.abs(args[i]), 1e-3);
      const along = (x: number): number => law(args.map((arg, j) => (j === i ? x : arg))).value;
      return relativeError(slope, derivative(along, args[i], step), scale / step);
    }),
  );
}

/** Root of a function that changes sign between `low` and `high`, by halving to the last bit. */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  const rising = f(low) < 0;
  let a = low;
  let b = high;
  for (let i = 0; i < 200; i++) {
    const mid = (a + b) / 2;
    if (mid === a || mid === b) break;
    if (f(mid) < 0 === rising) a = mid;
    else b = mid;
  }
  return (a + b) / 2;
}

/** Integral of `f` between two bounds: Gauss's rule of five points on equal parts. */
export function integral(f: (x: number) => number, from: number, to: number, parts = 200): number {
  const node = [0, Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3];
  const weight = [128 / 225, (322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900];
  const half = (to - from) / (2 * parts);
  let sum = 0;
  for (let i = 0; i < parts; i++) {
    const mid = from + (2 * i + 1) * half;
    sum += weight[0] * f(mid);
    for (const k of [1, 2]) sum += weight[k] * (f(mid - half * node[k]) + f(mid + half * node[k]));
  }
  return sum * half;
}
