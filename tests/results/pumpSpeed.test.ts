/**
 * A pump driven slower, everywhere it counts: against a pump whose own curve is what the affinity laws make of it
 * (flow with the speed, head with its square; Karassik et al., Pump Handbook, from memory).
 */
import { describe, expect, test } from 'vitest';
import type { Check } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { type File, siteWith } from '../clogging/sites.ts';

const SPEED = 0.85;

/** Off and on again in a run, so that 'on' is asked as well as the start. */
const site = (change: (file: File) => void): Scenario =>
  siteWith((file) => {
    file.span = '4 h';
    file.actions = [
      { at: '1 h', do: 'pump', to: 'off' },
      { at: '2 h', do: 'pump', to: 'on' },
    ];
    delete file.pump.power;
    change(file);
  });

const driven = simulate(site((file) => (file.pump.speed = SPEED))).answer;
const turned = simulate(
  site((file) => {
    file.pump.curve = file.pump.curve.map(([q, h]: [number, number]) => [SPEED * q, SPEED * SPEED * h]);
  }),
).answer;
const full = simulate(site(() => {})).answer;

const figures = ({ name, value, limit }: Check) => [name, value, limit] as const;

describe('a pump at a speed below its full one', () => {
  test('runs the site as a pump of that curve does, after a stop too', () => {
    for (const name of ['main', 'bottom feed', 'top feed']) {
      expect(driven.flows[name]!.end).toBeCloseTo(turned.flows[name]!.end, 9);
      expect(driven.flows[name]!.max.value).toBeCloseTo(turned.flows[name]!.max.value, 9);
    }
    expect(driven.flows.main!.end).toBeLessThan(0.9 * full.flows.main!.end);
    expect(driven.levels.pond!.max.value).toBeCloseTo(turned.levels.pond!.max.value, 6);
  });

  test('is asked the same by every check and trial', () => {
    expect(driven.checks.map(({ name }) => name)).toEqual(turned.checks.map(({ name }) => name));
    driven.checks.forEach((check, i) => {
      const [name, value, limit] = figures(check);
      const [, other, itsLimit] = figures(turned.checks[i]!);
      if (value !== null && other !== null) expect(value, name).toBeCloseTo(other, 5);
      if (limit !== null && itsLimit !== null) expect(limit, name).toBeCloseTo(itsLimit, 9);
    });
  });

  test('is told its speed where its last point is', () => {
    const duty = driven.checks.find(({ name }) => name === 'duty');
    expect(duty?.says).toContain('at 85 % of its speed');
    expect(full.checks.find(({ name }) => name === 'duty')?.says).not.toContain('of its speed');
  });
});
