import { describe, expect, test } from 'vitest';
import { colebrook, frictionFactor, makeTransition } from '../../sim/laws/friction.ts';
import { frictionTable, readFriction, TABLE_END } from '../../sim/laws/frictionTable.ts';
import { bisect, derivative, relativeError } from './differences.ts';

const out = new Float64Array(2);
const roughnesses = [0, 1e-6, 3e-5, 2e-4, 1e-3, 0.01, 0.05];

/** Colebrook's own equation (1939), halved to the last bit. */
function colebrookByHalving(re: number, rough: number): number {
  const inverse = bisect((x) => x + 2 * Math.log10(rough / 3.7 + (2.51 * x) / re), 0.5, 50);
  return inverse ** -2;
}

describe('turbulent friction', () => {
  test.each(roughnesses)("is the root of Colebrook's equation to 1e-8, roughness %d", (rough) => {
    for (let log = Math.log10(4000); log < 8.01; log += 0.1) {
      colebrook(10 ** log, rough, out);
      expect(relativeError(out[0], colebrookByHalving(10 ** log, rough)), `Re ${10 ** log}`).toBeLessThan(1e-8);
    }
  });

  test('has the slope of its differences in logarithms', () => {
    for (const rough of roughnesses) {
      for (const re of [4100, 1e4, 1e5, 1e7]) {
        const lnF = (lnRe: number): number => {
          colebrook(Math.exp(lnRe), rough, out);
          return Math.log(out[0]);
        };
        const slope = derivative(lnF, Math.log(re), 1e-3);
        colebrook(re, rough, out);
        expect(Math.abs(out[1] - slope)).toBeLessThan(1e-7);
      }
    }
  });
});

describe('friction at any Reynolds number', () => {
  test('is 64/Re up to 2000 and Colebrook from 4000', () => {
    const t = makeTransition(2e-4);
    frictionFactor(1500, t, out);
    expect([...out]).toEqual([64 / 1500, -1]);
    frictionFactor(4000, t, out);
    expect(relativeError(out[0], colebrookByHalving(4000, 2e-4))).toBeLessThan(1e-8);
  });

  test.each(roughnesses)('has no jump in value or slope, roughness %d', (rough) => {
    const t = makeTransition(rough);
    for (const re of [2000, 4000]) {
      frictionFactor(re * (1 - 1e-12), t, out);
      const below = [...out];
      frictionFactor(re * (1 + 1e-12), t, out);
      expect(relativeError(out[0], below[0])).toBeLessThan(1e-8);
      expect(Math.abs(out[1] - below[1])).toBeLessThan(1e-8);
    }
    for (const re of [1900, 1999, 2001, 2500, 3000, 3500, 3999, 4001]) {
      const lnF = (lnRe: number): number => {
        frictionFactor(Math.exp(lnRe), t, out);
        return Math.log(out[0]);
      };
      const slope = derivative(lnF, Math.log(re), 1e-4);
      frictionFactor(re, t, out);
      expect(Math.abs(out[1] - slope)).toBeLessThan(1e-7);
    }
  });

  test.each(roughnesses)('makes a head that rises with the flow all the way, roughness %d', (rough) => {
    const t = makeTransition(rough);
    for (let re = 1000; re < 6000; re += 5) {
      frictionFactor(re, t, out);
      expect(2 + out[1]).toBeGreaterThan(0);
    }
  });
});

describe('the friction table', () => {
  test.each(roughnesses)('gives f Re² of the law to 1e-7 and its own slope, roughness %d', (rough) => {
    const t = makeTransition(rough);
    const table = frictionTable(rough);
    const read = (re: number): number => {
      readFriction(table, re, out);
      return out[0];
    };
    for (let re = 4000; re < TABLE_END; re *= 1.00371) {
      frictionFactor(re, t, out);
      const [f, logarithmic] = out;
      expect(relativeError(read(re), f * re * re), `Re ${re}`).toBeLessThan(1e-7);
      expect(relativeError(out[1], (2 + logarithmic) * f * re), `Re ${re}`).toBeLessThan(1e-4);
    }
    for (const re of [4010, 5555, 65000, 1.9e6]) {
      const slope = derivative(read, re, re / 1e5);
      readFriction(table, re, out);
      expect(relativeError(out[1], slope)).toBeLessThan(1e-8);
    }
  });

  test('has no jump from cell to cell, nor where the law takes over from it', () => {
    const table = frictionTable(3e-5);
    for (const re of [4000 * (17 / 16), 5000, 8000, 64000, 8000 * (31 / 16)]) {
      readFriction(table, re * (1 - 1e-13), out);
      const below = [...out];
      readFriction(table, re * (1 + 1e-13), out);
      expect(relativeError(out[0], below[0])).toBeLessThan(1e-12);
      expect(relativeError(out[1], below[1])).toBeLessThan(1e-10);
    }
    readFriction(table, TABLE_END * (1 - 1e-13), out);
    const last = out[0];
    frictionFactor(TABLE_END, makeTransition(3e-5), out);
    expect(relativeError(last, out[0] * TABLE_END ** 2)).toBeLessThan(1e-10);
  });
});
