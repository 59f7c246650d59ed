import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { startVolumes } from '../../sim/begin.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { levelsOf } from '../../sim/network/start.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { APART, FEED, MAIN, marched, RUNNING, runningSite, stone, upright, uprightPool } from '../network/smallSite.ts';

/** Levels at t = 0 by name, m. */
function begun(s: Scenario): Record<string, number> {
  const network = assemble(s);
  const levels = levelsOf(network, startVolumes(s, network));
  return Object.fromEntries(network.parts.basins.map(({ name }, i) => [name, levels[i]]));
}

const crest = (z: number, more: readonly [number, number][] = []) => ({ crest: [[0, z], [0.6, z], ...more] });

/** A filter with an uneven lip over a pool with two stones and a stream down to the pond. */
const FILTERED = {
  filter: {
    profile: [
      [0.7, 0.5],
      [2, 0.5],
    ],
    lip: crest(1.6, [[0.7, 1.58]]),
    rim: crest(1.9),
  },
  plumbing: {
    main: MAIN,
    tee: 0.8,
    bottomFeed: { ...FEED, inlet: 0.75 },
    topFeed: { ...FEED, outlet: 1.7 },
  },
  watercourse: [
    uprightPool('spring', 1, 0.7, undefined, { stones: [stone('weir', 0.8, 1.25), stone('low stone', 0.3, 1.2)] }),
    { name: 'run', kind: 'stream', length: 3, width: 0.5, slope: 0.03, foot: 0.3 },
  ],
};
const site = (more: object = {}): Scenario => runningSite({ ...FILTERED, start: 'standing', ...more });
const plumbing = (more: object) => ({ plumbing: { ...FILTERED.plumbing, ...more } });

describe('a standing start', () => {
  test('has every basin at the lowest point of its way out, the stream dry, vault and pond level', () => {
    const levels = begun(site());
    const wanted = { vault: -0.2, riser: 1.58, filter: 1.58, spring: 1.2, run: 0.3, pond: -0.2 };
    for (const [name, z] of Object.entries(wanted)) expect(levels[name]).toBeCloseTo(z, 12);
  });

  test('has the pipework full up to its own top where that is lower than the filter’s level', () => {
    expect(begun(site(plumbing({ topFeed: { ...FEED, outlet: 1.3 } }))).riser).toBeCloseTo(1.3, 12);
    expect(begun(site(plumbing({ topFeed: { ...FEED, outlet: 1.3 }, tee: 1.4 }))).riser).toBeCloseTo(1.4, 12);
    expect(begun(site(plumbing({ topFeed: undefined }))).riser).toBeCloseTo(0.8, 12);
    expect(begun(site(plumbing({ topFeed: undefined, tee: 0.1 }))).riser).toBeCloseTo(0.75, 12);
  });

  test('without a filter has the pipe as full as the pool in which the bottom feed ends, or the pond', () => {
    const high = { ...FEED, outlet: 1.9 };
    expect(begun(runningSite({ start: 'standing', ...plumbing({ topFeed: high }) })).riser).toBeCloseTo(1.2, 12);
    const alone = { start: 'standing', watercourse: [], ...plumbing({ topFeed: high }) };
    expect(begun(runningSite(alone)).riser).toBeCloseTo(-0.2, 12);
  });

  test('runs at full speed from the first moment where the pump runs, without a ramp', () => {
    const { record } = marched(runningSite({ start: 'standing', span: '1 min' })).march;
    const main = record.network.parts.flowNames.indexOf('main');
    const running = balance(runningSite()).flows.main;
    expect(record.settingsAt(0).ramp).toMatchObject({ from: 1, to: 1 });
    expect(record.flow(0, main)).toBeGreaterThan(running);
  });

  test('stands still where the pump does and nothing seeps', () => {
    const pump = { ...(RUNNING['pump'] as object), running: false };
    const still = marched(site({ pump, span: '1 d' }));
    for (const basin of ['pond', 'vault', 'riser', 'filter', 'spring', 'run'])
      expect(Math.abs(still.levelAt(basin, 86400) - still.levelAt(basin, 0))).toBeLessThan(1e-7);
  });
});

