import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { levelOf } from '../../sim/laws/storage.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { volumesAt } from '../../sim/results/inside.ts';
import { closureAt } from '../../sim/results/ledger.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { keptLevel } from '../../sim/trials/keptLevel.ts';
import { passedBy } from '../../sim/trials/passed.ts';
import { type Kept, keptSite, overflowBlocked, stopPump, stopWithValveFailed } from '../../sim/trials/stop.ts';
import { waysOf } from '../../sim/trials/ways.ts';
import { FILTER, LIP, POND, POOL, plainFile, plainSite, STONE, siteOf, terrace, VAULT } from './plainSite.ts';

const kept = (s: Scenario): Kept => {
  const found = keptSite(s);
  if (found === undefined) throw new Error('no level to keep');
  return found;
};

const levelAt = (record: RunRecord, name: string, t: number): number => {
  const { basins } = record.network.parts;
  const volumes = new Float64Array(basins.length);
  volumesAt(record, t, volumes);
  const i = basins.findIndex((b) => b.name === name);
  return levelOf(basins[i].storage, volumes[i]);
};

describe('a pump stop between vertical walls', () => {
  const site = plainSite();
  const trial = stopPump(kept(site));
  const { levels, flows } = balance(site);

  test('raises the pond by the water in transit over the area, by a volume balance', () => {
    // Head over a level crest from q = Cd (2/3)^1.5 √g h^1.5 (ISO 3846 form); g = 9.80665 m/s² (ISO 80000-3).
    const ideal = (2 / 3) ** 1.5 * Math.sqrt(9.80665);
    const head = (cd: number, width: number): number => (flows.main / (cd * ideal * width)) ** (2 / 3);
    const pipe = (Math.PI / 4) * (0.06 ** 2 * 8 + 0.05 ** 2 * 1);
    const full = pipe / (0.35 + 0.95);
    // The pipe stands full; above the bottom inlet it keeps 5 % of its area, from the duty's head down to the lip.
    const inRiser = 0.05 * full * (levels.riser - 1);
    const transit = FILTER * head(1, LIP) + POOL * head(0.9, STONE) + inRiser;
    const vaultWas = levels.pond - levels.vault;
    const rise = (transit - VAULT * vaultWas) / (POND + VAULT);
    expect(rise).toBeGreaterThan(0.005);
    expect(Math.abs(trial.rise - rise)).toBeLessThan(2e-5);
  });

  test('begins at the fill mark in the running balance, and is judged against the lowest point of the edge', () => {
    expect(trial.start).toBeCloseTo(-0.1, 9);
    expect(trial.below).toBeCloseTo(0.1 - trial.rise, 9);
    expect(trial.record.flow(0, trial.record.network.parts.flowNames.indexOf('main'))).toBeCloseTo(flows.main, 7);
  });

  test('comes back over the stone, what the pump still lifted off, to the last deciliter', () => {
    const ways = waysOf(site, trial);
    const { record } = trial;
    const gained = POND * trial.rise + VAULT * (levelAt(record, 'vault', trial.highest.t) - levels.vault);
    expect(Math.abs(ways.stones + ways.main - ways.pumped - gained)).toBeLessThan(1e-4);
    for (const none of [ways.main, ways.bottomFeed, ways.topOutlet, ways.stream, ways.seepage])
      expect(none).toBeCloseTo(0, 6);
  });

  test('without a check valve the filter and the pipe come back too, down to inlet and pond', () => {
    const failed = stopPump(kept(site), { check: { kind: 'none' } });
    // The filter ends at the bottom feed's inlet, 0.35 m, less what the fading at its mouth still holds (within D).
    const more = (failed.rise - trial.rise) * (POND + VAULT);
    const fromFilter = 1 - levelAt(failed.record, 'filter', failed.highest.t);
    const pipeHeld = (Math.PI / 4) * (0.06 ** 2 * 8 + 0.05 ** 2);
    expect(fromFilter).toBeGreaterThan(0.59);
    expect(fromFilter).toBeLessThan(0.651);
    expect(more).toBeGreaterThan(FILTER * fromFilter);
    expect(more).toBeLessThan(FILTER * fromFilter + pipeHeld);
    const ways = waysOf(site, failed);
    expect(Math.abs(ways.bottomFeed - FILTER * fromFilter)).toBeLessThan(0.02);
  });
});

