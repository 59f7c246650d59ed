/** Against a method of another family: ODEX, extrapolation of the explicit midpoint rule (Hairer, Nørsett & Wanner 1993). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Integrator } from '../../sim/solver/integrate.ts';
import type { StiffSystem } from '../../sim/solver/system.ts';
import { bell, type Case, crest, ring, turning } from '../cases.ts';
import { extrapolate } from './odex.mjs';

/** The rates of a system as a function of plain arrays. */
function plainRates(system: StiffSystem): (t: number, y: number[]) => number[] {
  const f = new Float64Array(system.size);
  const g = new Float64Array(system.quadratures);
  return (t, y) => {
    system.rates(t, Float64Array.from(y), f, g);
    return Array.from(f);
  };
}

function ours(system: StiffSystem, start: readonly number[], end: number, tolerance: number): Float64Array {
  const each = new Float64Array(system.size).fill(tolerance);
  const integrator = new Integrator(system, 0, Float64Array.from(start), { tolerance: each });
  integrator.advance(end, [], () => {});
  return integrator.state;
}

function farthest(x: ArrayLike<number>, y: ArrayLike<number>): number {
  return Math.max(...Array.from(x, (each, k) => Math.abs(each - y[k])));
}

describe.each<Case>([bell, turning, crest])('$name', ({ system, start, end, exact }) => {
  test('ours, ODEX and the closed form agree', () => {
    const reference = extrapolate(plainRates(system), [...start], end, 1e-12);
    const y = ours(system, start, end, 1e-10);
    expect(farthest(reference, exact(end).slice(0, system.size))).toBeLessThan(1e-10);
    expect(farthest(y, reference)).toBeLessThan(1e-8);
  });
});

test('a ring of basins, emptied into one another', () => {
  const gives = fc.array(fc.double({ min: 0.05, max: 5, noNaN: true }), { minLength: 2, maxLength: 12 });
  fc.assert(
    fc.property(gives, (give) => {
      const system = ring(give);
      const start = give.map((_, k) => (k === 0 ? 1 : 0.1));
      const reference = extrapolate(plainRates(system), start, 5, 1e-11);
      expect(farthest(ours(system, start, 5, 1e-9), reference)).toBeLessThan(1e-7);
    }),
    { numRuns: 20 },
  );
});
