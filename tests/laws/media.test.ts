import { describe, expect, test } from 'vitest';
import {
  daviesViscous,
  ergunInertial,
  ergunViscous,
  gapVelocity,
  layerLoss,
  liftHead,
  viscousCoefficient,
} from '../../sim/laws/media.ts';
import { relativeError, worstSlope } from './differences.ts';

const NU = 1.0035e-6;
const out = new Float64Array(4);

describe('a layer', () => {
  test('loses by Ergun up to a porosity of 0.91, by Davies from 0.93, and by a blend between', () => {
    for (const e of [0.35, 0.6, 0.9, 0.91]) {
      expect(viscousCoefficient(e, 3e-4, NU)).toBe(ergunViscous(e, 3e-4, NU));
    }
    for (const e of [0.93 + 1e-12, 0.96, 0.99]) {
      expect(relativeError(viscousCoefficient(e, 3e-4, NU), daviesViscous(e, 3e-4, NU))).toBeLessThan(1e-12);
    }
    const half = (ergunViscous(0.92, 3e-4, NU) + daviesViscous(0.92, 3e-4, NU)) / 2;
    expect(relativeError(viscousCoefficient(0.92, 3e-4, NU), half)).toBeLessThan(1e-12);
  });

  test('loses more the less pore space the deposit leaves, without a jump', () => {
    let last = 0;
    for (let e = 0.99; e > 0.15; e -= 1e-3) {
      const now = viscousCoefficient(e, 3e-4, NU);
      expect(now).toBeGreaterThan(last);
      if (last > 0) expect(now / last).toBeLessThan(1.25);
      last = now;
    }
  });

  test('of a given permittivity loses u/ψ clean and by its viscous coefficient from then on', () => {
    const clean = layerLoss(undefined, 0.5, 0.1, 0.9, 0.9, NU);
    expect(relativeError(clean.viscous * 0.1, 1 / 0.5)).toBeLessThan(1e-14);
    expect(clean.inertial).toBe(0);
    const loaded = layerLoss(undefined, 0.5, 0.1, 0.9, 0.7, NU);
    const ratio = ergunViscous(0.7, 1e-3, NU) / ergunViscous(0.9, 1e-3, NU);
    expect(relativeError(loaded.viscous / clean.viscous, ratio)).toBeLessThan(1e-12);
  });

  test('of grains keeps both terms of Ergun at its present porosity', () => {
    expect(layerLoss(4e-3, undefined, 0.2, 0.45, 0.4, NU)).toEqual({
      viscous: ergunViscous(0.4, 4e-3, NU),
      inertial: ergunInertial(0.4, 4e-3),
    });
  });

  test('lifts at its submerged weight over ρ g A', () => {
    expect(liftHead(98.0665, 1, 1000)).toBeCloseTo(0.01, 15);
  });
});

describe('water in the side gap', () => {
  const law = (args: readonly number[]) => {
    gapVelocity(args[0], args[1], args[2], NU, out);
    return { value: out[0], slopes: [out[1], out[3], out[2]] };
  };

  test('moves at the root of its quadratic', () => {
    for (const head of [1e-9, 1e-4, 0.02, 0.3]) {
      for (const width of [2e-4, 5e-3, 0.03]) {
        const u = law([head, 0.4, width]).value;
        const plates = (12 * NU * 0.4 * u) / (9.80665 * width * width);
        const square = ((1.5 + (0.04 * 0.4) / (2 * width)) * u * u) / (2 * 9.80665);
        expect(relativeError(plates + square, head)).toBeLessThan(1e-12);
      }
    }
  });

  test('has slopes by head, length and width that equal differences', () => {
    for (const head of [1e-5, 1e-3, 0.05]) {
      for (const length of [0.02, 0.4]) {
        for (const width of [2e-4, 5e-3, 0.03]) {
          const { value, slopes } = law([head, length, width]);
          expect(value).toBeGreaterThan(0);
          expect(slopes.map(Math.sign)).toEqual([1, -1, 1]);
          // A step of 1e-4 of each argument itself.
          const scaled = (log: readonly number[]) => {
            const args = log.map(Math.exp);
            const at = law(args);
            return { value: at.value, slopes: at.slopes.map((slope, i) => slope * args[i]) };
          };
          expect(worstSlope(scaled, [head, length, width].map(Math.log), 1e-4)).toBeLessThan(1e-7);
        }
      }
    }
  });

  test('stands still without head, without gap, and without wet length at rest', () => {
    expect(law([0, 0.4, 5e-3]).value).toBe(0);
    expect(law([0.1, 0.4, 0])).toEqual({ value: 0, slopes: [0, 0, 0] });
    expect(law([0, 0, 5e-3]).value).toBe(0);
  });
});
