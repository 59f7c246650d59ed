/** Switches found inside steps, on problems whose crossings are known. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Integrator } from '../../sim/solver/integrate.ts';
import type { StiffSystem } from '../../sim/solver/system.ts';
import { isPast, type Trigger } from '../../sim/solver/trigger.ts';
import { type Case, decay, straight, systemOf, thrown, turning } from '../cases.ts';

const trigger = (component: number, value: number, direction: 1 | -1, armed = true): Trigger => ({
  component,
  value,
  direction,
  armed,
});

function integratorOf(system: StiffSystem, start: readonly number[], tolerance = 1e-8): Integrator {
  return new Integrator(system, 0, Float64Array.from(start), { tolerance: start.map(() => tolerance) as never });
}

interface Fire {
  t: number;
  what: Trigger;
}

/** Marches to an end, through all that fires. */
function allFires(integrator: Integrator, end: number, triggers: readonly Trigger[]): Fire[] {
  const fires: Fire[] = [];
  while (integrator.time < end)
    for (const what of integrator.advance(end, triggers, () => {})) fires.push({ t: integrator.time, what });
  return fires;
}

const ofCase = ({ system, start }: Case, tolerance?: number): Integrator => integratorOf(system, start, tolerance);
const timesOf = (fires: readonly Fire[]): number[] => fires.map(({ t }) => t);

function expectTimes(fires: readonly Fire[], expected: readonly number[], within: number): void {
  expect(fires.length).toBe(expected.length);
  for (const [i, t] of timesOf(fires).entries()) expect(Math.abs(t - expected[i])).toBeLessThan(within);
}

describe('a root', () => {
  test('stands where the solution is, not only its interpolation', () => {
    for (const tolerance of [1e-4, 1e-6, 1e-8]) {
      const integrator = ofCase(decay(1), tolerance);
      const half = trigger(0, 0.5, -1);
      expectTimes(allFires(integrator, 1, [half]), [Math.LN2], 20 * tolerance);
    }
  });

  test('lies past its value by no more than a hundredth of the tolerance', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), fc.integer({ min: 3, max: 9 }), (value, digits) => {
        const integrator = ofCase(turning, 10 ** -digits);
        const rises = trigger(1, value, 1);
        expect(integrator.advance(3, [rises], () => {})).toEqual([rises]);
        const past = integrator.state[1] - value;
        expect(past).toBeGreaterThan(0);
        expect(past).toBeLessThanOrEqual(Math.max(0.01 * 10 ** -digits, 1e-11));
        expect(Math.abs(Math.sin(integrator.time) - value)).toBeLessThan(20 * 10 ** -digits);
      }),
      { numRuns: 50 },
    );
  });

  describe('inside a step that goes over a hump and down again', () => {
    // Thrown up at speed 1, the height passes 0.48 at 0.8 and again at 1.2, with its top of 0.5 at 1.
    const march = (list: readonly Trigger[]): Fire[] => allFires(ofCase(thrown(1)), 2, list);

    test('which it does: one step holds both', () => {
      const integrator = ofCase(thrown(1));
      const steps: [number, number][] = [];
      integrator.advance(2, [], (_, size) => steps.push([integrator.time - size, integrator.time]));
      expect(steps.some(([from, to]) => from < 0.8 && to > 1.2)).toBe(true);
    });

    test('is found going up', () => expectTimes(march([trigger(0, 0.48, 1)]), [0.8], 1e-8));
    test('is found going down', () => expectTimes(march([trigger(0, 0.48, -1, false)]), [1.2], 1e-8));
    test('is found both ways', () => {
      const up = trigger(0, 0.48, 1);
      const down = trigger(0, 0.48, -1, false);
      const fires = march([down, up]);
      expectTimes(fires, [0.8, 1.2], 1e-8);
      expect(fires.map(({ what }) => what)).toEqual([up, down]);
    });
  });
});

