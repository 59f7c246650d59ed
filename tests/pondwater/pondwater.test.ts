/** The waste in the circulating water, against the closed forms of one well mixed volume. */
import { describe, expect, test } from 'vitest';
import { balanceOrFailure } from '../../sim/balance.ts';
import { treatedFlow } from '../../sim/laws/removal.ts';
import { compareWater } from '../../sim/pondwater/compare.ts';
import { wasteCourse } from '../../sim/pondwater/course.ts';
import { pondWater } from '../../sim/pondwater/figures.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { storedAt } from '../../sim/results/ledger.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run, simulate } from '../../sim/simulate.ts';
import { type File, siteWith } from '../clogging/sites.ts';

const off = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

function waterOf(s: Scenario) {
  const found = balanceOrFailure(s);
  if (found instanceof RunFailure) throw found;
  return { water: pondWater(s, found), balance: found };
}

/** Concentrations of a run and what it went through. */
function courseOf(s: Scenario) {
  const { record } = run(s);
  return { ...wasteCourse(s, record), record };
}

const GRAM_A_DAY = 1e-3 / 86400;

describe('a running site without losses', () => {
  const waste = { concentration: '10 mg/L', span: '2 d' };

  test('is cleaned as C0 e^(−η Q t/V)', () => {
    const s = siteWith((file) => Object.assign(file, waste));
    const { water, balance } = waterOf(s);
    const rate = (water.removal * balance.answer.flows.media!) / water.volume;
    const { t, concentration } = courseOf(s);
    for (let k = 0; k < t.length; k++)
      expect(off(concentration[k]!, 0.01 * Math.exp(-rate * t[k]!))).toBeLessThan(1e-6);
    expect(rate * t[t.length - 1]!).toBeGreaterThan(5);
  });

  test('gathers a load as W/(η Q) (1 − e^(−η Q t/V))', () => {
    const s = siteWith((file) => Object.assign(file, { load: '20 g/d', span: '1 d' }));
    const { water } = waterOf(s);
    const { t, concentration } = courseOf(s);
    const rate = Math.LN2 / water.halfLife!;
    for (let k = 1; k < t.length; k++)
      expect(off(concentration[k]!, water.steady! * -Math.expm1(-rate * t[k]!))).toBeLessThan(1e-6);
    expect(off(simulate(s).answer.concentration, concentration[t.length - 1]!)).toBeLessThan(1e-12);
  });
});

