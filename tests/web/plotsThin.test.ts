import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { thin, valueAt } from '../../web/plots/thin.ts';

const times = (count: number): Float64Array => Float64Array.from({ length: count }, (_, i) => i);

describe('thinning', () => {
  test('keeps a peak of one row among ten thousand', () => {
    const values = new Float64Array(10_000);
    values[5_678] = 1;
    values[2_345] = -1;
    const points = thin(times(10_000), values, [0, 9_999], 300);
    expect(points).toContainEqual([5_678, 1]);
    expect(points).toContainEqual([2_345, -1]);
    expect(points.length).toBeLessThanOrEqual(4 * 301 + 2);
  });

  test('keeps the lowest and the highest of every window, in the order of time', () => {
    const rows = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 400 });
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 50 }), (values, pixels) => {
        const t = times(values.length);
        const points = thin(t, values, [0, values.length - 1], pixels);
        const drawn = points.map(([, value]) => value);
        expect(Math.min(...drawn) === Math.min(...values)).toBe(true);
        expect(Math.max(...drawn) === Math.max(...values)).toBe(true);
        for (let i = 1; i < points.length; i++) expect(points[i]![0]).toBeGreaterThanOrEqual(points[i - 1]![0]);
      }),
      { seed: 7 },
    );
  });

  test('sets the ends of a window in, straight between the rows about them', () => {
    const points = thin([0, 10, 20], [0, 10, 0], [5, 15], 100);
    expect(points[0]).toEqual([5, 5]);
    expect(points).toContainEqual([10, 10]);
    expect(points[points.length - 1]).toEqual([15, 5]);
  });

  test('keeps both sides of a jump, where a run restarts at one moment', () => {
    const points = thin([0, 10, 10, 20], [1, 1, 0, 0], [0, 20], 100);
    expect(points).toContainEqual([10, 1]);
    expect(points).toContainEqual([10, 0]);
  });
});

describe('the value at a moment', () => {
  test('lies on the straight line between two rows, and is held beyond the ends', () => {
    expect(valueAt([0, 10], [2, 4], 5)).toBe(3);
    expect(valueAt([0, 10], [2, 4], -1)).toBe(2);
    expect(valueAt([0, 10], [2, 4], 11)).toBe(4);
  });
});
