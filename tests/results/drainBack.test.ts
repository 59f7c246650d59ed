import { describe, expect, test } from 'vitest';
import { levelOf } from '../../sim/laws/storage.ts';
import type { Check } from '../../sim/results/answer.ts';
import { drainBackChecks } from '../../sim/results/checks/drainBack.ts';
import { worstStop } from '../../sim/results/checks/runStops.ts';
import { volumesAt } from '../../sim/results/inside.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { keptSite, type PondRise, type StopTroubles, stopPump } from '../../sim/trials/stop.ts';
import { plainFile, plainSite, siteOf, terrace } from '../trials/plainSite.ts';

const FAILED: StopTroubles = { check: { kind: 'none' } };

const stopOf = (s: Scenario, troubles: StopTroubles = {}): PondRise => {
  const kept = keptSite(s);
  if (kept === undefined) throw new Error('no level to keep');
  return stopPump(kept, troubles);
};

// biome-ignore lint/suspicious/noExplicitAny: tests change it in every way
const changed = (change: (file: any) => void): Scenario => {
  const file = plainFile();
  change(file);
  return siteOf(file);
};

const checked = (s: Scenario, name = 'drain-back', record = undefined as PondRise['record'] | undefined): Check => {
  const check = drainBackChecks(s, record).find((c) => c.name === name);
  if (check === undefined) throw new Error(`no ${name}`);
  return check;
};

const markAt = (z: number): Scenario => changed((file) => (file.pond.fillMark = z));

describe('a stop at the worked site, against an independent implementation of the same physics', () => {
  const site = terrace();
  const { record } = run(site);
  const stop = worstStop(site, record);

  test('lifts the pond 9.7 mm, 41 % of it in 10 s, 92 % in a minute, highest after 10 min', () => {
    if (stop === undefined) throw new Error('the pump of the worked site stops at 24 h');
    const { pond } = record.network.parts;
    const at = (t: number): number => levelAt(record, pond, 86400 + t) - stop.start;
    expect(stop.at).toBe(86400);
    expect(stop.rise * 1000).toBeCloseTo(9.7, 1);
    expect(Math.abs(at(10) / stop.rise - 0.41)).toBeLessThan(0.005);
    expect(Math.abs(at(60) / stop.rise - 0.92)).toBeLessThan(0.005);
    // So flat an extreme is said to be reached where the level is within 1e-6 m of it, some minutes before.
    expect(stop.rise - at(600)).toBeLessThan(1e-6);
    expect(stop.highest.t - stop.at).toBeGreaterThan(300);
    expect(stop.highest.t - stop.at).toBeLessThan(600);
  });

  test('lifts it 23 mm more with the check valve failed, 2 mm more again with the top valve shut', () => {
    const sound = stopOf(site);
    const failed = stopOf(site, FAILED);
    const shut = stopOf(site, { ...FAILED, topValve: 0 });
    expect(sound.rise * 1000).toBeCloseTo(9.7, 1);
    expect(Math.round((failed.rise - sound.rise) * 1000)).toBe(23);
    expect(Math.round((shut.rise - failed.rise) * 1000)).toBe(2);
  });

  test('reads so: 70 mm to spare, or 2 3/4 in', () => {
    const check = checked(site);
    expect(check).toMatchObject({ verdict: 'pass', unit: 'm', where: 'trial', origin: 'our default', limit: 0.025 });
    expect(check.value).toBeCloseTo(0.08 - 0.0097, 4);
    expect(check.margin).toBeCloseTo((check.value ?? 0) - 0.025, 12);
    expect(check.says).toMatch(/rises 3\/8 in, nine tenths of it within \d+ s, highest after \d+ min/);
    expect(check.says).toContain('stays 2 3/4 in below its edge (1 in wanted at the least, 2 in better: our default)');
  });
});

function levelAt(record: PondRise['record'], basin: number, t: number): number {
  const { basins } = record.network.parts;
  const volumes = new Float64Array(basins.length);
  volumesAt(record, t, volumes);
  return levelOf(basins[basin].storage, volumes[basin]);
}

