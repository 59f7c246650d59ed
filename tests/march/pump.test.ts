import { describe, expect, test } from 'vitest';
import { speedAt } from '../../sim/network/settings.ts';
import { ledgerOf } from '../../sim/results/ledger.ts';
import { log, marched, type Run, runningSite } from '../network/smallSite.ts';

const done = (actions: object[], more: object = {}): Run => marched(runningSite({ span: '20 min', actions, ...more }));

describe('the pump’s speed', () => {
  const speeds = (run: Run, times: number[]): number[] => {
    const { record } = run.march;
    return times.map((t) => Number(speedAt(record.settingsAt(record.rowAt(t)).ramp, t).toFixed(12)));
  };
  const pump = (at: number, to: string | number) => ({ at, do: 'pump', to });

  test('runs straight to its new value in three seconds', () => {
    const run = done([pump(100, 'off'), pump(200, 0.6), pump(300, 1.2), pump(400, 'on')]);
    const times = [99, 100, 101.5, 103, 201.5, 203, 301.5, 303, 401.5, 403];
    expect(speeds(run, times)).toEqual([1, 1, 0.5, 0, 0.3, 0.6, 0.9, 1.2, 1.1, 1]);
  });

  test('turns round from wherever it is, and takes three seconds again', () => {
    const run = done([pump(100, 'off'), pump(101, 'on'), pump(102, 'off')]);
    const back = 2 / 3 + 1 / 9;
    const at = [101, 101.5, 102, 103.5, 105].map((t) => t);
    const wanted = [2 / 3, 2 / 3 + 1 / 18, back, back / 2, 0];
    expect(speeds(run, at)).toEqual(wanted.map((n) => Number(n.toFixed(12))));
  });

  test('is left alone by a command that it follows already', () => {
    const run = done([pump(100, 'off'), pump(102, 'off'), { at: 102.5, do: 'power', to: 'off' }]);
    expect(speeds(run, [101.5, 102, 102.7, 103])).toEqual([0.5, 0.333333333333, 0.1, 0]);
  });
});

describe('a power cut', () => {
  const cut = (at: number, lasting?: string) => ({ at, do: 'power', to: 'off', for: lasting });

  test('stops the pump as switching it off would, stands alone in the log and ends by itself', () => {
    const cutRun = done([cut(100, '5 min')]);
    const switched = done([
      { at: 100, do: 'pump', to: 'off' },
      { at: 400, do: 'pump', to: 'on' },
    ]);
    expect(log(cutRun)).toEqual(['100 power off', '400 power on']);
    for (const t of [101, 103, 250, 400, 402, 600]) expect(cutRun.levelAt('pond', t)).toBe(switched.levelAt('pond', t));
  });

  test('leaves hose and float valve running', () => {
    const supply = { hose: { flow: '6 L/min', on: true }, autofill: { flow: '6 L/min', low: -0.1, set: -0.05 } };
    const { in: inward } = ledgerOf(done([cut(0)], { supply }).march.record);
    expect(inward.hose).toBeCloseTo(0.12, 12);
    expect(inward.autofill).toBeCloseTo(0.12, 9);
  });

  test('may last beyond the span', () => {
    const run = done([cut(1000, '1 h')]);
    expect(log(run)).toEqual(['1000 power off']);
    expect(run.march.control.pump.driven).toBe(false);
  });

  test('ends when the longer of two is over, or when the power is put on', () => {
    expect(log(done([cut(100, '10 min'), cut(200, '1 min')]))).toEqual([
      '100 power off',
      '200 power off',
      '700 power on',
    ]);
    expect(log(done([cut(100, '10 min'), { at: 300, do: 'power', to: 'on' }]))).toEqual([
      '100 power off',
      '300 power on',
    ]);
  });

  test('holds against a command, which takes hold when it is over', () => {
    const actions = [cut(100, '5 min'), { at: 200, do: 'pump', to: 'off' }, { at: 300, do: 'pump', to: 0.6 }];
    const run = done(actions);
    const { record } = run.march;
    const at = (t: number): number => speedAt(record.settingsAt(record.rowAt(t)).ramp, t);
    expect([at(303), at(399), at(403)]).toEqual([0, 0, 0.6]);
  });
});
