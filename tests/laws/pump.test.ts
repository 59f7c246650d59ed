import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  curveFromBox,
  curveFromPoints,
  curveHead,
  monotoneSlopes,
  type PowerCurve,
  type PumpCurve,
  pumpHead,
  standingLoss,
  wirePower,
} from '../../sim/laws/pump.ts';
import { derivative, relativeError, worstSlope } from './differences.ts';

const out = new Float64Array(3);
const points = curveFromPoints([
  [0, 5.2],
  [1e-3, 5],
  [2e-3, 4.4],
  [3e-3, 3.1],
  [4e-3, 1.2],
]);
/** Flat stretch, and a last point below no head. */
const flat = curveFromPoints([
  [0, 4],
  [1e-3, 4],
  [2e-3, 3],
  [3e-3, -0.5],
]);
const box = curveFromBox(4.2e-3, 5.5);

describe('a pump curve', () => {
  test('passes through its points and never rises with the flow', () => {
    [0, 1e-3, 2e-3, 3e-3, 4e-3].forEach((q, i) => {
      curveHead(points, q, out);
      expect(out[0]).toBe([5.2, 5, 4.4, 3.1, 1.2][i]);
    });
    for (const c of [points, flat, box]) {
      for (let q = 0; q < 5e-3; q += 1e-5) {
        curveHead(c, q, out);
        expect(out[1]).toBeLessThanOrEqual(0);
      }
    }
  });

  test('never rises whatever points fall', () => {
    const drop = fc.tuple(fc.double({ min: 1e-4, max: 2e-3, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true }));
    fc.assert(
      fc.property(fc.array(drop, { minLength: 1, maxLength: 8 }), (drops) => {
        const total = (upTo: number, which: 0 | 1): number =>
          drops.slice(0, upTo + 1).reduce((sum, each) => sum + each[which], 0);
        const c = curveFromPoints([[0, 10], ...drops.map((_, i) => [total(i, 0), 10 - total(i, 1)] as const)]);
        const q = total(drops.length, 0);
        for (let i = 0; i <= 200; i++) {
          curveHead(c, (q * i) / 200, out);
          expect(out[1]).toBeLessThan(1e-9 * (10 / q));
        }
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test('has slopes that equal differences on both sides of its points and beyond the last', () => {
    for (const c of [points, flat, box]) {
      for (const q of [2e-4, 0.99e-3, 1.01e-3, 1.99e-3, 2.01e-3, 3.5e-3, 3.99e-3, 4.01e-3, 6e-3]) {
        const slope = derivative(
          (x) => {
            curveHead(c, x, out);
            return out[0];
          },
          q,
          1e-6,
        );
        curveHead(c, q, out);
        expect(Math.abs(out[1] - slope)).toBeLessThan(1e-5);
      }
    }
  });

  test('from the two figures on the box is the parabola through them', () => {
    for (const q of [0, 1e-3, 3e-3, 4.2e-3]) {
      curveHead(box, q, out);
      expect(out[0]).toBeCloseTo(5.5 * (1 - (q / 4.2e-3) ** 2), 13);
    }
  });

  test('knows the flow at which it meets no head', () => {
    expect(box.freeFlow).toBeCloseTo(4.2e-3, 15);
    for (const c of [points, flat]) {
      curveHead(c, c.freeFlow, out);
      expect(Math.abs(out[0])).toBeLessThan(1e-11);
    }
    const level = curveFromPoints([
      [0, 3],
      [1e-3, 3],
    ]);
    expect(level.freeFlow).toBe(Number.POSITIVE_INFINITY);
  });

  test('limits slopes to the circle of radius 3 and leaves mild ones the mean of their neighbors', () => {
    const mild = monotoneSlopes([0, 1, 3], [0, 2, 5]);
    expect([...mild]).toEqual([2, 1.75, 1.5]);
    const steep = monotoneSlopes([0, 1, 2], [0, 0.1, 10]);
    expect(Math.hypot(steep[0], steep[1]) / 0.1).toBeCloseTo(3, 12);
    expect([...monotoneSlopes([0, 1, 2], [0, 1, 0])]).toEqual([1, 0, -1]);
    expect([...monotoneSlopes([0, 1, 2, 3], [3, 2, 2, 1])]).toEqual([-1, 0, 0, -1]);
  });
});

describe('a pump at a speed', () => {
  const law = (c: PumpCurve) => (args: readonly number[]) => {
    pumpHead(c, args[0], args[1], 4e5, out);
    return { value: out[0], slopes: [out[1], out[2]] };
  };

  test('keeps the affinity laws', () => {
    for (const n of [0.3, 0.8, 1.2]) {
      for (const q of [0, 1.3e-3, 2.5e-3]) {
        const full = law(points)([q, 1]).value;
        expect(relativeError(law(points)([n * q, n]).value, n * n * full)).toBeLessThan(1e-13);
      }
    }
  });

  test('has slopes that equal differences, also driven beyond the flow of no head and standing', () => {
    for (const c of [points, flat, box]) {
      for (const n of [0.2, 0.7, 1, 1.2]) {
        for (const share of [0.1, 0.43, 0.77, 0.999, 1.001, 1.5]) {
          expect(worstSlope(law(c), [share * n * c.freeFlow, n], 1e-5), `${n} ${share}`).toBeLessThan(1e-6);
        }
      }
      const { value, slopes } = law(c)([2e-3, 0]);
      expect(value).toBeCloseTo(-4e5 * 4e-6, 12);
      expect(slopes[0]).toBeCloseTo(-2 * 4e5 * 2e-3, 9);
    }
  });

  test('is continuous where its curve meets no head, and as it comes to a stand', () => {
    for (const n of [0.4, 1]) {
      const free = n * points.freeFlow;
      expect(Math.abs(law(points)([free * (1 + 1e-12), n]).value)).toBeLessThan(1e-9);
      expect(Math.abs(law(points)([free * (1 - 1e-12), n]).value)).toBeLessThan(1e-9);
    }
    expect(law(points)([2e-3, 1e-9]).value).toBeCloseTo(law(points)([2e-3, 0]).value, 12);
  });
});

test('a standing pump takes 0.69 of the mid-curve head at the mid-curve flow', () => {
  const area = (Math.PI / 4) * 0.05 ** 2;
  const velocity = 2e-3 / area;
  const k = standingLoss(points, area);
  expect(relativeError((k * velocity * velocity) / (2 * 9.80665), 0.69 * 4.4)).toBeLessThan(1e-13);
});

describe('wire power', () => {
  const curve: PowerCurve = {
    flow: Float64Array.of(1e-3, 2e-3, 4e-3),
    watts: Float64Array.of(100, 160, 200),
    efficiency: 0,
  };
  const constant: PowerCurve = { flow: Float64Array.of(0), watts: Float64Array.of(120), efficiency: 0 };
  const byEfficiency: PowerCurve = { flow: new Float64Array(0), watts: new Float64Array(0), efficiency: 0.4 };
  const head = new Float64Array(3);
  const power = (p: PowerCurve) => (args: readonly number[]) => {
    pumpHead(points, args[0], args[1], 4e5, head);
    wirePower(p, args[0], args[1], head, 998.2, out);
    return { value: out[0], slopes: [out[1], out[2]] };
  };

  test('follows its points and stays constant beyond them', () => {
    const at = (q: number): number => power(curve)([q, 1]).value;
    expect([0, 1e-3, 1.5e-3, 2e-3, 3e-3, 4e-3, 5e-3].map(at)).toEqual([100, 100, 130, 160, 180, 200, 200]);
    expect(power(constant)([2e-3, 1]).value).toBe(120);
  });

  test('goes with the cube of the speed at the same point of the curve', () => {
    expect(relativeError(power(curve)([0.9e-3, 0.6]).value, 0.216 * power(curve)([1.5e-3, 1]).value)).toBeLessThan(
      1e-13,
    );
    expect(power(constant)([2e-3, 0.5]).value).toBe(15);
    for (const p of [curve, constant, byEfficiency]) expect(power(p)([2e-3, 0]).value).toBe(0);
  });

  test('by efficiency is ρ g Q H/η, and nothing where the pump is driven', () => {
    pumpHead(points, 2e-3, 1, 4e5, head);
    expect(relativeError(power(byEfficiency)([2e-3, 1]).value, (998.2 * 9.80665 * 2e-3 * 4.4) / 0.4)).toBeLessThan(
      1e-13,
    );
    expect(power(byEfficiency)([2 * points.freeFlow, 1]).value).toBe(0);
  });

  test('has slopes that equal differences', () => {
    for (const p of [curve, constant, byEfficiency]) {
      for (const n of [0.5, 1, 1.2]) {
        for (const q of [0.7e-3, 1.4e-3, 2.7e-3, 3.9e-3]) {
          expect(worstSlope(power(p), [n * q, n], 1e-5)).toBeLessThan(1e-6);
        }
      }
    }
  });
});