describe('water that comes and goes', () => {
  const still = (more: File): Scenario =>
    siteWith((file) => {
      Object.assign(file, { start: 'standing', concentration: '10 mg/L' });
      file.pump.running = false;
      // Even what evaporates from the filter draws water up through the media.
      file.filter.media.removal = 0;
      Object.assign(file, more(file));
    });
  const ends = (s: Scenario) => {
    const { record, concentration, ledger } = courseOf(s);
    const last = record.length - 1;
    return {
      ratio: concentration[last]! / concentration[0]!,
      volumes: storedAt(record, last) / storedAt(record, 0),
      ledger,
    };
  };

  test('dilutes by hose and autofill: what is dissolved stays', () => {
    const hosed = ends(still(() => ({ span: '10 min', supply: { hose: { flow: '4 gpm', on: true } } })));
    expect(hosed.volumes).toBeGreaterThan(1.01);
    expect(off(hosed.ratio, 1 / hosed.volumes)).toBeLessThan(1e-9);
    expect(hosed.ledger.lost).toBe(0);
    const filled = ends(
      still((file: File) => ({
        span: '1 h',
        supply: { autofill: { flow: '4 gpm', set: file.pond.level + 0.02, low: file.pond.level } },
      })),
    );
    expect(filled.volumes).toBeGreaterThan(1.005);
    expect(off(filled.ratio, 1 / filled.volumes)).toBeLessThan(1e-9);
  });

  test('dilutes by rain', () => {
    const storm = { at: 0, do: 'storm', depth: '15 mm', lasting: '10 min', shape: 'even' };
    const rained = ends(still(() => ({ span: '15 min', actions: [storm] })));
    expect(rained.volumes).toBeGreaterThan(1.01);
    expect(off(rained.ratio, 1 / rained.volumes)).toBeLessThan(1e-9);
  });

  test('evaporates without its waste, and leaks with it', () => {
    const dry = ends(still(() => ({ span: '5 d', weather: { evaporation: '6 mm/d' } })));
    expect(dry.volumes).toBeLessThan(0.98);
    expect(off(dry.ratio, 1 / dry.volumes)).toBeLessThan(1e-9);
    const leaking = ends(
      still((file: File) => ({ span: '2 d', pond: { ...file.pond, leak: { elevation: -0.4, area: 1e-5 } } })),
    );
    expect(leaking.volumes).toBeLessThan(0.9);
    expect(Math.abs(leaking.ratio - 1)).toBeLessThan(1e-9);
  });

  test('is flushed over the rim as e^(−Q t/V) while the hose runs and nothing rises any more', () => {
    const s = still(() => ({ span: '2 d', supply: { hose: { flow: '30 gpm', on: true } } }));
    const { t, concentration, record } = courseOf(s);
    const from = record.rowAt(86400);
    const last = record.length - 1;
    const flow = (30 * 3.785411784e-3) / 60;
    expect(off(storedAt(record, from), storedAt(record, last))).toBeLessThan(1e-6);
    const expected = Math.exp((-flow * (t[last]! - t[from]!)) / storedAt(record, last));
    expect(off(concentration[last]! / concentration[from]!, expected)).toBeLessThan(1e-4);
  });

  test('keeps its mass to 1e-9 through storm, timetable, valve, splash and spill', () => {
    const s = siteWith((file) => {
      Object.assign(file, { span: '9 d', load: '20 g/d', concentration: '4 mg/L', weather: { evaporation: '6 mm/d' } });
      file.supply = { hose: { flow: '9 gpm', on: true } };
      file.watercourse.find((reach: File) => reach.stones).stones[0].splash = 0.002;
      file.actions = [
        { daily: ['08:00', '22:00'], do: 'pump' },
        { at: '2 d', do: 'storm', depth: '40 mm', lasting: '2 h', shape: 'scs2' },
        { at: '3 d', do: 'bottom valve', to: 0.4 },
        { at: '5 d', do: 'hose', to: 'off' },
      ];
    });
    const { ledger, concentration, record } = courseOf(s);
    const { start, load, end, removed, lost } = ledger;
    expect(removed).toBeGreaterThan(0);
    expect(lost).toBeGreaterThan(0);
    expect(off(end + removed + lost, start + load)).toBeLessThan(1e-9);
    expect(off(load, 9 * 20e-3)).toBeLessThan(1e-12);
    expect(off(concentration[record.length - 1]! * storedAt(record, record.length - 1), end)).toBeLessThan(1e-12);
    expect(concentration.every((c) => c >= 0 && Number.isFinite(c))).toBe(true);
  });
});

describe('removal', () => {
  test('is 1 − e^(−k V/Q) a pass, and more flow never cleans less, up to k V', () => {
    const out = new Float64Array(2);
    let before = 0;
    for (let q = 1e-6; q < 1; q *= 1.5) {
      treatedFlow(q, 2e-4, out);
      expect(off(out[0]!, q * (1 - Math.exp(-2e-4 / q)))).toBeLessThan(1e-10);
      expect(out[0]).toBeGreaterThan(before);
      const at = out[0]!;
      const slope = out[1]!;
      treatedFlow(q * (1 + 1e-6), 2e-4, out);
      expect(Math.abs((out[0]! - at) / (q * 1e-6) - slope)).toBeLessThan(2e-4);
      before = at;
    }
    expect(off(before, 2e-4)).toBeLessThan(1e-3);
    treatedFlow(-1e-3, 2e-4, out);
    expect([...out]).toEqual([0, 0]);
  });
});