describe('the verdict of drain-back', () => {
  const rise = stopOf(plainSite()).rise;

  test('fails under 25 mm, is tight under 50, passes from there', () => {
    // The rise hardly depends on the mark: the room is the mark's depth below the edge less it.
    expect(checked(markAt(-rise - 0.02)).verdict).toBe('fail');
    expect(checked(markAt(-rise - 0.04)).verdict).toBe('tight');
    expect(checked(markAt(-rise - 0.06)).verdict).toBe('pass');
  });

  test('is tight where only its band takes it below the mark that fails', () => {
    const s = markAt(-rise - 0.026);
    const { band } = checked(s);
    expect(band).toBeGreaterThan(0.001);
    const narrow = changed((file) => {
      file.pond.fillMark = -rise - 0.026;
      file.limits = { 'drain-back': [0.025, 0.025] };
    });
    expect(checked(narrow)).toMatchObject({ verdict: 'tight', origin: 'file', limit: 0.025 });
  });

  test('goes by the limits of the file', () => {
    const s = changed((file) => (file.limits = { 'drain-back': [0.005, 0.01] }));
    expect(checked(s)).toMatchObject({ verdict: 'pass', limit: 0.005, origin: 'file' });
    expect(checked(s).says).toContain('(5.0 mm wanted at the least, 10 mm better: set in the file)');
  });

  test('counts what runs over, from a mark at the very edge', () => {
    const check = checked(markAt(-0.002));
    expect(check.verdict).toBe('fail');
    expect(check.value).toBeLessThan(0);
    expect(check.says).toMatch(
      /runs over: it stands up to [\d.]+ mm above the lowest point of its edge, and [\d.,]+ L/,
    );
  });

  test('names public pools and embankments by their printed figures', () => {
    // ISPSC 2018 §315.4.1: 1 US gal per ft², printed 40.7 L/m²; NRCS 378: 1.0 ft for embankments.
    const pools = 0.003785411784 / 0.3048 ** 2;
    const { says } = checked(plainSite());
    expect(says).toContain(`public pools keep ${Math.round(pools * 1000)} mm`);
    expect(says).toContain(`the ${(0.3048).toFixed(1)} m of NRCS 378 is for embankments`);
    expect(checked(terrace()).says).toContain(`public pools keep ${eighths(pools / 0.0254)} in`);
  });
});

/** Inches to the nearest eighth, where the fraction is in eighths. */
function eighths(inches: number): string {
  const n = Math.round(inches * 8);
  return `${Math.floor(n / 8)} ${n % 8}/8`;
}

describe('the mends of drain-back', () => {
  const site = markAt(-0.02);
  const check = checked(site);
  const figure = (pattern: RegExp): number => Number(pattern.exec(check.mend)?.[1] ?? Number.NaN) / 1000;

  test('lowering the mark does as it says, and a millimeter less does not', () => {
    const by = figure(/[Ll]ower the mark (\d+) mm/);
    expect(checked(markAt(-0.02 - by)).verdict).toBe('pass');
    expect(checked(markAt(-0.02 - by + 0.001)).verdict).not.toBe('pass');
  });

  test('so does raising the edge', () => {
    const by = figure(/raise the edge (\d+) mm/);
    const raised = (z: number): Scenario =>
      changed((file) => {
        file.pond.fillMark = -0.02;
        file.pond.rim.crest = [
          [0, z],
          [1, z],
        ];
      });
    expect(checked(raised(by)).verdict).toBe('pass');
    expect(checked(raised(by - 0.001)).verdict).not.toBe('pass');
  });

  test('an overflow pipe is named only where its mouth fits between mark and edge', () => {
    expect(check.mend).not.toContain('overflow');
    const failed = checked(noValve(-0.09));
    const wide = Number(/overflow pipe (\d+) mm wide/.exec(failed.mend)?.[1]) / 1000;
    const above = Number(/mouth (\d+) mm above/.exec(failed.mend)?.[1]) / 1000;
    const piped = noValve(-0.09, { elevation: -0.09 + above, diameter: wide });
    expect(checked(piped).verdict).toBe('pass');
  });

  test('a check valve is named where there is none and it does', () => {
    const failed = checked(noValve(-0.09));
    expect(failed.verdict).toBe('fail');
    expect(failed.mend).toContain('put in a check valve that holds');
    expect(checked(markAt(-0.09)).verdict).toBe('pass');
    expect(check.mend).not.toContain('check valve');
  });

  test('none are named where it passes', () => {
    expect(checked(plainSite()).mend).toBe('');
  });
});