describe('several switches', () => {
  test('in one step fire in the order of their times, whatever the order of the list', () => {
    const low = trigger(0, 0.2, 1);
    const middle = trigger(1, 0.5, 1);
    const high = trigger(0, 0.9, 1);
    for (const list of [
      [low, middle, high],
      [high, middle, low],
    ]) {
      for (const each of list) each.armed = true;
      const fires = allFires(ofCase(straight([1, 2])), 10, list);
      expect(fires.map(({ what }) => what)).toEqual([low, middle, high]);
      expectTimes(fires, [0.2, 0.25, 0.9], 1e-9);
    }
  });

  test('that tie fire together', () => {
    const integrator = ofCase(straight([1, 2]));
    const one = trigger(0, 0.5, 1);
    const other = trigger(0, 0.5, 1);
    expect(integrator.advance(10, [one, other], () => {})).toEqual([one, other]);
    expect(integrator.advance(10, [one, other], () => {})).toEqual([]);
    expect(integrator.time).toBe(10);
  });

  test('fire once each over random lines, in order', () => {
    const slope = fc.double({ min: 0.1, max: 3, noNaN: true });
    const value = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(slope, { minLength: 1, maxLength: 4 }),
        fc.array(value, { minLength: 1, maxLength: 6 }),
        (slopes, values) => {
          const list = values.map((each, i) => trigger(i % slopes.length, each, 1));
          const fires = allFires(ofCase(straight(slopes)), 10, list);
          const due = list.map(({ component, value: v }) => v / slopes[component]).filter((t) => t < 10 - 1e-6);
          expect(fires.length).toBeGreaterThanOrEqual(due.length);
          expectTimes(
            fires.slice(0, due.length),
            due.sort((p, q) => p - q),
            1e-8,
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('arming', () => {
  test('a switch past its value at the start does not fire until it has been back', () => {
    // y = cos t starts above 0.5, and comes back through it from below at 5π/3.
    const rises = trigger(0, 0.5, 1, false);
    expectTimes(allFires(ofCase(turning), 6, [rises]), [(5 * Math.PI) / 3], 1e-6);
  });

  test('a switch armed past its value fires at once', () => {
    const integrator = ofCase(turning);
    const rises = trigger(0, 0.5, 1);
    expect(integrator.advance(6, [rises], () => {})).toEqual([rises]);
    expect(integrator.time).toBeLessThan(1e-9);
  });

  test('a switch fires each time the solution comes round', () => {
    const turns = [0, 1, 2, 3].map((k) => Math.PI / 6 + 2 * Math.PI * k);
    expectTimes(allFires(ofCase(turning), 24, [trigger(1, 0.5, 1)]), turns, 1e-5);
  });

  test('both sides of one value fire in turn', () => {
    const fires = allFires(ofCase(turning), 6, [trigger(1, 0.5, 1), trigger(1, 0.5, -1, false)]);
    expectTimes(fires, [Math.PI / 6, (5 * Math.PI) / 6], 1e-6);
  });

  test('a value that is only touched fires at most there, and the march goes on', () => {
    // The top of the throw is exactly 0.5, at 1.
    for (const above of [-1e-9, -1e-14, 0, 1e-14, 1e-9]) {
      const integrator = ofCase(thrown(1));
      const fires = allFires(integrator, 2, [trigger(0, 0.5 + above, 1)]);
      expect(integrator.time).toBe(2);
      expect(fires.length).toBeLessThanOrEqual(1);
      for (const { t } of fires) expect(Math.abs(t - 1)).toBeLessThan(1e-4);
      if (above === -1e-9) expect(fires.length).toBe(1);
      if (above === 1e-9) expect(fires.length).toBe(0);
    }
  });
});

describe('at a mandatory stop', () => {
  test('a crossing just at the end belongs to this stretch or the next, never to both', () => {
    for (const shift of [-1e-9, -1e-13, -1e-16, 0, 1e-16, 1e-13, 1e-9]) {
      const integrator = ofCase(straight([1]));
      const rises = trigger(0, 1 + shift, 1);
      const fires = [...allFires(integrator, 1, [rises]), ...allFires(integrator, 2, [rises])];
      expectTimes(fires, [1], 1e-8);
      expect(isPast(rises, integrator.state)).toBe(true);
    }
  });

  test('a switch at the end leaves the end for the next call', () => {
    const integrator = ofCase(straight([1]));
    const rises = trigger(0, 0.999999, 1);
    expect(integrator.advance(1, [rises], () => {})).toEqual([rises]);
    expect(integrator.time).toBeLessThan(1);
    expect(integrator.advance(1, [rises], () => {})).toEqual([]);
    expect(integrator.time).toBe(1);
  });
});

describe('two switches that turn the flow round', () => {
  /** y' = ±1 by a flag, turned at an upper and a lower value. */
  function swinging(low: number, high: number): { fires: Fire[]; run: (end: number, most: number) => void } {
    let slope = 1;
    const system = systemOf({ size: 1, rates: () => [slope], jacobian: () => [[0]] });
    const integrator = integratorOf(system, [0]);
    const up = trigger(0, high, 1);
    const down = trigger(0, low, -1, false);
    const fires: Fire[] = [];
    const run = (end: number, most: number): void => {
      while (integrator.time < end && fires.length < most)
        for (const what of integrator.advance(end, [up, down], () => {})) {
          slope = what === up ? -1 : 1;
          integrator.restart(0.2);
          fires.push({ t: integrator.time, what });
        }
    };
    return { fires, run };
  }

  test('with a gap between them swing at its pace', () => {
    const { fires, run } = swinging(0.5, 1);
    run(4.2, 100);
    expectTimes(fires, [1, 1.5, 2, 2.5, 3, 3.5, 4], 1e-8);
  });

  test('at one value chatter: they fire in turn without end, and who owns them has to stop it', () => {
    const { fires, run } = swinging(1, 1);
    run(2, 1000);
    expect(fires.length).toBe(1000);
    expect(fires[999].t - 1).toBeLessThan(1e-6);
    expect(fires.every(({ what }, i) => what.direction === (i % 2 === 0 ? 1 : -1))).toBe(true);
  });
});