describe('the figures of a balance', () => {
  const s = siteWith((file) => (file.load = '20 g/d'));
  const { water, balance } = waterOf(s);

  test('are turnover, treated turnover, half-life and its floor, and where the load settles', () => {
    const { answer, volumes } = balance;
    const volume = volumes.reduce((sum, v) => sum + v, 0);
    const { area, layers, removal: k } = s.filter!.media!;
    const bed = area * layers.reduce((sum, { thickness }) => sum + thickness, 0);
    const eta = 1 - Math.exp(-k * answer.contact!.emptyBed);
    expect(off(water.removal, eta)).toBeLessThan(1e-12);
    expect(off(water.turnover!, volume / answer.flows.main!)).toBeLessThan(1e-12);
    expect(off(water.treatedTurnover!, volume / (answer.flows.media! * eta))).toBeLessThan(1e-12);
    expect(off(water.halfLife!, (Math.LN2 * volume) / (answer.flows.media! * eta))).toBeLessThan(1e-12);
    expect(off(water.leastHalfLife!, (Math.LN2 * volume) / (k * bed))).toBeLessThan(1e-12);
    expect(water.leastHalfLife).toBeLessThan(water.halfLife!);
    expect(off(water.steady!, (20 * GRAM_A_DAY) / (answer.flows.media! * eta))).toBeLessThan(1e-9);
  });

  test('are never told without saying that this is no water-quality test', () => {
    expect(water.says).toContain('no water-quality test');
    const check = simulate(s).answer.checks.find(({ name }) => name === 'turnover')!;
    expect(check.says).toContain('no water-quality test');
  });

  test.each<[string, (file: File) => void, RegExp]>([
    ['no filter', (file) => delete file.filter, /No media treat it/],
    ['no media', (file) => delete file.filter.media, /No media treat it/],
    ['media that remove nothing', (file) => (file.filter.media.removal = 0), /remove nothing/],
    ['the bottom valve shut', (file) => (file.plumbing.bottomFeed.valve = 0), /nothing is treated/],
  ])('say in a sentence what follows from %s', (_, change, says) => {
    const bare = siteWith((file) => {
      file.load = '20 g/d';
      change(file);
    });
    const { water } = waterOf(bare);
    expect(water.halfLife).toBeNull();
    expect(water.says).toMatch(says);
    expect(water.says).not.toMatch(/NaN|Infinity|none mg/);
    expect(water.says).toContain('no way out of it');
  });
});

describe('two cases', () => {
  const caseOf = (name: string, change: (file: File) => void) => ({
    name,
    water: waterOf(siteWith(change)).water,
  });
  const open = caseOf('valve open', (file) => (file.load = '20 g/d'));
  const half = caseOf('valve half shut', (file) => {
    file.load = '20 g/d';
    file.plumbing.bottomFeed.valve = 0.4;
  });

  test('are compared by where the waste settles', () => {
    const { ratio, says } = compareWater(open, half);
    expect(off(ratio!, open.water.steady! / half.water.steady!)).toBeLessThan(1e-12);
    expect(ratio).toBeLessThan(1);
    expect(says).toMatch(
      /^‘valve open’ keeps the pond 1\.\d times as clean as ‘valve half shut’: the waste settles at/,
    );
    expect(compareWater(half, open).says).toBe(says);
  });

  test('by the half-life where there is no load, and in words where one removes nothing', () => {
    const [a, b] = [caseOf('a', () => {}), caseOf('b', (file) => (file.plumbing.bottomFeed.valve = 0.4))];
    expect(compareWater(a, b).says).toMatch(/half of the waste is gone in .* instead of/);
    const idle = caseOf('idle', (file) => (file.plumbing.bottomFeed.valve = 0));
    expect(compareWater(idle, b)).toMatchObject({ ratio: null });
    expect(compareWater(idle, b).says).toContain('‘b’ takes waste out of the water, ‘idle’ takes none');
    expect(compareWater(a, { ...a, name: 'same' }).says).toContain('equally clean');
  });
});
