/**
 * What a driven pump draws, by hand: n³ P(Q/n) by the affinity laws (Karassik et al., Pump Handbook, from memory), and
 * ρ g Q H/η of the head n² H(Q/n); and that a speed which an action names is one of the full speed.
 */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import { simulate } from '../../sim/simulate.ts';
import { type File, siteWith } from '../clogging/sites.ts';

const SPEEDS = [0.7, 0.85, 1, 1.2] as const;
const POWER = [
  [0, 150],
  [0.003, 260],
  [0.006, 320],
] as const;
const BOX = { flow: 0.0085, head: 5.2 };
const WATTS = 310;

const off = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);
const dutyAt = (speed: number, pump: object): BalanceAnswer['duty'] =>
  balance(
    siteWith((file) => {
      delete file.pump.power;
      Object.assign(file.pump, pump, { speed });
    }),
  ).duty;

/** Straight between the points, and constant beyond the last. */
function drawn(flow: number): number {
  const [[, low], [mid, between], [most, high]] = POWER;
  if (flow >= most) return high;
  return flow < mid ? low + ((between - low) * flow) / mid : between + ((high - between) * (flow - mid)) / (most - mid);
}

describe.each(SPEEDS)('at %f of its full speed a pump draws', (n) => {
  test('n³ of what its points say at Q/n', () => {
    const { flow, power } = dutyAt(n, { power: POWER });
    expect(off(power, n ** 3 * drawn(flow / n))).toBeLessThan(1e-9);
  });

  test('n³ of its one figure', () => {
    expect(off(dutyAt(n, { power: WATTS }).power, n ** 3 * WATTS)).toBeLessThan(1e-12);
  });

  test('ρ g Q H/η, H = n² H₀ (1 − (Q/n Q_max)²)', () => {
    const { flow, head, power } = dutyAt(n, { curve: BOX, efficiency: 0.4 });
    const lifted = n ** 2 * BOX.head * (1 - (flow / n / BOX.flow) ** 2);
    expect(off(head, lifted)).toBeLessThan(1e-9);
    // Water of 15 °C: 999.10 kg/m³ (Kell 1975, from memory).
    expect(off(power, (999.1 * 9.80665 * flow * lifted) / 0.4)).toBeLessThan(1e-4);
  });
});

/** Four hours at one figure of power. */
const run = (speed: number, actions: object[]): RunAnswer =>
  simulate(
    siteWith((file: File) => {
      Object.assign(file, { span: '4 h', actions });
      Object.assign(file.pump, { speed, power: WATTS });
    }),
  ).answer;

const HOUR = 3600;
/** Its speed goes evenly to or from rest in three seconds, so that the cube of it counts a quarter of these. */
const RAMP = 3;
const stopAndStart = (n: number, standing: number): number =>
  n ** 3 * WATTS * (4 * HOUR - standing + RAMP / 4 - (RAMP - RAMP / 4));

describe.each(SPEEDS)('over a run at %f of its full speed the energy is that of n³', (n) => {
  test('with an hour’s stop', () => {
    const { energy } = run(n, [
      { at: '1 h', do: 'pump', to: 'off' },
      { at: '2 h', do: 'pump', to: 'on' },
    ]);
    expect(off(energy, stopAndStart(n, HOUR))).toBeLessThan(1e-6);
  });

  test('with a cut of the power', () => {
    const { energy } = run(n, [{ at: '1 h', do: 'power', to: 'off', for: '20 min' }]);
    expect(off(energy, stopAndStart(n, HOUR / 3))).toBeLessThan(1e-6);
  });
});

describe('an action that names a speed', () => {
  const at = (speed: number): number => balance(siteWith((file) => (file.pump.speed = speed))).flows.main!;
  const flowAfter = (own: number, ...actions: object[]): number => run(own, actions).flows.main!.end;
  const slower = { at: '1 h', do: 'pump', to: 0.7 };

  test.each(SPEEDS)('has a pump of %f run at 0.7 of its full speed, not of its own', (own) => {
    // The pond is a little lower in a run than in the balance, by what evaporates.
    expect(off(flowAfter(own, slower), at(0.7))).toBeLessThan(2e-3);
    const { energy } = run(own, [slower]);
    const changing = (RAMP * (own ** 4 - 0.7 ** 4)) / (4 * (own - 0.7));
    const cubes = own ** 3 * HOUR + (own === 0.7 ? RAMP * 0.7 ** 3 : changing) + 0.7 ** 3 * (3 * HOUR - RAMP);
    expect(off(energy, WATTS * cubes)).toBeLessThan(1e-6);
  });

  test.each(SPEEDS)('holds until the next: on again is its own, %f', (own) => {
    expect(off(flowAfter(own, slower, { at: '2 h', do: 'pump', to: 'on' }), at(own))).toBeLessThan(2e-3);
  });

  test('is what a pump comes back to after a cut of the power', () => {
    const dark = { at: '2 h', do: 'power', to: 'off', for: '20 min' };
    expect(off(flowAfter(0.85, slower, dark), at(0.7))).toBeLessThan(2e-3);
  });
});
