import { describe, expect, test } from 'vitest';
import { RunFailure } from '../../sim/results/failure.ts';
import {
  APART,
  FEED,
  log,
  MAIN,
  marched,
  RUNNING,
  type Run,
  runningSite,
  smallSite,
  upright,
} from '../network/smallSite.ts';

/** A pond of 10 m² at −0.4 m that a hose fills by 60 L/min: 0.1 mm a second. */
const filling = (actions: object[], more: object = {}): Run =>
  marched(smallSite({ ...APART, supply: { hose: { flow: 1e-3, on: true } }, actions, ...more }));
const when = (level: number, way: 'rises' | 'falls', deed: object) => ({
  when: { basin: 'pond', [way]: level },
  ...deed,
});
const hose = (to: string) => ({ do: 'hose', to });

describe('a deed that waits for a level', () => {
  test('is done at the root in time, and the hose is off from there', () => {
    const run = filling([when(-0.37, 'rises', hose('off'))]);
    expect(log(run)).toEqual(['300 hose off']);
    expect(run.levelAt('pond', 3600)).toBeCloseTo(-0.37, 7);
  });

  test('is done at once where its level is reached or passed at t = 0', () => {
    expect(log(filling([when(-0.45, 'rises', hose('off'))]))).toEqual(['0 hose off']);
    expect(log(filling([when(-0.4, 'rises', hose('off'))]))).toEqual(['0 hose off']);
    expect(log(filling([when(-0.35, 'falls', hose('off'))]))).toEqual(['0 hose off']);
  });

  test('is done at each crossing, in its own direction only', () => {
    const run = filling(
      [
        when(-0.38, 'rises', { do: 'autofill', to: 'off' }),
        when(-0.37, 'rises', { do: 'pump out', flow: 3e-3, until: -0.39 }),
      ],
      { supply: { hose: { flow: 1e-3, on: true }, autofill: { flow: 0, low: -0.9, set: -0.8 } } },
    );
    // Up 10 mm in 100 s, then down 20 mm at twice that speed and up again, over and over.
    const cycle = (start: number): string[] => [
      `${start} autofill off`,
      `${start + 100} pump out`,
      `${start + 200} pump out over`,
    ];
    expect(log(run).slice(0, 9)).toEqual([...cycle(200), ...cycle(500), ...cycle(800)]);
  });

  test('may wait for a basin that is dry: it fires when the first water stands there', () => {
    const run = marched(
      runningSite({
        start: 'standing',
        watercourse: [{ ...(RUNNING['watercourse'] as object[])[0], level: 'empty' }],
        actions: [{ when: { basin: 'spring', rises: 0.8 }, do: 'hose', to: 'on' }],
        supply: { hose: { flow: 0 } },
      }),
    );
    expect(run.march.events.map((e) => e.what)).toEqual(['hose on']);
    expect(run.levelAt('spring', run.march.events[0].t)).toBeCloseTo(0.8, 6);
  });

  test('against another at the same level chatters: the run is capped and names the switch', () => {
    const actions = [when(-0.38, 'rises', hose('off')), when(-0.38, 'falls', hose('on'))];
    const leak = { elevation: -0.9, area: 1e-4 };
    const chattering = () => filling(actions, { pond: { ...upright(10, -1, -0.4), fillMark: -0.2, leak } });
    expect(chattering).toThrow(RunFailure);
    try {
      chattering();
    } catch (error) {
      const { kind, part, time, message } = error as RunFailure;
      expect(kind).toBe('capped');
      expect(part).toMatch(/^actions\[[01]\]$/);
      expect(message).toContain('over and over');
      // What the leak takes of the hose's litre a second slows the filling by less than a half.
      expect(time).toBeGreaterThan(200);
      expect(time).toBeLessThan(400);
    }
  });
});

describe('a daily timetable', () => {
  const timetable = (times: string[], more: object = {}): Run =>
    marched(
      runningSite({ starts: '2031-06-01T22:30', span: '50 h', actions: [{ daily: times, do: 'pump' }], ...more }),
    );
  const hours = (run: Run): string[] => run.march.events.map(({ t, what }) => `${t / 3600} ${what}`);

  test('goes by the clock from the moment the run starts, over midnight', () => {
    expect(hours(timetable(['23:00', '01:30']))).toEqual([
      '0.5 pump on',
      '3 pump off',
      '24.5 pump on',
      '27 pump off',
      '48.5 pump on',
    ]);
  });

  test('commands at the first moment of a run and at its last', () => {
    expect(hours(timetable(['22:30', '00:30']))).toEqual([
      '0 pump on',
      '2 pump off',
      '24 pump on',
      '26 pump off',
      '48 pump on',
      '50 pump off',
    ]);
  });

  test('leaves the pump as it is before its first time', () => {
    const off = { ...(RUNNING['pump'] as object), running: false };
    const run = timetable(['23:00', '01:30'], { pump: off, start: 'standing' });
    const main = run.march.record.network.parts.flowNames.indexOf('main');
    expect(run.march.record.flow(run.march.record.rowAt(1799), main)).toBe(0);
    expect(run.march.record.flow(run.march.record.rowAt(1900), main)).toBeGreaterThan(1e-3);
  });
});

