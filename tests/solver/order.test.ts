/**
 * Order of convergence on closed forms: 4 of the step and its quadratures, 3 of the embedded step and of the dense
 * output (Steinebach 1995, TH Darmstadt preprint 1741; Hairer & Wanner 1996, Solving Ordinary Differential Equations II,
 * sec. IV.7). An output of order 3 is off by the fourth power of the step it stands in.
 */
import { describe, expect, test } from 'vitest';
import { bell, type Case, crest, forced, kaps, turning } from '../cases.ts';
import { march, slope } from './march.ts';

const COUNTS = [32, 64, 128, 256];
const near = (got: number, theory: number): void => expect(Math.abs(got - theory), `slope ${got}`).toBeLessThan(0.2);

/** Slope of the error of one state or sum at the end; −1 for the largest of the states. */
function orderOf(each: Case, which: number, embedded = false): number {
  const exact = each.exact(each.end);
  return slope(COUNTS, (count) => {
    const errors = march(each, count, embedded).end.map((y, k) => Math.abs(y - exact[k]));
    return which < 0 ? Math.max(...errors.slice(0, each.system.size)) : errors[which];
  });
}

describe.each([bell, turning, crest, kaps(1), forced(1)])('non-stiff, $name', (each) => {
  test('step 4', () => near(orderOf(each, -1), 4));
  test('estimate 3', () => near(orderOf(each, -1, true), 3));
  test('dense output 3', () => near(slope(COUNTS, (count) => march(each, count).inside) - 1, 3));
  test('quadratures 4', () => {
    const { size, quadratures } = each.system;
    for (let r = 0; r < quadratures; r++) near(orderOf(each, size + r), 4);
  });
});

// Lubich & Ostermann (1995): order 3 is what a method fit for stiff forcing keeps, uniformly in the stiffness; the
// error is divided by the stiffness besides, so that below 1e6 it stays clear of rounding.
describe.each([forced(1e4), forced(1e5)])('stiff, $name', (each) => {
  test('step 3, and the estimate with it', () => {
    near(orderOf(each, -1), 3);
    near(orderOf(each, -1, true), 3);
  });
  test('dense output 3', () => near(slope(COUNTS, (count) => march(each, count).inside) - 1, 3));
  test('quadratures 4', () => near(orderOf(each, 1), 4));
});

test('the stiffer, the smaller the error of the step', () => {
  const errorAt = (k: number): number => Math.abs(march(forced(k), 16).end[0] - forced(k).exact(2)[0]);
  const errors = [1e3, 1e4, 1e5, 1e6].map(errorAt);
  expect(errors).toEqual([...errors].sort((p, q) => q - p));
  expect(errors[3]).toBeLessThan(1e-10);
});

describe.each([kaps(1e4), kaps(1e6)])('stiff, $name', (each) => {
  test('slow state and quadratures 4', () => {
    near(orderOf(each, 1), 4);
    near(orderOf(each, 2), 4);
  });
  test('estimate of the slow state 3', () => near(orderOf(each, 1, true), 3));
});
