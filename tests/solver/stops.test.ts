/** Mandatory stops, failures and bounds: how the driver ends. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { IntegrationFailure, Integrator, type IntegratorOptions } from '../../sim/solver/integrate.ts';
import type { StiffSystem } from '../../sim/solver/system.ts';
import { bell, type Case, decay, forced, ring, systemOf, turning } from '../cases.ts';

const uniform = (size: number, each: number): Float64Array => new Float64Array(size).fill(each);

function integratorOf({ system, start }: Pick<Case, 'system' | 'start'>, tolerance: number): Integrator {
  return new Integrator(system, 0, Float64Array.from(start), { tolerance: uniform(system.size, tolerance) });
}

/** The failure a march to 1 ends with. */
function failureOf(
  system: StiffSystem,
  start: readonly number[],
  options: Partial<IntegratorOptions> = {},
): IntegrationFailure {
  const tolerance = uniform(system.size, 1e-6);
  const integrator = new Integrator(system, 0, Float64Array.from(start), { tolerance, ...options });
  try {
    integrator.advance(1, [], () => {});
  } catch (error) {
    if (error instanceof IntegrationFailure) return error;
    throw error;
  }
  throw new Error('the march came to its end');
}

describe('the end', () => {
  test('is hit to the last bit, by any way there', () => {
    const stop = fc.double({ min: 1e-6, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.array(stop, { minLength: 1, maxLength: 20 }), (stops) => {
        const integrator = integratorOf(turning, 1e-6);
        for (const end of stops.sort((p, q) => p - q)) {
          integrator.advance(end, [], () => {});
          expect(integrator.time).toBe(end);
        }
      }),
      { numRuns: 50 },
    );
  });

  test('is hit to the last bit by one step from a time so much smaller that the difference is rounded', () => {
    const early = fc.double({ min: 1e-9, max: 1e-3, noNaN: true });
    const late = fc.double({ min: 0.1, max: 3, noNaN: true });
    fc.assert(
      fc.property(early, late, (first, end) => {
        const integrator = new Integrator(decay(1e-3).system, -1000, Float64Array.of(1), {
          tolerance: uniform(1, 1e-3),
        });
        integrator.advance(first, [], () => {});
        expect(integrator.time).toBe(first);
        const { steps } = integrator.work;
        integrator.advance(end, [], () => {});
        expect(integrator.time).toBe(end);
        expect(integrator.work.steps).toBe(steps + 1);
      }),
      { numRuns: 100 },
    );
  });

  test('that is now, or gone, takes no step', () => {
    const integrator = integratorOf(turning, 1e-6);
    integrator.advance(1, [], () => {});
    const { steps } = integrator.work;
    expect(integrator.advance(1, [], () => {})).toEqual([]);
    expect(integrator.advance(0.5, [], () => {})).toEqual([]);
    expect(integrator.time).toBe(1);
    expect(integrator.work.steps).toBe(steps);
  });

  test('a hair ahead, nearer than any step, is where the next one begins', () => {
    const integrator = integratorOf(decay(1), 1e-6);
    integrator.advance(1e-308, [], () => {});
    expect([integrator.time, integrator.state[0]]).toEqual([1e-308, 1]);
    integrator.advance(1, [], () => {});
    expect(integrator.state[0]).toBeCloseTo(Math.exp(-1), 5);
  });

  test('is never passed, nor left a sliver short of', () => {
    const sizes: number[] = [];
    const integrator = integratorOf(bell, 1e-6);
    integrator.advance(1, [], (_, size) => sizes.push(size));
    expect(sizes.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 14);
    expect(sizes[sizes.length - 1]).toBeGreaterThan(sizes[sizes.length - 2] / 2);
  });
});

describe('a step cut short by a stop', () => {
  test('teaches the controller nothing: the next is as long as if there had been no stop', () => {
    const longest = (stops: readonly number[]): number => {
      const integrator = integratorOf(forced(100), 1e-5);
      for (const end of stops) integrator.advance(end, [], () => {});
      let first = 0;
      integrator.advance(8, [], (_, size) => {
        first = first === 0 ? size : first;
      });
      return first;
    };
    const plain = longest([2]);
    expect(plain).toBeGreaterThan(0.01);
    // Two hundred stops a millisecond apart, and one a nanosecond before the last.
    const many = Array.from({ length: 200 }, (_, k) => 1.8 + 0.001 * k);
    expect(longest([...many, 2 - 1e-9, 2])).toBeGreaterThan(0.7 * plain);
  });

  test('is not taken for more of the same error: the solution stays as near', () => {
    const each = turning;
    const through = (count: number): number => {
      const integrator = integratorOf(each, 1e-7);
      for (let k = 1; k <= count; k++) integrator.advance((each.end * k) / count, [], () => {});
      return Math.abs(integrator.state[0] - each.exact(each.end)[0]);
    };
    for (const count of [1, 2, 7, 40, 300]) expect(through(count)).toBeLessThan(1e-5);
  });

  test('of a restart is at most as long as asked for', () => {
    const integrator = integratorOf(decay(0.001), 1e-6);
    integrator.advance(100, [], () => {});
    integrator.restart(0.25);
    const sizes: number[] = [];
    integrator.advance(200, [], (_, size) => sizes.push(size));
    expect(sizes[0]).toBe(0.25);
    expect(sizes[1]).toBeLessThanOrEqual(6 * 0.25);
  });
});

