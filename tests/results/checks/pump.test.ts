/** Reach, velocity and duty: the pump and its pipes. */
import { describe, expect, test } from 'vitest';
import { dutyCheck } from '../../../sim/results/checks/duty.ts';
import { reachCheck } from '../../../sim/results/checks/reach.ts';
import { balanceOf } from '../../../sim/results/checks/variants.ts';
import { velocityCheck } from '../../../sim/results/checks/velocity.ts';
import { answerOf, checked, inputOf, siteWith, upright } from './site.ts';

describe('reach', () => {
  test('holds the head without flow against the outlets above the pond', () => {
    const check = answerOf(reachCheck, checked(upright()));
    // Top outlet 1.1 and lip 1.0 over a pond at −0.1.
    expect([check.verdict, check.value]).toEqual(['pass', 5.2]);
    expect(check.limit).toBeCloseTo(1.2, 12);
    expect(check.margin).toBeCloseTo(4.0, 12);
    expect(check.places.map(({ name, verdict }) => [name, verdict])).toEqual([['bottom feed', 'pass']]);
  });

  test('fails where the pump does not lift to an outlet, and says by how much', () => {
    const weak = siteWith((file) => (file.pump.curve = { flow: '100 L/min', head: 1.15 }));
    const check = answerOf(reachCheck, weak);
    expect([check.verdict, check.value]).toEqual(['fail', 1.15]);
    expect(check.says).toContain('reaches 1.15 m above the pond without flow, needs 1.20 m');
    expect(check.mend).toContain('0.05 m');
    // The lip at 1.10 m is within the 12 % by which a curve from the box may be off.
    expect(check.places[0]?.verdict).toBe('tight');
  });

  test('is tight where an outlet runs dry by the valves alone, and finds the handle that feeds it', () => {
    const scenario = siteWith((file) => {
      file.pump.curve = { flow: '50 L/min', head: 2 };
      file.plumbing.topFeed.outlet = 1.12;
    });
    expect(inputOf(scenario).balance!.answer.flows['top feed']).toBe(0);
    const check = answerOf(reachCheck, scenario);
    expect(check.verdict).toBe('tight');
    const degrees = Number(/to (\d+)° closed/.exec(check.mend)?.[1]);
    const turned = { ...scenario.plumbing, bottomFeed: { ...scenario.plumbing.bottomFeed!, valve: 1 - degrees / 90 } };
    expect(balanceOf({ ...scenario, plumbing: turned })!.answer.flows['top feed']).toBeGreaterThan(1e-6);
  });

  test('asks nothing where both valves are shut', () => {
    const scenario = siteWith((file) => {
      file.plumbing.bottomFeed.valve = 0;
      file.plumbing.topFeed.valve = 0;
    });
    expect(reachCheck(inputOf(scenario))).toBeUndefined();
  });
});

describe('velocity', () => {
  const narrow = () => siteWith((file) => (file.plumbing.bottomFeed.diameter = 0.04));

  test('is the flow over the bore, the fastest first', () => {
    const scenario = narrow();
    const { flows } = balanceOf(scenario)!.answer;
    const check = answerOf(velocityCheck, scenario);
    expect((check.value ?? 0) / (flows['bottom feed'] / ((Math.PI / 4) * 0.04 ** 2))).toBeCloseTo(1, 12);
    expect(check.places.map((p) => p.name).sort()).toEqual(['main line', 'top feed']);
    expect(check.verdict).toBe('fail');
    expect([check.limit, check.origin]).toEqual([2.4, 'common practice']);
  });

  test('tells the head it costs: Darcy and Weisbach with the K of the run', () => {
    // Only K: 1 of the feed and 0.127 of the open valve (Miller 1978), friction of 2 m at f = 0.0165 to 0.02.
    const check = answerOf(velocityCheck, narrow());
    const head = (check.value ?? 0) ** 2 / (2 * 9.80665);
    const cost = Number(/costs ([0-9.]+) m/.exec(check.says)?.[1]);
    expect(cost).toBeGreaterThan(head * (1.127 + (0.0155 * 2) / 0.04));
    expect(cost).toBeLessThan(head * (1.127 + (0.021 * 2) / 0.04));
  });

  test('is mended by the size it names, at the velocity it names, and by none smaller', () => {
    const scenario = narrow();
    const { mend } = answerOf(velocityCheck, scenario);
    const [, size, speed] = /as (\d+) mm pipe: its water then runs at ([0-9.]+) m\/s/.exec(mend) ?? [];
    // EN ISO 1452 PN 10: 63 mm has a wall of 3.0 mm, 50 mm one of 2.4 mm.
    const bores: Record<string, number> = { 50: 0.0452, 63: 0.057 };
    const velocity = (diameter: number): number => {
      const bottomFeed = { ...scenario.plumbing.bottomFeed!, diameter };
      return balanceOf({ ...scenario, plumbing: { ...scenario.plumbing, bottomFeed } })!.answer.duty.velocity[
        'bottom feed'
      ];
    };
    expect(Object.keys(bores)).toContain(size);
    expect(velocity(bores[size!]!).toFixed(2)).toBe(speed);
    expect(velocity(bores[size!]!)).toBeLessThanOrEqual(2.4);
    if (size === '63') expect(velocity(bores[50]!)).toBeGreaterThan(2.4);
  });

  test('takes the limit of the file', () => {
    const scenario = siteWith((file) => (file.limits = { velocity: 0.5 }));
    const check = answerOf(velocityCheck, scenario);
    expect([check.verdict, check.limit, check.origin]).toEqual(['fail', 0.5, 'file']);
    expect(check.says).toContain('set in the file');
  });
});

describe('duty', () => {
  test('is where the curves meet, within the points given', () => {
    const scenario = checked(upright());
    const check = answerOf(dutyCheck, scenario);
    expect(check.value).toBe(balanceOf(scenario)!.answer.flows.main);
    expect([check.verdict, check.limit]).toEqual(['pass', 0.008]);
    expect(check.says).toContain('drawing 310 W');
  });

  test('fails beyond the last point, and a throttle brings it back', () => {
    const scenario = siteWith((file) => {
      file.pump.curve = file.pump.curve.slice(0, 3);
      file.plumbing.topFeed.k = 2;
    });
    const check = answerOf(dutyCheck, scenario);
    expect(check.verdict).toBe('fail');
    expect(check.margin).toBeLessThan(0);
    const k = Number(/K ([0-9.]+) more/.exec(check.mend)?.[1]);
    const throttled = (more: number): number => {
      const main = { ...scenario.plumbing.main, k: scenario.plumbing.main.k + more };
      return balanceOf({ ...scenario, plumbing: { ...scenario.plumbing, main } })!.answer.flows.main;
    };
    expect(throttled(k + 0.05)).toBeLessThanOrEqual(0.005);
    expect(throttled(k - 0.3)).toBeGreaterThan(0.005);
  });
});
