/** Roots of rising equations in one unknown. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RisingEquation, RootTracker, solveRising } from '../../sim/solver/roots.ts';

/** x^p + b x − c, with its number of evaluations. */
function power(p: number, b: number, c: number): RisingEquation & { calls: number } {
  return {
    value: 0,
    slope: 0,
    calls: 0,
    at(x) {
      this.calls++;
      this.value = x ** p + b * x - c;
      this.slope = p * x ** (p - 1) + b;
    },
  };
}

describe('a root', () => {
  test('of powers, from any guess', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (p, root, guess) => {
          const x = solveRising(power(p, 0.5, root ** p + 0.5 * root), guess);
          expect(Math.abs(x / root - 1)).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 200 },
    );
  });

  test('guessed exactly costs one evaluation', () => {
    const equation = power(2, 0, 2);
    expect(solveRising(equation, Math.SQRT2)).toBeCloseTo(Math.SQRT2, 15);
    expect(equation.calls).toBe(1);
  });

  test('at 0 is 0', () => {
    expect(solveRising(power(2, 1, 0), 1)).toBeLessThan(1e-12);
  });
});

describe('a tracker', () => {
  test('guesses on the tangent of the last root, and the fresh guess where it knows none', () => {
    const tracker = new RootTracker();
    expect(tracker.guess(4, 7)).toBe(7);
    // x = √c: slope 1/(2 x).
    tracker.keep(2, 4, 0.25);
    expect(tracker.guess(4.4, 7)).toBeCloseTo(2.1, 15);
  });

  test('does not follow a tangent to four times the root or to a quarter of it', () => {
    const tracker = new RootTracker();
    tracker.keep(2, 4, 0.25);
    expect(tracker.guess(100, 7)).toBe(2);
    expect(tracker.guess(-100, 7)).toBe(2);
  });
});
