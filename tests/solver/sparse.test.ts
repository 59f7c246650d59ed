/** The exact solve against Gauss' elimination with pivoting, on matrices of the kind compartments give. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SparseMatrix } from '../../sim/solver/sparse.ts';
import type { Pattern } from '../../sim/solver/system.ts';

interface Link {
  from: number;
  to: number;
  rate: number;
}

/** Links of a chain, closed to a ring, with chords across it. */
function links(
  size: number,
  closed: boolean,
  chords: readonly (readonly [number, number])[],
  rate: () => number,
): Link[] {
  const made: Link[] = [];
  const add = (from: number, to: number): void => {
    if (from !== to && !made.some((link) => link.from === from && link.to === to))
      made.push({ from, to, rate: rate() });
  };
  for (let k = 0; k + 1 < size; k++) add(k, k + 1);
  if (closed) add(size - 1, 0);
  for (const [from, to] of chords) add(from % size, to % size);
  return made;
}

/** The Jacobian of compartments: what a link takes from one it gives to the other; none leaks. */
function jacobianOf(size: number, made: readonly Link[]): { pattern: Pattern; values: Float64Array } {
  const diagonal = new Float64Array(size);
  for (const { from, rate } of made) diagonal[from] -= rate;
  const all = Array.from({ length: size }, (_, k) => k);
  return {
    pattern: {
      rows: Int32Array.from([...all, ...made.map(({ to }) => to)]),
      columns: Int32Array.from([...all, ...made.map(({ from }) => from)]),
    },
    values: Float64Array.from([...diagonal, ...made.map(({ rate }) => rate)]),
  };
}

/** Solution of (shift I − J) x = b by elimination with partial pivoting. */
function denseSolve(shift: number, pattern: Pattern, values: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  const rows = Array.from(b, (each, i) => {
    const row = new Float64Array(n + 1);
    row[i] = shift;
    row[n] = each;
    return row;
  });
  for (let k = 0; k < values.length; k++) rows[pattern.rows[k]][pattern.columns[k]] -= values[k];
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i][k]) > Math.abs(rows[best][k])) best = i;
    [rows[k], rows[best]] = [rows[best], rows[k]];
    for (let i = k + 1; i < n; i++) {
      const factor = rows[i][k] / rows[k][k];
      if (factor !== 0) for (let j = k; j <= n; j++) rows[i][j] -= factor * rows[k][j];
    }
  }
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let sum = rows[i][n];
    for (let j = i + 1; j < n; j++) sum -= rows[i][j] * x[j];
    x[i] = sum / rows[i][i];
  }
  return x;
}

/** Largest difference from the dense solution, relative to the largest of it. */
function gap(size: number, made: readonly Link[], shift: number, b: Float64Array): number {
  const { pattern, values } = jacobianOf(size, made);
  const matrix = new SparseMatrix(size, pattern);
  const x = Float64Array.from(b);
  // A second factorization must find nothing of the first.
  matrix.factor(2 * shift, values);
  matrix.factor(shift, values);
  matrix.solve(x);
  const dense = denseSolve(shift, pattern, values, b);
  const most = Math.max(...dense.map(Math.abs));
  return Math.max(...x.map((each, k) => Math.abs(each - dense[k]))) / most;
}

const rate = fc.double({ min: 1e-6, max: 200, noNaN: true });
const shape = fc.record({
  closed: fc.boolean(),
  shift: fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
  rates: fc.array(rate, { minLength: 20, maxLength: 60 }),
  rights: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 5, maxLength: 50 }),
  chords: fc.array(fc.tuple(fc.nat(299), fc.nat(299)), { maxLength: 12 }),
});

function cycled(values: readonly number[]): () => number {
  let at = 0;
  return () => values[at++ % values.length];
}

describe('a solve', () => {
  test.each([
    ['few states', 1, 12, 60],
    ['many states', 40, 300, 8],
  ])('equals a dense one with pivoting, %s', (_, min, max, numRuns) => {
    fc.assert(
      fc.property(fc.integer({ min, max }), shape, (size, { closed, chords, shift, rates, rights }) => {
        const next = cycled([1, ...rights]);
        const b = Float64Array.from({ length: size }, next);
        expect(gap(size, links(size, closed, chords, cycled(rates)), shift, b)).toBeLessThan(1e-9);
      }),
      { numRuns },
    );
  });

  test('of a ring by its closed form: an even right-hand side stays even', () => {
    // Column sums of shift I − J are the shift where nothing leaks, and a uniform ring has row sums likewise.
    const made = links(50, true, [], () => 7);
    const { pattern, values } = jacobianOf(50, made);
    const matrix = new SparseMatrix(50, pattern);
    matrix.factor(2, values);
    const x = new Float64Array(50).fill(1);
    matrix.solve(x);
    for (const each of x) expect(Math.abs(each - 0.5)).toBeLessThan(1e-15);
  });

  test('of a matrix of nothing but its shift', () => {
    const matrix = new SparseMatrix(3, { rows: Int32Array.of(), columns: Int32Array.of() });
    matrix.factor(4, new Float64Array(0));
    const x = Float64Array.of(4, 8, 12);
    matrix.solve(x);
    expect([...x]).toEqual([1, 2, 3]);
  });
});

describe('fill', () => {
  const entries = (size: number, closed: boolean): number =>
    new SparseMatrix(
      size,
      jacobianOf(
        size,
        links(size, closed, [], () => 1),
      ).pattern,
    ).entries;

  test('none in a chain', () => {
    for (const size of [1, 2, 5, 50, 300]) expect(entries(size, false)).toBe(3 * size - 2);
  });

  test('in proportion to the ring', () => {
    for (const size of [3, 6, 50, 300]) expect(entries(size, true)).toBe(5 * size - 6);
  });

  test('few more for a chord', () => {
    const chorded = (size: number): number =>
      new SparseMatrix(
        size,
        jacobianOf(
          size,
          links(size, true, [[1, size / 2]], () => 1),
        ).pattern,
      ).entries;
    for (const size of [20, 100, 300]) expect(chorded(size)).toBeLessThan(7 * size);
  });
});
