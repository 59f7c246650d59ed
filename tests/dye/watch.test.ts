/** Dye that follows a run: its mass, its agreement with the figures of held flows, its way when the water turns. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DyeWatch, DyeWatching } from '../../sim/dye/answer.ts';
import { dyeFigures } from '../../sim/dye/figures.ts';
import { flowsOf } from '../../sim/dye/filterState.ts';
import { DyeOnItsWay } from '../../sim/dye/follow.ts';
import { makePassage, passedBy } from '../../sim/dye/passage.ts';
import { watchDye } from '../../sim/dye/watch.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { fedSite, read } from './sites.ts';

const runs = Number(process.env['SITES'] ?? 60);
const GRAM = 1e-3;

function courtyard(change: (site: ReturnType<typeof JSON.parse>) => void = () => {}): Scenario {
  const path = fileURLToPath(new URL('../../scenarios/courtyard.json', import.meta.url));
  const site = { ...JSON.parse(readFileSync(path, 'utf8')), span: '2 h', actions: [] };
  change(site);
  return read(site);
}

function poured(answer: DyeWatching): DyeWatch {
  if (!answer.poured) throw new Error(answer.says);
  return answer;
}

const massOf = ({ places }: DyeWatch, name: string): Float64Array =>
  places.find((place) => place.name === name)?.mass ?? new Float64Array(0);

/** The record of a site; undefined where it has no run. */
function recordOf(s: Scenario): RunRecord | undefined {
  try {
    return run(s).record;
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}

describe('any site that dye is poured into', () => {
  test('keeps its mass to 1e-9 at every moment, and holds nowhere less than none', () => {
    fc.assert(
      fc.property(fedSite, fc.double({ min: 0, max: 0.9, noNaN: true }), (s, when) => {
        const record = recordOf(s);
        if (!record) return;
        const watch = poured(watchDye(s, record, when * record.time(record.length - 1), GRAM));
        expect(watch.closure).toBeLessThan(1e-9);
        for (let k = 0; k < watch.t.length; k++) {
          const sum = watch.places.reduce((all, { mass }) => all + mass[k], 0);
          expect(Math.abs(sum / GRAM - 1)).toBeLessThan(1e-9);
        }
        for (const { mass, volume } of watch.places) {
          expect(Math.min(...mass)).toBeGreaterThanOrEqual(0);
          expect(Math.min(...volume)).toBeGreaterThanOrEqual(0);
        }
        const gap = massOf(watch, 'gap');
        for (let k = 0; k < gap.length; k += 40) {
          const cells = watch.gap.mass.subarray(k * watch.gap.cells, (k + 1) * watch.gap.cells);
          expect(Math.abs(cells.reduce((a, b) => a + b, 0) - gap[k])).toBeLessThan(1e-15);
        }
      }),
      { numRuns: runs, seed: 20310601 },
    );
  });

  test('water of one concentration keeps it to 4 % where nothing thins it or dries it up, even while a site starts or stops; to 1 % on nineteen sites of twenty', () => {
    const worst: number[] = [];
    fc.assert(
      fc.property(fedSite, (site) => {
        let off = 0;
        const dry = { ...site.weather, evaporation: 0 };
        const still = site.actions.filter(({ deed }) => deed.do === 'pump' || deed.do === 'bottom valve');
        const s = { ...site, weather: dry, autofill: undefined, actions: still };
        const record = recordOf(s);
        if (!record || !s.filter?.media) return;
        const dye = new DyeOnItsWay(record, s.filter.media, 0, 0);
        const volume = new Float64Array(dye.places.size);
        dye.volumesOf(dye.watersAt(0), dye.state, volume);
        const { plenum, tanks, other, beside, basins } = dye.places;
        const single = [plenum, ...tanks, beside, ...basins];
        for (const place of single) dye.mass[place] = volume[place];
        const { volume: inGap } = dye.plug.take(Number.POSITIVE_INFINITY, 'low');
        dye.plug.put(inGap, inGap, 'low');
        const rows = Array.from({ length: record.length }, (_, row) => record.time(row));
        const even = Array.from({ length: 60 }, (_, k) => 60 * (k + 1));
        for (const t of [...rows, ...even].filter((each) => each <= 3600).sort((a, b) => a - b)) {
          dye.to(t);
          if (t % 60 !== 0) continue;
          dye.volumesOf(dye.watersAt(t), dye.state, volume);
          for (const place of single) {
            if (place === other || volume[place] < 2e-4) continue;
            off = Math.max(off, Math.abs(dye.mass[place] / volume[place] - 1));
          }
        }
        expect(off).toBeLessThan(0.04);
        worst.push(off);
      }),
      { numRuns: runs, seed: 20310602 },
    );
    worst.sort((a, b) => a - b);
    expect(worst[Math.floor(0.95 * worst.length)]).toBeLessThan(0.01);
  });
});

describe('dye in a filter whose flows do not change', () => {
  const s = courtyard();
  const { record } = run(s);
  const watch = poured(watchDye(s, record, 0, GRAM));
  const filter = new DyeOnItsWay(
    record,
    s.filter?.media as NonNullable<NonNullable<Scenario['filter']>['media']>,
    0,
    0,
  );
  const waters = filter.watersAt(0);
  const figures = dyeFigures(waters, flowsOf(record.network), 8);

  test('passes the lip as the figures say, either way, before any of it comes round again', () => {
    const { plenum, media, gap, mixed } = figures.times;
    const through = makePassage({ mixed: [plenum, mixed], series: { tanks: 8, stay: media ?? 0 }, delay: 0 });
    const round = makePassage({ mixed: [plenum, mixed], series: undefined, delay: gap ?? 0 });
    watch.t.forEach((t, k) => {
      if (t > 200) return;
      const [a, b] = [watch.passed.through[k] / GRAM, watch.passed.round[k] / GRAM];
      expect(Math.abs(a - (1 - figures.channeled) * passedBy(through, t))).toBeLessThan(2e-5);
      expect(Math.abs(b - figures.channeled * passedBy(round, t))).toBeLessThan(2e-5);
    });
  });

  test('comes back by the pond: the feeds bring more than was poured, and every place nears one concentration', () => {
    const last = watch.t.length - 1;
    expect(watch.returned.bottom[last] + watch.returned.top[last]).toBeGreaterThan(GRAM);
    const day = poured(watchDye(s, record, 0, GRAM, { until: 7200 }));
    const even = day.places
      .filter(({ volume }) => volume[360] > 0.001)
      .filter(({ kind }) => kind !== 'beside')
      .map(({ mass, volume }) => mass[360] / volume[360]);
    expect(Math.max(...even) / Math.min(...even)).toBeLessThan(1.05);
  });

  test('is the same seen at three times as many moments', () => {
    const fine = poured(watchDye(s, record, 0, GRAM, { rows: 1081 }));
    const difference = watch.places.map(({ mass }, p) =>
      Math.max(...mass.map((each, k) => Math.abs(each - fine.places[p].mass[3 * k]) / GRAM)),
    );
    expect(Math.max(...difference)).toBeLessThan(1e-3);
  });
});

describe('dye when the water turns or stands', () => {
  test('runs back down through the bottom feed where no check valve holds it, and none is lost', () => {
    const s = courtyard((site) => {
      site.plumbing.main.checkValve = false;
      site.actions = [{ at: '2 min', do: 'pump', to: 'off' }];
    });
    const watch = poured(watchDye(s, run(s).record, 0, GRAM, { until: 1800 }));
    const at = (name: string, t: number): number => massOf(watch, name)[Math.round(t / 5)];
    expect(at('plenum', 120)).toBeGreaterThan(0.2 * GRAM);
    expect(at('plenum', 1800)).toBeLessThan(0.75 * at('plenum', 120));
    expect(at('vault', 1800) + at('pond', 1800)).toBeGreaterThan(10 * (at('vault', 120) + at('pond', 120)));
    expect(watch.closure).toBeLessThan(1e-9);
  });

  test('poured while the pump stands it waits, says so, and goes up when the pump starts', () => {
    const s = courtyard((site) => {
      site.start = 'standing';
      site.pump.running = false;
      site.actions = [{ at: '20 min', do: 'pump', to: 'on' }];
    });
    const watch = poured(watchDye(s, run(s).record, 60, GRAM));
    expect(watch.says).toContain('pump stands');
    const plenum = massOf(watch, 'plenum');
    // Evaporation draws a breath of water up into the media.
    expect(plenum[100] / GRAM).toBeCloseTo(1, 5);
    expect(plenum[360]).toBeLessThan(0.5 * GRAM);
    expect(watch.passed.through[360]).toBeGreaterThan(0.3 * GRAM);
  });

  test('follows a valve that is moved meanwhile', () => {
    const shut = courtyard((site) => {
      site.actions = [{ at: '1 min', do: 'bottom valve', to: 0 }];
    });
    const watch = poured(watchDye(shut, run(shut).record, 0, GRAM, { until: 1200 }));
    const plenum = massOf(watch, 'plenum');
    const after = Math.round(60 / (1200 / 360)) + 1;
    expect(Math.abs(plenum[360] / plenum[after] - 1)).toBeLessThan(1e-9);
  });
});

describe('dye that cannot be poured', () => {
  const says = (s: Scenario, at: number): string => {
    const answer = watchDye(s, run(s).record, at, GRAM);
    expect(answer.poured).toBe(false);
    return answer.says;
  };

  test('says why', () => {
    expect(
      says(
        courtyard((s) => void delete s.filter.media),
        0,
      ),
    ).toContain('no media');
    expect(
      says(
        courtyard((s) => void delete s.plumbing.bottomFeed),
        0,
      ),
    ).toContain('no bottom feed');
    expect(says(courtyard(), 7201)).toContain('outside the run');
    expect(says(courtyard(), Number.NaN)).toContain('outside the run');
  });
});