describe('a level of a basin’s own', () => {
  const own = {
    vault: { ...(APART['vault'] as object), level: -0.5 },
    filter: { ...FILTERED.filter, level: 'empty' },
    ...plumbing({ level: 0.1 }),
    watercourse: [
      { ...FILTERED.watercourse[0], level: 1.3 },
      { ...FILTERED.watercourse[1], level: 0.35 },
    ],
  };

  test.each(['standing', 'overnight', 'running'])('is laid over a start %s', (start) => {
    const levels = begun(site({ ...own, start }));
    const wanted = { vault: -0.5, filter: 0.7, riser: 0.1, spring: 1.3, run: 0.35, pond: -0.2 };
    for (const [name, z] of Object.entries(wanted)) expect(levels[name]).toBeCloseTo(z, 12);
  });

  test('of an empty pond means that all is empty', () => {
    const empty = { ...upright(10, -1, -0.2), level: 'empty', fillMark: -0.2 };
    const levels = begun(site({ pond: empty, start: undefined }));
    const floors = { vault: -1.2, riser: -1.1, filter: 0.7, spring: 0.7, run: 0.3, pond: -1 };
    for (const [name, z] of Object.entries(floors)) expect(levels[name]).toBe(z);
  });
});

describe('a running start', () => {
  test('is the balance with the pond at its own level, or at its fill mark', () => {
    const marked = { ...upright(10, -1, -0.2), fillMark: -0.15 };
    expect(begun(site({ start: 'running', pond: marked })).pond).toBeCloseTo(-0.2, 12);
    const unleveled = { ...marked, level: undefined };
    const levels = begun(site({ start: 'running', pond: unleveled }));
    expect(levels.pond).toBeCloseTo(-0.15, 12);
    const { levels: balanced } = balance(site({ pond: unleveled }));
    for (const [name, z] of Object.entries(balanced)) expect(levels[name]).toBeCloseTo(z, 9);
  });

  test('is what a running pump starts from unless the file says otherwise, standing what a resting one does', () => {
    expect(site({ start: undefined }).start).toBe('running');
    expect(site({ start: undefined, pump: { ...(RUNNING['pump'] as object), running: false } }).start).toBe('standing');
  });
});

describe('a start overnight', () => {
  const night = (more: object): Record<string, number> => begun(site({ start: 'overnight', ...more }));

  test('has the filter drained to its bottom inlet through a check valve that is none, the pond kept at its level', () => {
    // With the top feed's valve shut no air gets in at the tee.
    const shut = { ...FEED, outlet: 1.7, valve: 0 };
    const levels = night(plumbing({ main: { ...MAIN, checkValve: false }, topFeed: shut }));
    expect(levels.filter).toBeCloseTo(0.75, 3);
    expect(levels.riser).toBeCloseTo(-0.2, 3);
    expect(levels.pond).toBeCloseTo(-0.2, 12);
  });

  test('has the filter standing at its lip behind a sound one', () => {
    const levels = night({});
    expect(levels.filter).toBeCloseTo(1.58, 4);
    expect(levels.spring).toBeCloseTo(1.2, 4);
  });

  test('has it down at an outlet of the top feed that lies under its lip and runs into a pool', () => {
    const low = { ...FEED, outlet: 1.3, to: 'spring' };
    expect(night(plumbing({ topFeed: low })).filter).toBeCloseTo(1.3, 3);
  });

  test('has a pool that seeps at the foot of its leak', () => {
    const seeping = { stones: [stone('weir', 0.8, 1.2, { seep: { k: 3e-3, foot: 0.9 } })] };
    const levels = night({ watercourse: [uprightPool('spring', 1, 0.7, undefined, seeping)] });
    expect(levels.spring).toBeCloseTo(0.9, 3);
  });
});