describe('a failure', () => {
  test('capped: with the time, and the state of the largest error', () => {
    const system = systemOf({
      size: 2,
      rates: (_, [, y2]) => [1, -50 * y2 * y2],
      jacobian: (_, [, y2]) => [
        [0, 0],
        [0, -100 * y2],
      ],
    });
    const failure = failureOf(system, [0, 1], { mostSteps: 5, tolerance: uniform(2, 1e-9) });
    expect(failure.kind).toBe('capped');
    expect(failure.time).toBeGreaterThan(0);
    expect(failure.time).toBeLessThan(1);
    expect(failure.component).toBe(1);
  });

  test('capped: by the time it has come, not by where it is bound; what was granted beside counts', () => {
    // A stop each tenth of a second asks for a step each.
    const stepsTaken = (granted: number): number => {
      const integrator = new Integrator(decay(0.001).system, 0, Float64Array.of(1), {
        tolerance: uniform(1, 1e-3),
        mostSteps: 10,
        stepsPerSecond: 2,
      });
      integrator.grant(granted);
      try {
        for (let i = 1; i <= 1000; i++) integrator.advance(i / 10, [], () => {});
      } catch {}
      return integrator.work.steps + integrator.work.rejected;
    };
    // n steps are n/10 s on: 10 + granted + 2 n/10 = n.
    expect(stepsTaken(0)).toBe(13);
    expect(stepsTaken(8)).toBe(23);
  });

  test.each([
    ['the first state', 0],
    ['the second state', 1],
  ])('no solution: %s has a rate that is no number from 0.5 on', (_, bad) => {
    const rates = (t: number): number[] => [0, 1].map((k) => (k === bad && t > 0.5 ? Number.NaN : 1));
    const uncoupled = { rows: Int32Array.of(), columns: Int32Array.of() };
    const system = { ...systemOf({ size: 2, rates, jacobian: () => [] }), jacobianPattern: uncoupled };
    const failure = failureOf(system, [0, 0]);
    expect(failure.kind).toBe('no solution');
    expect(Math.abs(failure.time - 0.5)).toBeLessThan(1e-6);
    expect(failure.component).toBe(bad);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    'no solution: rates of %f at once',
    (rate) => {
      const failure = failureOf(systemOf({ size: 1, rates: () => [rate], jacobian: () => [[0]] }), [0]);
      expect([failure.kind, failure.time, failure.component]).toEqual(['no solution', 0, 0]);
    },
  );

  test('no solution: slopes or sums that are no number', () => {
    const slope = systemOf({ size: 1, rates: () => [1], jacobian: () => [[Number.NaN]] });
    expect(failureOf(slope, [0]).kind).toBe('no solution');
    const sums = { rates: (t: number) => [t > 0.5 ? Number.NaN : 1], gradient: () => [[0]] };
    const summed = systemOf({ size: 1, rates: () => [1], jacobian: () => [[0]], sums });
    expect(failureOf(summed, [0]).time).toBeCloseTo(0.5, 6);
  });

  test('no solution: it runs to infinity at 1/2', () => {
    const system = systemOf({ size: 1, rates: (_, [y]) => [2 * y * y], jacobian: (_, [y]) => [[4 * y]] });
    const failure = failureOf(system, [1], { mostSteps: 100_000 });
    expect(failure.time).toBeCloseTo(0.5, 6);
  });

  test('no solution: late in time a step that would not move the clock is not taken for ever', () => {
    const start = 1e9;
    const system = systemOf({
      size: 1,
      rates: (t) => [t > start ? Number.NaN : 0],
      jacobian: () => [[0]],
    });
    const integrator = new Integrator(system, start, Float64Array.of(0), { tolerance: uniform(1, 1e-6) });
    expect(() => integrator.advance(start + 1, [], () => {})).toThrow(IntegrationFailure);
  });
});

describe('the least value', () => {
  test('no step of a decaying state ends below it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e4, noNaN: true }), fc.integer({ min: 2, max: 8 }), (rate, digits) => {
        const { system } = decay(rate);
        const integrator = new Integrator(system, 0, Float64Array.of(1), {
          tolerance: uniform(1, 10 ** -digits),
          least: -1e-15,
          mostSteps: 5000,
        });
        integrator.advance(50, [], (step) => expect(step.end[0]).toBeGreaterThanOrEqual(-1e-15));
        expect(Math.abs(integrator.state[0] - Math.exp(-50 * rate))).toBeLessThan(10 * 10 ** -digits);
      }),
      { numRuns: 40 },
    );
  });

  test('nor of a ring that a basin runs empty in', () => {
    const give = [3, 0.2, 40, 1];
    const integrator = new Integrator(ring(give), 0, Float64Array.of(0, 0, 1, 0), {
      tolerance: uniform(4, 1e-2),
      least: -1e-15,
    });
    integrator.advance(20, [], (step) => {
      for (const y of step.end) expect(y).toBeGreaterThanOrEqual(-1e-15);
    });
  });

  test('a drain that goes on below it has no solution, and names the state', () => {
    const system = systemOf({
      size: 2,
      rates: () => [0, -1],
      jacobian: () => [
        [0, 0],
        [0, 0],
      ],
    });
    const failure = failureOf(system, [1, 0.5], { least: -1e-15 });
    expect(failure.kind).toBe('no solution');
    expect(failure.component).toBe(1);
    expect(failure.time).toBeCloseTo(0.5, 6);
  });
});
