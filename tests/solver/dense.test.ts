/** The cubic inside a step, against a fine grid and known cubics. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { denseSlope, denseValue, firstCrossing, flatPoints } from '../../sim/solver/dense.ts';

const coefficient = fc.double({ min: -10, max: 10, noNaN: true });
const cubic = fc.tuple(coefficient, coefficient, coefficient, coefficient);
const grid = Array.from({ length: 2001 }, (_, i) => i / 2000);

/** Coefficients of p + q θ + r θ² + s θ³. */
function ofPowers(p: number, q: number, r: number, s: number): [number, number, number, number] {
  return [p, p + q + r + s, -(r + s), -s];
}

describe('the value', () => {
  test('is that of the cubic in powers', () => {
    fc.assert(
      fc.property(cubic, fc.double({ min: 0, max: 1, noNaN: true }), (c, x) => {
        const [p, q, r, s] = c;
        expect(Math.abs(denseValue(...ofPowers(p, q, r, s), x) - (p + x * (q + x * (r + x * s))))).toBeLessThan(1e-13);
        expect(Math.abs(denseSlope(...ofPowers(p, q, r, s), x) - (q + x * (2 * r + x * 3 * s)))).toBeLessThan(1e-12);
      }),
    );
  });

  test('is exact at the ends', () => {
    expect(denseValue(0.1, 0.7, 3, -4, 0)).toBe(0.1);
    expect(denseValue(0.1, 0.7, 3, -4, 1)).toBe(0.7);
  });
});

describe('flat points', () => {
  test('of a cubic with turns at 1/4 and 3/4', () => {
    // Slope 3 − 16 θ + 16 θ².
    const [one, other] = flatPoints(...ofPowers(0, 3, -8, 16 / 3));
    expect(one).toBeCloseTo(0.25, 14);
    expect(other).toBeCloseTo(0.75, 14);
  });

  test('of a parabola, a line and a constant', () => {
    expect(flatPoints(...ofPowers(1, 1, -1, 0))).toEqual([0.5]);
    expect(flatPoints(...ofPowers(1, 2, 0, 0))).toEqual([]);
    expect(flatPoints(...ofPowers(1, 0, 0, 0))).toEqual([]);
  });

  test('leave the cubic rising or falling between them', () => {
    fc.assert(
      fc.property(cubic, (c) => {
        const places = [0, ...flatPoints(...c), 1];
        for (let i = 1; i < places.length; i++) {
          const inner = grid.slice(1, -1).map((x) => places[i - 1] + x * (places[i] - places[i - 1]));
          const slopes = inner.map((x) => denseSlope(...c, x)).filter((each) => Math.abs(each) > 1e-9);
          expect(new Set(slopes.map(Math.sign)).size).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe('the first crossing', () => {
  test('is where the grid first changes side', () => {
    fc.assert(
      fc.property(cubic, coefficient, fc.constantFrom<1 | -1>(1, -1), (c, value, direction) => {
        fc.pre(direction * (c[0] - value) < -1e-9);
        const theta = firstCrossing(...c, value, direction);
        const onGrid = grid.findIndex((x) => direction * (denseValue(...c, x) - value) >= 1e-12);
        if (onGrid >= 0) {
          expect(theta).toBeLessThanOrEqual(grid[onGrid]);
          expect(theta).toBeGreaterThanOrEqual(0);
        }
        if (theta < 0) return;
        expect(Math.abs(denseValue(...c, theta) - value)).toBeLessThan(1e-12);
        for (const x of grid)
          if (x < theta - 1e-6) expect(direction * (denseValue(...c, x) - value)).toBeLessThan(1e-12);
      }),
      { numRuns: 300 },
    );
  });

  test('of a line', () => {
    expect(firstCrossing(0, 1, 0, 0, 0.3, 1)).toBeCloseTo(0.3, 15);
    expect(firstCrossing(0, 1, 0, 0, 1, 1)).toBe(1);
    expect(firstCrossing(0, 1, 0, 0, 1.0000001, 1)).toBe(-1);
    expect(firstCrossing(1, 0, 0, 0, 0.3, -1)).toBeCloseTo(0.7, 15);
  });

  test('of a level it only touches from below', () => {
    // 4 θ (1 − θ) has its top of 1 at 1/2.
    expect(firstCrossing(0, 0, 4, 0, 1, 1)).toBeCloseTo(0.5, 7);
    expect(firstCrossing(0, 0, 4, 0, 1 + 1e-12, 1)).toBe(-1);
  });
});
