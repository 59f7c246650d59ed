import { describe, expect, test } from 'vitest';
import { rationalRunoff, stormStretches, typeTwoFraction } from '../../sim/laws/rain.ts';

const HOUR = 3600;
const fallen = (stretches: ReturnType<typeof stormStretches>): number =>
  stretches.reduce((sum, { from, to, rate }) => sum + (to - from) * rate, 0);

describe('the type II day', () => {
  test('rises from 0 to 1 and stays there', () => {
    let last = -1;
    for (let hour = 0; hour <= 24; hour += 0.05) {
      const now = typeTwoFraction(hour);
      expect(now).toBeGreaterThanOrEqual(last);
      last = now;
    }
    expect([-3, 0, 24, 30].map(typeTwoFraction)).toEqual([0, 0, 1, 1]);
  });

  test('brings most between 11:30 and 12:30', () => {
    expect(typeTwoFraction(12.5) - typeTwoFraction(11.5)).toBeGreaterThan(0.4);
  });
});

describe('a storm', () => {
  test.each(['even', 'scs2'] as const)('brings its depth in its time, without gap or overlap: %s', (shape) => {
    for (const hours of [0.2, 0.5, 1, 3, 6, 12, 23, 24]) {
      const stretches = stormStretches(0.08, hours * HOUR, shape);
      expect(fallen(stretches)).toBeCloseTo(0.08, 14);
      expect(stretches[0].from).toBe(0);
      expect(stretches.at(-1)!.to).toBeCloseTo(hours * HOUR, 8);
      stretches.slice(1).forEach(({ from }, i) => {
        expect(from).toBeCloseTo(stretches[i].to, 8);
      });
      expect(Math.min(...stretches.map(({ rate }) => rate))).toBeGreaterThan(0);
    }
  });

  test('of a day is the whole curve', () => {
    for (const { from, to, rate } of stormStretches(1, 24 * HOUR, 'scs2')) {
      expect(rate * (to - from)).toBeCloseTo(typeTwoFraction(to / HOUR) - typeTwoFraction(from / HOUR), 13);
    }
  });

  test('shorter than a day is the heaviest window of the curve: no other start catches more', () => {
    for (const hours of [0.25, 0.6, 1, 2, 6, 15]) {
      const peak = Math.max(...stormStretches(1, hours * HOUR, 'scs2').map(({ rate }) => rate));
      // The steepest piece, 11:45 to 12:00, is in every such window; its rate gives away the share that was caught.
      const caught = (typeTwoFraction(12) - typeTwoFraction(11.75)) / (0.25 * HOUR * peak);
      for (let start = 0; start + hours <= 24; start += 0.01) {
        expect(typeTwoFraction(start + hours) - typeTwoFraction(start)).toBeLessThan(caught + 1e-9);
      }
    }
  });
});

test('runoff is coefficient times rate times area', () => {
  expect(rationalRunoff(0.05 / HOUR, 40, 0.9)).toBeCloseTo((0.9 * 0.05 * 40) / HOUR, 15);
});
