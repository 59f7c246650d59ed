/**
 * What a run costs, to the step, on two problems of nothing but + − × /, which every engine rounds alike. The counts are
 * our own: they tell a change of method from a change of speed, and prove nothing else.
 */
import { expect, test } from 'vitest';
import { Integrator, type WorkCounters } from '../../sim/solver/integrate.ts';
import type { StiffSystem } from '../../sim/solver/system.ts';
import { bell } from '../cases.ts';
import { robertson } from './stiffProblems.ts';

function cost(system: StiffSystem, start: readonly number[], end: number, tolerance: readonly number[]): WorkCounters {
  const integrator = new Integrator(system, 0, Float64Array.from(start), { tolerance: Float64Array.from(tolerance) });
  integrator.advance(end, [], () => {});
  return { ...integrator.work };
}

test('bell curve to 20', () => {
  expect(cost(bell.system, [1], 20, [1e-8])).toEqual({ steps: 169, rejected: 2, rates: 1024, jacobians: 169 });
});

test('Robertson kinetics to 40', () => {
  expect(cost(robertson, [1, 0, 0], 40, [1e-7, 1e-10, 1e-7])).toEqual({
    steps: 87,
    rejected: 5,
    rates: 547,
    jacobians: 87,
  });
});

test('each attempt calls for the rates five times, each step for their slopes once', () => {
  for (const tolerance of [1e-3, 1e-6, 1e-9]) {
    const { steps, rejected, rates, jacobians } = cost(robertson, [1, 0, 0], 40, [
      tolerance,
      tolerance / 1e3,
      tolerance,
    ]);
    expect(jacobians).toBe(steps);
    expect(rates).toBe(steps + 5 * (steps + rejected));
  }
});