describe('the end of a stop', () => {
  test('waits while stones seep and the pond still rises 0.1 mm an hour, a day at most', () => {
    const file = plainFile();
    file.watercourse[0].stones[0].seep = { k: 3e-4, foot: 0.35 };
    const { record } = stopPump(kept(siteOf(file)));
    const hours = record.time(record.length - 1) / 3600;
    const rises = Array.from(
      { length: hours },
      (_, h) => levelAt(record, 'pond', (h + 1) * 3600) - levelAt(record, 'pond', h * 3600),
    );
    expect(hours).toBeGreaterThan(3);
    expect(rises.at(-1)).toBeLessThan(1e-4);
    expect(Math.min(...rises.slice(0, -1))).toBeGreaterThanOrEqual(1e-4);
  });

  test('comes after a day where it still rises', () => {
    const file = plainFile();
    file.watercourse[0].stones[0].seep = { k: 3e-5, foot: 0.35 };
    const { record, highest } = stopPump(kept(siteOf(file)));
    expect(record.time(record.length - 1)).toBe(86400);
    expect(highest.t).toBeGreaterThan(86000);
  });

  test('seepage empties a pool as a linear reservoir: V = V₀ e^(−kt/A)', () => {
    const file = plainFile();
    file.watercourse[0].stones[0].seep = { k: 3e-4, foot: 0.35 };
    const { record } = stopPump(kept(siteOf(file)));
    const depth = (t: number): number => levelAt(record, 'pool', t) - 0.35;
    // From a quarter of an hour on nothing reaches the pool or passes its stone.
    expect(depth(3600) / depth(900)).toBeCloseTo(Math.exp((-3e-4 * 2700) / POOL), 4);
  });
});

describe('the ways of the worked site', () => {
  const site = terrace();
  const start = kept(site);
  const cases = [
    ['as it is', {}],
    ['valve failed', { check: { kind: 'none' } }],
    ['valve failed, top valve shut', { check: { kind: 'none' }, topValve: 0 }],
  ] as const;

  test.each(cases)('%s: what passed adds up with what every basin lost or gained', (_, troubles) => {
    const { record } = stopPump(start, troubles);
    const { basins, flowNames } = record.network.parts;
    const last = record.length - 1;
    for (const t of [20, 300, record.time(last)]) {
      const { forward, backward } = passedBy(record, t);
      const net = (name: string): number => forward[flowNames.indexOf(name)] - backward[flowNames.indexOf(name)];
      const volumes = new Float64Array(basins.length);
      volumesAt(record, t, volumes);
      const gained = (...names: string[]): number =>
        names.reduce((sum, name) => {
          const i = basins.findIndex((b) => b.name === name);
          return sum + volumes[i] - record.volume(0, i);
        }, 0);
      const falls = net('spillway stone') + net('side stone');
      const expected: [number, number][] = [
        [gained('riser'), net('main') - net('bottom feed') - net('top feed')],
        [gained('filter'), net('bottom feed') + net('top feed') - net('lip')],
        [gained('upper pool'), net('lip') - falls],
        [gained('run'), falls - net('run')],
        [gained('pond', 'vault'), net('run') - net('main')],
      ];
      // Two tenths of a liter of the 140 to 490 that come back: the flows stand at volumes good to 0.03 L a step.
      for (const [change, sum] of expected) expect(Math.abs(change - sum)).toBeLessThan(2e-4);
    }
    expect(closureAt(record, last)).toBeLessThan(1e-9);
  });

  test('with the valve failed the worse of top valve as set and shut is taken', () => {
    const { trial, troubles } = stopWithValveFailed(start);
    expect(troubles.topValve).toBe(0);
    expect(trial.below).toBeLessThan(stopPump(start, { check: { kind: 'none' } }).below);
  });

  test('rain in the hour after the stop falls on every open basin, the overflow blocked', () => {
    const { record, overflow } = stopPump(overflowBlocked(start), { rain: 0.025 });
    // Pond 14 m², filter 0.5, upper pool 2.5, run 3 × 0.6 m.
    expect(record.ledger(record.length - 1, 1)).toBeCloseTo(0.025 * (14 + 0.5 + 2.5 + 1.8), 6);
    expect(overflow).toBe(0);
  });
});

describe('the level that is kept', () => {
  const withFloat = (autofill: object, blockage = 0): Scenario => {
    const file = plainFile();
    file.supply = { autofill: { flow: 2e-4, ...autofill } };
    file.intake.blockage = blockage;
    return siteOf(file);
  };

  test('is the higher of fill mark and float', () => {
    const at = (set: number): number | undefined => {
      const s = withFloat({ set, low: set - 0.02 });
      return keptLevel(s, assemble(s));
    };
    expect(at(-0.15)).toBe(-0.1);
    expect(at(-0.07)).toBe(-0.07);
  });

  test('with the float in the vault is the pond level whose balance has the vault at its set', () => {
    const s = withFloat({ set: -0.09, low: -0.11, in: 'vault' }, 0.9);
    const level = keptLevel(s, assemble(s)) ?? Number.NaN;
    const there = balance({ ...s, pond: { ...s.pond, level } });
    expect(Math.abs(there.levels.vault + 0.09)).toBeLessThan(2e-6);
    expect(level).toBeGreaterThan(-0.089);
  });

  test('is the very edge where a blinded screen keeps the vault low for good', () => {
    const s = withFloat({ set: -0.05, low: -0.06, in: 'vault' }, 0.995);
    expect(keptLevel(s, assemble(s))).toBe(0);
  });

  test('there is none for an empty pond without a mark', () => {
    const s = plainSite();
    expect(keptSite({ ...s, pond: { ...s.pond, level: 'empty', fillMark: undefined } })).toBeUndefined();
  });
});
