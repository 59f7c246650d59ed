import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeStorage, volumeAt } from '../../sim/laws/storage.ts';
import type { ProfilePoint } from '../../sim/scenario/scenario.ts';
import { shapeBasin } from '../../sim/scenario/shapes.ts';

const volumeOf = (profile: readonly ProfilePoint[]): number =>
  profile.slice(1).reduce((sum, [z, a], i) => sum + ((z - profile[i]![0]) * (a + profile[i]![1])) / 2, 0);

const FOOT = 0.3048;

describe('a pond given by its shape', () => {
  test('holds what the prismoidal formula gives for an excavated pond', () => {
    // USDA NRCS Agriculture Handbook 590 (1997), excavated ponds (from memory): 88 × 148 ft, 12 ft deep, banks 2:1, 3,612 yd³.
    const pond = { factor: 1, length: 148 * FOOT, width: 88 * FOOT, depth: 12 * FOOT, slope: 2 };
    const yards = volumeOf(shapeBasin(pond).profile) / (3 * FOOT) ** 3;
    expect(Math.abs(yards / 3612 - 1)).toBeLessThan(0.0005);
    expect(yards).toBeCloseTo(((13024 + 31744 + 4000) / 6) * (12 / 27), 9);
  });

  test('holds the integral of (L + 2 s z)(W + 2 s z) over its depth', () => {
    // L W h + s (L + W) h² + 4/3 s² h³ with the floor 3 × 2 m, s = 0.5, h = 0.6: 4.572 m³, a closed form.
    const pond = { plan: 'rectangle', length: 3.6, width: 2.6, depth: 0.6, slope: 0.5 } as const;
    expect(volumeOf(shapeBasin(pond).profile)).toBeCloseTo(4.572, 12);
  });

  test('has the true area at its floor, its ledges and its brim, and nearly the true volume between', () => {
    const pond = { factor: 1, length: 3.6, width: 2.6, depth: 0.6, slope: 0.5 };
    const { profile } = shapeBasin(pond);
    expect(profile[0]![1]).toBeCloseTo(3 * 2, 12);
    expect(profile.at(-1)![1]).toBeCloseTo(3.6 * 2.6, 12);
    const storage = makeStorage(profile);
    const chords = (8 * 4 * 0.5 ** 2 * 0.075 ** 3) / 6;
    for (let h = 0.01; h < 0.6; h += 0.01) {
      const closed = 6 * h + 0.5 * 5 * h ** 2 + (4 / 3) * 0.25 * h ** 3;
      expect(Math.abs(volumeAt(storage, -0.6 + h) - closed)).toBeLessThan(chords / 15);
    }
  });

  test('holds the integral between two ledges as well', () => {
    const shelves = [{ depth: 0.2, width: 0.3 }];
    const { profile } = shapeBasin({ factor: 1, length: 4, width: 3, depth: 0.8, slope: 0.5, shelves });
    const frustum = (l: number, w: number, h: number): number => l * w * h - 0.5 * (l + w) * h ** 2 + h ** 3 / 3;
    expect(volumeOf(profile)).toBeCloseTo(frustum(4, 3, 0.2) + frustum(3.2, 2.2, 0.6), 12);
  });

  test('is a cylinder over an ellipse where its banks stand', () => {
    const { profile, boxVolume } = shapeBasin({ plan: 'ellipse', length: 4, width: 3, depth: 0.9, brim: 0.1 });
    expect(volumeOf(profile)).toBeCloseTo((Math.PI / 4) * 4 * 3 * 0.9, 12);
    expect([profile[0]![0], profile.at(-1)![0]]).toEqual([0.1 - 0.9, 0.1]);
    expect(boxVolume).toBeCloseTo(10.8, 12);
  });

  test('has a flat ring at each shelf, two points at one elevation', () => {
    const { profile } = shapeBasin({
      factor: 1,
      length: 4,
      width: 3,
      depth: 0.9,
      shelves: [{ depth: 0.3, width: 0.4 }],
    });
    const ledge = profile.filter(([z]) => Math.abs(z + 0.3) < 1e-12).map(([, area]) => area);
    expect(ledge).toHaveLength(2);
    expect(ledge[0]).toBeCloseTo(3.2 * 2.2, 12);
    expect(ledge[1]).toBeCloseTo(12, 12);
    expect(volumeOf(profile)).toBeCloseTo(3.2 * 2.2 * 0.6 + 12 * 0.3, 12);
  });

  test('gives gravel six tenths of its layer', () => {
    const { displaced } = shapeBasin({ plan: 'freeform', length: 4, width: 3, depth: 0.9, gravel: 0.08 });
    expect(displaced).toEqual([{ from: -0.9, to: -0.9 + 0.08, fraction: 0.6 }]);
  });

  test('always ascends from its floor and widens to its brim', () => {
    const measure = fc.double({ min: 0.1, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        measure,
        fc.array(fc.record({ depth: measure, width: measure }), { maxLength: 3 }),
        (slope, shelves) => {
          const { profile } = shapeBasin({ factor: 0.82, length: 20, width: 15, depth: 1.5, slope, shelves });
          for (const [i, [z, a]] of profile.slice(1).entries()) {
            expect(z).toBeGreaterThanOrEqual(profile[i]![0]);
            expect(a).toBeGreaterThanOrEqual(profile[i]![1] - 1e-9);
          }
        },
      ),
    );
  });
});