/**
 * A vault cut off from the pond, so that all it gets is its float valve's full flow: after a cut-out it rises by
 * 0.5 L/s over 0.5 m², a millimeter a second.
 */
const starving = (actions: object[] = [], more: object = {}): Run =>
  marched(
    runningSite({
      start: 'standing',
      intake: { width: 0.3, elevation: -0.26, blockage: 1 },
      pump: { ...(RUNNING['pump'] as object), cutOut: { below: -0.8, restart: -0.7 } },
      supply: { autofill: { flow: 5e-4, low: -0.3, set: -0.2, in: 'vault' } },
      span: '15 min',
      actions,
      ...more,
    }),
  );

describe('a cut-out', () => {
  test('acts at its level and starts the pump again at the other, over and over, each at its root', () => {
    const run = starving();
    const events = run.march.events;
    expect(events.slice(0, 4).map((e) => e.what)).toEqual(['cut-out', 'restart', 'cut-out', 'restart']);
    for (const { t, what } of events) expect(run.levelAt('vault', t)).toBeCloseTo(what === 'restart' ? -0.7 : -0.8, 5);
    // The pump runs out in three seconds; then only the float valve counts.
    for (let i = 0; i + 1 < events.length; i += 2) {
      const still = events[i].t + 3;
      expect(events[i + 1].t).toBeCloseTo(still + (-0.7 - run.levelAt('vault', still)) / 1e-3, 2);
    }
  });

  test('acts at once when the power returns to a vault that has run low meanwhile, and once only', () => {
    const actions = [
      { at: 1, do: 'power', to: 'off', for: '100 s' },
      { at: 10, do: 'autofill', to: 'off' },
      { at: 10, do: 'leak', in: 'vault', elevation: -1.1, area: 5e-3 },
    ];
    const run = starving(actions);
    expect(run.levelAt('vault', 101)).toBeLessThan(-0.8);
    expect(log(run)).toEqual(['1 power off', '10 autofill off', '10 leak starts', '101 power on', '101 cut-out']);
  });

  test('acts at once where the vault starts low', () => {
    const run = starving([], { vault: { ...(APART['vault'] as object), level: -0.85 } });
    expect(log(run)[0]).toEqual('0 cut-out');
    expect(run.march.events[1].t).toBeCloseTo(3 + (-0.7 - run.levelAt('vault', 3)) / 1e-3, 2);
  });

  test('leaves a pump alone that is switched off, and a command waits for the restart', () => {
    const off = { at: 0, do: 'pump', to: 'off' };
    const drained = [
      off,
      { at: 0, do: 'autofill', to: 'off' },
      { at: 0, do: 'leak', in: 'vault', elevation: -1.1, area: 5e-3 },
    ];
    expect(log(starving(drained)).filter((line) => line.includes('cut-out'))).toEqual([]);
    const run = starving([{ at: 5, do: 'pump', to: 'on' }], {
      vault: { ...(APART['vault'] as object), level: -0.85 },
    });
    expect(run.march.events.slice(0, 3).map((e) => e.what)).toEqual(['cut-out', 'pump on', 'restart']);
  });

  test('that restarts during a power cut lets the power’s return start the pump', () => {
    const run = starving([{ at: 100, do: 'power', to: 'off', for: '100 s' }], {
      vault: { ...(APART['vault'] as object), level: -0.85 },
    });
    expect(log(run).slice(0, 3)).toEqual(['0 cut-out', '100 power off', '200 power on']);
    const main = run.march.record.network.parts.flowNames.indexOf('main');
    expect(run.march.record.flow(run.march.record.rowAt(205), main)).toBeGreaterThan(1e-3);
  });
});

test('switches a hair apart stop a run of years within its first days, named', () => {
  const actions = [when(-0.38, 'rises', hose('off')), when(-0.380001, 'falls', hose('on'))];
  const leak = { elevation: -0.9, area: 1e-4 };
  const years = () => filling(actions, { pond: { ...upright(10, -1, -0.4), fillMark: -0.2, leak }, span: '3650 d' });
  try {
    years();
    expect.unreachable();
  } catch (error) {
    const { kind, part, time, words } = error as RunFailure;
    expect([kind, part]).toEqual(['capped', expect.stringMatching(/^actions\[[01]\]$/)]);
    expect(words).toMatch(/^actions\[[01]\]: its switch fires \d+ times$/);
    expect(time).toBeLessThan(3 * 86400);
  }
});

test('a starved pump that cycles for days is capped, and its cause is told', () => {
  const plumbing = { main: { ...MAIN, length: 3 }, tee: 0.8, bottomFeed: { ...FEED, inlet: 0.75 } };
  const vault = {
    profile: [
      [-1.2, 0.02],
      [0.2, 0.02],
    ],
  };
  const cycling = () =>
    starving([], {
      span: '7 d',
      plumbing,
      vault,
      pump: { ...(RUNNING['pump'] as object), cutOut: { below: -0.8, restart: -0.79 } },
    });
  try {
    cycling();
    expect.unreachable();
  } catch (error) {
    const { kind, part, message } = error as RunFailure;
    expect([kind, part]).toEqual(['capped', 'vault']);
    expect(message).toContain('cuts out');
  }
});
