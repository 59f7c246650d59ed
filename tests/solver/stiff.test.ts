/** Published stiff problems, each to its reference solution. */
import { describe, expect, test } from 'vitest';
import { Integrator } from '../../sim/solver/integrate.ts';
import type { Trigger } from '../../sim/solver/trigger.ts';
import { problems, robertson, solveProblem } from './stiffProblems.ts';

const relative = (got: number, expected: number): number => Math.abs(got / expected - 1);

test.each(problems)('$name ($source)', (problem) => {
  const { state } = solveProblem(problem);
  for (const [k, expected] of problem.expected.entries())
    expect(relative(state[k], expected), `state ${k}: ${state[k]}`).toBeLessThan(problem.relative);
});

test.each(problems.slice(0, 3))('a tenth of the tolerance is nearer to $name', (problem) => {
  const worst = (factor: number): number => {
    const { state } = solveProblem(problem, factor);
    return Math.max(...problem.expected.map((expected, k) => relative(state[k], expected)));
  };
  expect(worst(0.1)).toBeLessThan(worst(1) / 3);
});

describe('switches in Robertson kinetics', () => {
  // Printed by SUNDIALS' CVODE example cvRoberts_dns at its own tolerance of 1e-4: 0.26391 and 2.0790e7. The sharper
  // figures are roots of a Radau IIA solution at 1e-12, with which a BDF one agrees to 3e-9.
  test('y₃ rises through 0.01 and y₁ falls through 1e-4, nine decades of time later', () => {
    const integrator = new Integrator(robertson, 0, Float64Array.of(1, 0, 0), {
      tolerance: Float64Array.of(1e-12, 1e-16, 1e-12),
    });
    integrator.restart(1e-6);
    const rises: Trigger = { component: 2, value: 0.01, direction: 1, armed: true };
    const falls: Trigger = { component: 0, value: 1e-4, direction: -1, armed: true };
    const next = (): readonly Trigger[] => integrator.advance(4e7, [rises, falls], () => {});
    expect([...next()]).toEqual([rises]);
    expect(relative(integrator.time, 0.26391)).toBeLessThan(5e-4);
    expect(relative(integrator.time, 0.264019078)).toBeLessThan(1e-7);
    expect([...next()]).toEqual([falls]);
    expect(relative(integrator.time, 2.079e7)).toBeLessThan(5e-4);
    expect(relative(integrator.time, 2.07954969e7)).toBeLessThan(1e-7);
    expect([...next()]).toEqual([]);
    expect(integrator.time).toBe(4e7);
  });
});

test('Robertson kinetics keep their total', () => {
  for (const problem of problems.slice(0, 2)) {
    const { state } = solveProblem(problem);
    expect(Math.abs(state[0] + state[1] + state[2] - 1)).toBeLessThan(1e-12);
  }
});