function noValve(mark: number, overflow?: { elevation: number; diameter: number }): Scenario {
  return changed((file) => {
    file.pond.fillMark = mark;
    file.pond.overflow = overflow;
    file.plumbing.main.checkValve = false;
  });
}

describe('a float', () => {
  test('that keeps the pond above its mark is judged and is what comes down', () => {
    const s = changed((file) => {
      file.supply = { autofill: { flow: '10 L/min', set: -0.04, low: -0.06 } };
    });
    const check = checked(s);
    expect(check.says).toContain('The float keeps the pond 60 mm above its mark.');
    expect(check.mend).toMatch(/^Lower the float \d+ mm/);
  });
});

describe('the run’s own stops', () => {
  const daily = changed((file) => {
    file.pond.level = -0.03;
    file.span = '6 h';
    file.actions = [
      { at: '2 h', do: 'power', to: 'off', for: '1 h' },
      { at: '5 h', do: 'pump', to: 'off' },
    ];
  });

  test('stand where the pond came nearer to its edge than in the trial', () => {
    const { record } = run(daily);
    const check = checked(daily, 'drain-back', record);
    const trial = checked(daily);
    expect(check.where).toBe('run');
    expect(check.value).toBeLessThan((trial.value ?? 0) - 0.06);
    expect(check.t).toBeGreaterThan(7200);
    expect(check.says).toContain('In the run, the pump stopped at 02:00, the pond rises');
    expect(check.verdict).toBe('fail');
    const by = Number(/Raise the edge (\d+) mm/.exec(check.mend)?.[1]) / 1000;
    const raised = {
      ...daily,
      pond: {
        ...daily.pond,
        rim: {
          ...daily.pond.rim,
          crest: [
            [0, by],
            [1, by],
          ] as const,
        },
      },
    };
    expect(checked(raised, 'drain-back', run(raised).record)).toMatchObject({ verdict: 'pass', where: 'run' });
  });

  test('do not where the trial is the worse', () => {
    const s = changed((file) => {
      file.pond.level = -0.15;
      file.actions = [{ at: '10 min', do: 'pump', to: 'off' }];
    });
    expect(checked(s, 'drain-back', run(s).record).where).toBe('trial');
  });

  test('end with the pump’s next start: water of the hose after it is no drain-back', () => {
    const s = changed((file) => {
      file.pond.level = -0.15;
      file.span = '8 h';
      file.supply = { hose: { flow: '20 L/min' } };
      file.actions = [
        { at: '1 h', do: 'pump', to: 'off' },
        { at: '2 h', do: 'pump', to: 'on' },
        { at: '3 h', do: 'hose', to: 'on' },
      ];
    });
    const { record } = run(s);
    const stop = worstStop(s, record);
    expect(stop?.at).toBe(3600);
    expect(stop?.highest.t).toBeLessThan(7200);
  });

  test('are none where the pump never stops', () => {
    const s = plainSite();
    expect(worstStop(s, run(s).record)).toBeUndefined();
  });
});

describe('a site without a running balance, or without a level to keep', () => {
  test('without a level nothing is asked', () => {
    const s = plainSite();
    expect(drainBackChecks({ ...s, pond: { ...s.pond, level: 'empty', fillMark: undefined } }, undefined)).toEqual([]);
  });
});
