import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { dammedFallsCheck } from '../../sim/results/checks/dammedFalls.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { dammedFalls, damSite } from '../../sim/trials/dammedFalls.ts';
import { trialRecord } from '../../sim/trials/index.ts';
import { POND, POOL, plainFile, siteOf, terrace, VAULT } from './plainSite.ts';

/** A pump that gives 3 L/s at any head, and a pool that can take it all. */
// biome-ignore lint/suspicious/noExplicitAny: tests change it in every way
const steadyFile = (): any => {
  const file = plainFile();
  file.pump.curve = [
    [0, 10],
    [0.00299, 9.99],
    [0.003, 0],
  ];
  file.pump.minimum = -0.2;
  file.pump.suction = -0.5;
  file.filter.lip.crest = [
    [0, 1.6],
    [0.6, 1.6],
  ];
  file.filter.profile = [
    [0.3, 1],
    [2, 1],
  ];
  file.filter.rim.crest = [
    [0, 1.9],
    [1, 1.9],
  ];
  file.watercourse[0].profile = [
    [0.3, POOL],
    [1.5, POOL],
  ];
  file.watercourse[0].rim.crest = [
    [0, 1.5],
    [1, 1.5],
  ];
  return file;
};

const dammed = (s: Scenario) => {
  const trial = dammedFalls(s);
  if (trial === undefined) throw new Error('nothing to dam');
  return trial;
};

describe('dammed falls', () => {
  test('starve the vault after what pond and vault hold above its minimum over the flow', () => {
    const site = siteOf(steadyFile());
    const { levels, flows } = balance(site);
    const trial = dammed(site);
    // Pond and vault fall together; at the end the vault hangs below the pond by what the screen's lip takes.
    const held = (POND + VAULT) * (levels.pond + 0.2);
    expect(flows.main).toBeCloseTo(0.003, 4);
    expect(trial.starves).not.toBeNull();
    expect(Math.abs((trial.starves ?? 0) / (held / flows.main) - 1)).toBeLessThan(0.01);
    expect(trial.lost).toBe(0);
    expect(trial.deepest).toBeCloseTo(0.6, 2);
  });

  test('lose over the pool’s edge what the pump lifts beyond what the pool can hold', () => {
    const file = steadyFile();
    file.watercourse[0].rim.crest = [
      [0, 0.7],
      [1, 0.7],
    ];
    const site = siteOf(file);
    const { levels, flows } = balance(site);
    const trial = dammed(site);
    const lifted = flows.main * (trial.starves ?? 0);
    const overHead = (flows.main / ((2 / 3) ** 1.5 * Math.sqrt(9.80665))) ** (2 / 3);
    const kept = POOL * (0.7 + overHead - levels.pool);
    expect(Math.abs(trial.lost - (lifted - kept))).toBeLessThan(0.02 * lifted);
  });

  test('block the main stone, else the widest, else the first stream, else the lip', () => {
    const file = plainFile();
    const [pool] = file.watercourse;
    const wide = {
      ...pool.stones[0],
      name: 'wide',
      main: false,
      crest: [
        [0, 0.61],
        [0.8, 0.61],
      ],
    };
    pool.stones.push(wide);
    expect(damSite(siteOf(file))).toBe('stone');
    pool.stones[0].main = false;
    expect(damSite(siteOf(file))).toBe('wide');
    file.watercourse = [{ name: 'run', kind: 'stream', length: 2, width: 0.5, slope: 0.03, foot: 0.05 }];
    expect(damSite(siteOf(file))).toBe('run');
    file.watercourse = [];
    expect(damSite(siteOf(file))).toBe('lip');
  });

  test('a lip is dammed like a stone', () => {
    const file = steadyFile();
    file.watercourse = [];
    const trial = dammed(siteOf(file));
    expect(trial.dammed).toBe('lip');
    expect(trial.record.flow(trial.record.length - 1, trial.record.network.parts.flowNames.indexOf('lip'))).toBe(0);
  });

  test('the check is told; no figure where another stone takes the water', () => {
    const found = dammedFallsCheck(siteOf(steadyFile()));
    expect(found).toMatchObject({ name: 'dammed falls', verdict: 'told', limit: null, margin: null, unit: 's' });
    expect(found?.value).toBe(found?.t);
    const aside = dammedFallsCheck(terrace());
    expect(aside).toMatchObject({ value: null, t: null });
    expect(aside?.says).toContain('within 24 h');
  });
});

describe('the record behind a check', () => {
  test.each(['drain-back', 'drain-back, valve failed', 'drain-back in rain', 'first start', 'dammed falls', 'filling'])(
    '%s can be opened',
    (name) => {
      expect(trialRecord(terrace(), name)?.length).toBeGreaterThan(1);
    },
  );

  test('a check of the balance has none', () => {
    expect(trialRecord(terrace(), 'falls')).toBeUndefined();
    expect(trialRecord(terrace(), 'toString')).toBeUndefined();
  });
});
