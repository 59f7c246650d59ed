/** What goes from one state to another, or into a sum, is neither lost nor made, whatever steps are taken. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Integrator } from '../../sim/solver/integrate.ts';
import { RosenbrockStep } from '../../sim/solver/step.ts';
import type { StiffSystem } from '../../sim/solver/system.ts';
import type { Trigger } from '../../sim/solver/trigger.ts';
import { systemOf } from '../cases.ts';

/**
 * Two basins and a drain, all flows nonlinear and one moved by time: 0 is fed by 1 + sin t and spills to 1, which drains
 * to the outside by its square. Sums: what came in and what went out.
 */
function leaking(stiffness: number): StiffSystem {
  const inflow = (t: number): number => 1 + Math.sin(t);
  const spill = (y: number): number => stiffness * y * (1 + y);
  return systemOf({
    size: 2,
    rates: (t, [y1, y2]) => [inflow(t) - spill(y1), spill(y1) - y2 * y2],
    jacobian: (_, [y1, y2]) => {
      const slope = stiffness * (1 + 2 * y1);
      return [
        [-slope, 0],
        [slope, -2 * y2],
      ];
    },
    byTime: (t) => [Math.cos(t), 0],
    sums: {
      rates: (t, [, y2]) => [inflow(t), y2 * y2],
      gradient: (_, [, y2]) => [
        [0, 0],
        [0, 2 * y2],
      ],
      byTime: (t) => [Math.cos(t), 0],
    },
  });
}

const START = [0.3, 0.5];

/** Storage change plus what went out minus what came in. */
function unclosed({ state, quadratures }: Pick<Integrator, 'state' | 'quadratures'>): number {
  return Math.abs(state[0] + state[1] - START[0] - START[1] + quadratures[1] - quadratures[0]);
}

test('closes to rounding through rejected steps, stops and switches', () => {
  let rejected = 0;
  let switches = 0;
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 1e3, noNaN: true }),
      fc.array(fc.double({ min: 0.01, max: 10, noNaN: true }), { maxLength: 8 }),
      fc.array(fc.double({ min: 0.6, max: 1.4, noNaN: true }), { maxLength: 4 }),
      (stiffness, stops, values) => {
        const tolerance = new Float64Array(2).fill(1e-5);
        const integrator = new Integrator(leaking(stiffness), 0, Float64Array.from(START), { tolerance });
        const triggers = values.map<Trigger>((value) => ({ component: 1, value, direction: 1, armed: true }));
        for (const end of [...stops.sort((p, q) => p - q), 10])
          while (integrator.time < end) {
            switches += integrator.advance(end, triggers, () => {}).length;
            expect(unclosed(integrator)).toBeLessThan(1e-12 * (1 + integrator.quadratures[0]));
            integrator.restart(0.5);
          }
        rejected += integrator.work.rejected;
      },
    ),
    { numRuns: 40 },
  );
  expect(rejected).toBeGreaterThan(20);
  expect(switches).toBeGreaterThan(20);
});

test('closes in a single step far too long to be any good', () => {
  const system = leaking(10);
  const step = new RosenbrockStep(system);
  step.begin(0, Float64Array.from(START));
  for (const h of [1e-3, 0.1, 1, 10]) {
    step.attempt(h);
    const change = step.end[0] + step.end[1] - START[0] - START[1];
    expect(Math.abs(change + step.growth[1] - step.growth[0])).toBeLessThan(
      1e-12 * (1 + Math.abs(step.growth[0]) + Math.abs(step.growth[1])),
    );
  }
});
