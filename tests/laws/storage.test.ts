import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaAt, levelOf, locate, makeStorage, type Storage, volumeAt } from '../../sim/laws/storage.ts';
import { derivative, integral } from './differences.ts';

const shelf = makeStorage([
  [-0.9, 2],
  [-0.3, 6],
  [-0.3, 8],
  [0, 9],
]);
const bowl = makeStorage([
  [-1, 0],
  [0, 3],
]);
const gravelled = makeStorage(
  [
    [-0.6, 4],
    [0, 7],
  ],
  [
    { from: -0.6, to: -0.4, fraction: 0.6 },
    { from: -0.5, to: -0.2, fraction: 0.25 },
    { from: -0.1, to: 0.3, fraction: 0.1 },
  ],
);

/** Levels from below the floor to above the brim. */
const levels = (s: Storage): number[] => Array.from({ length: 121 }, (_, i) => s.z[0] + i / 80);

describe('what a basin holds', () => {
  test.each([
    ['a shelf', shelf],
    ['a bowl ending in a point', bowl],
    ['overlapping gravel', gravelled],
  ])('is exact both ways: %s', (_, s) => {
    for (const z of levels(s)) {
      const volume = volumeAt(s, z);
      expect(Math.abs(volumeAt(s, levelOf(s, volume)) - volume)).toBeLessThan(1e-13);
      if (volume > 1e-9) expect(levelOf(s, volume)).toBeCloseTo(z, 12);
    }
  });

  test('is exact both ways for any ascending profile', () => {
    const rise = fc.tuple(fc.double({ min: 1e-3, max: 0.5, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true }));
    fc.assert(
      fc.property(
        fc.array(rise, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (up, at) => {
          const tops = up.map((_, i) => up.slice(0, i + 1).reduce((z, [dz]) => z + dz, -1));
          const profile = up.map(([, area], i) => [tops[i], area] as const);
          const s = makeStorage([[-1, 1], ...profile]);
          const volume = at * volumeAt(s, tops[tops.length - 1]);
          expect(Math.abs(volumeAt(s, levelOf(s, volume)) - volume)).toBeLessThan(1e-13 * (1 + volume));
        },
      ),
      { seed: 7, numRuns: 500 },
    );
  });

  test('is the integral of its profile', () => {
    // Trapezium −0.9..−0.3 from 2 to 6 m², a ledge to 8 m², trapezium to 9 m² at 0, constant above.
    const area = (z: number): number => (z < -0.3 ? 2 + (4 * (z + 0.9)) / 0.6 : z < 0 ? 8 + (z + 0.3) / 0.3 : 9);
    for (const z of [-0.7, -0.3, -0.1, 0, 0.4]) {
      const pieces = [-0.9, -0.3, 0, 0.4].filter((edge) => edge < z).concat(z);
      const whole = pieces.slice(1).reduce((sum, to, i) => sum + integral(area, pieces[i], to, 1), 0);
      expect(volumeAt(shelf, z)).toBeCloseTo(whole, 12);
    }
  });

  test('loses what overlapping layers take up together', () => {
    const plain = makeStorage([
      [-0.6, 4],
      [0, 7],
    ]);
    const open = (z: number): number =>
      1 - (z < -0.4 ? 0.6 : 0) - (z > -0.5 && z < -0.2 ? 0.25 : 0) - (z > -0.1 && z < 0.3 ? 0.1 : 0);
    const edges = [-0.6, -0.5, -0.4, -0.2, -0.1, 0, 0.3, 0.5];
    const whole = edges
      .slice(1)
      .reduce((sum, to, i) => sum + integral((z) => open(z) * areaAt(plain, z), edges[i], to, 1), 0);
    expect(volumeAt(gravelled, 0.5)).toBeCloseTo(whole, 12);
    expect(areaAt(gravelled, -0.45)).toBeCloseTo(0.15 * areaAt(plain, -0.45), 12);
    expect(areaAt(gravelled, 0.4)).toBeCloseTo(7, 12);
  });

  test('ignores a layer under the floor and cuts one that reaches through it', () => {
    const profile = [
      [0, 2],
      [1, 2],
    ] as const;
    const s = makeStorage(profile, [
      { from: -2, to: -1, fraction: 0.9 },
      { from: -1, to: 0.5, fraction: 0.5 },
    ]);
    expect(volumeAt(s, 1)).toBeCloseTo(0.5 * 2 * 0.5 + 2 * 0.5, 14);
    expect(s.z[0]).toBe(0);
  });

  test('of a bowl that ends in a point is half of base times height, with a finite slope at the point', () => {
    expect(volumeAt(bowl, 0)).toBeCloseTo(1.5, 14);
    const out = new Float64Array(3);
    locate(bowl, 0, out);
    expect(out[0]).toBe(-1);
    expect(out[1]).toBeGreaterThan(0);
    locate(bowl, 1e-12, out);
    expect(out[0]).toBeCloseTo(-1 + Math.sqrt(2e-12 / 3), 15);
  });

  test('has no water below its floor, and a rounding below zero stays at it', () => {
    expect(volumeAt(shelf, -2)).toBe(0);
    expect(levelOf(shelf, -1e-15)).toBeCloseTo(-0.9, 14);
    expect(levelOf(bowl, -1e-15)).toBe(-1);
  });
});

describe('the level', () => {
  test('rises with the volume by one over the open area, on both sides of every edge', () => {
    const out = new Float64Array(3);
    for (const s of [shelf, bowl, gravelled]) {
      for (const edge of s.volume) {
        for (const volume of [edge - 0.01, edge + 0.01]) {
          if (volume <= 0) continue;
          locate(s, volume, out);
          const [, area, growth] = out;
          expect(1 / area).toBeCloseTo(
            derivative((v) => levelOf(s, v), volume, 1e-4),
            6,
          );
          const z = levelOf(s, volume);
          expect(growth).toBeCloseTo(
            derivative((level) => areaAt(s, level), z, 1e-5),
            6,
          );
          expect(area).toBeCloseTo(areaAt(s, z), 12);
        }
      }
    }
  });

  test('does not depend on what was asked before', () => {
    const volumes = [3, 0.01, 6, 2.4, 2.4001, 0, 9];
    const fresh = volumes.map((v) =>
      levelOf(
        makeStorage([
          [-0.9, 2],
          [-0.3, 6],
          [-0.3, 8],
          [0, 9],
        ]),
        v,
      ),
    );
    expect(volumes.map((v) => levelOf(shelf, v))).toEqual(fresh);
    expect([...volumes].reverse().map((v) => levelOf(shelf, v))).toEqual(fresh.toReversed());
  });

  test('keeps its figures where two typed elevations differ in the last bit', () => {
    const layerTop = -0.3 + 2 ** -53;
    const s = makeStorage(
      [
        [-0.9, 2],
        [-0.3, 6],
        [0, 9],
      ],
      [{ from: -0.9, to: layerTop, fraction: 0.6 }],
    );
    const volume = volumeAt(s, -0.1);
    expect(volume).toBeCloseTo(0.4 * 2.4 + ((6 + 8) / 2) * 0.2, 12);
    expect(levelOf(s, volume)).toBeCloseTo(-0.1, 13);
  });
});
