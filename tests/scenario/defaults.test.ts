import { describe, expect, test } from 'vitest';
import { pondStart } from '../../sim/network/start.ts';
import { readSite } from '../../sim/scenario/read.ts';
import type { Pool, Scenario, Stream } from '../../sim/scenario/scenario.ts';
import { fullSite } from './full-site.ts';

const scenarioOf = (site: unknown): Scenario => {
  const reading = readSite(site);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
};

/** No more than the keys that every file must have. */
// biome-ignore lint/suspicious/noExplicitAny: tests change it freely
const barePond = (): any => ({
  span: '1 d',
  pond: {
    profile: [
      [-1, 4],
      [0.1, 6],
    ],
    level: -0.1,
    rim: {
      crest: [
        [0, 0],
        [3, 0],
      ],
    },
  },
  intake: { width: 0.5, elevation: -0.3 },
  vault: {
    profile: [
      [-1, 0.4],
      [0, 0.4],
    ],
  },
  pump: { curve: { flow: '4000 gph', head: '15 ft' }, suction: -0.9, minimum: -0.7 },
  plumbing: { main: { size: '2 in', length: 5 }, bottomFeed: { diameter: 0.05, length: 1, inlet: 0.2 } },
});

const assumed = (scenario: Scenario) => Object.fromEntries(scenario.assumed.map((each) => [each.place, each]));

describe('defaults', () => {
  test('of the least file there is', () => {
    const site = scenarioOf(barePond());
    expect(site).toMatchObject({
      title: 'Untitled site',
      display: 'metric',
      starts: '2031-01-01T00:00',
      water: { temperature: 15 },
      start: 'running',
      pond: { level: -0.1, fillMark: -0.1, plantCover: 0, displaced: [], rim: { cd: 1 }, runoff: { area: 0 } },
      intake: { blockage: 0 },
      pump: { running: true },
      plumbing: {
        main: { roughness: 1e-5, k: 0, checkValve: { kind: 'sound' } },
        bottomFeed: { valve: 1, law: 'ball' },
        tee: 0.2,
      },
      filter: undefined,
      watercourse: [],
      weather: { evaporation: 0, rain: undefined },
      hoses: [],
      limits: {},
      actions: [],
    });
    expect(site.plumbing.main.diameter).toBeCloseTo(0.0525, 4);
  });

  test('that an answer rests on are noted with their bands', () => {
    const notes = assumed(scenarioOf(barePond()));
    expect(Object.keys(notes).sort()).toEqual([
      'plumbing.bottomFeed.law',
      'plumbing.bottomFeed.roughness',
      'plumbing.bottomFeed.valve',
      'plumbing.main.checkValve',
      'plumbing.main.roughness',
      'plumbing.tee',
      'pond.fillMark',
      'pond.rim.cd',
      'pump.curve',
      'pump.standingLoss',
      'water.temperature',
    ]);
    expect(notes['pump.curve']).toEqual({ place: 'pump.curve', value: 1, band: [0.88, 1.12], from: 'default' });
    expect(notes['plumbing.main.roughness']?.band).toEqual([1e-5, 1e-4]);
  });

  test('that are not taken are not noted', () => {
    const site = fullSite();
    site.plumbing.bottomFeed.law = 'cock';
    for (const pipe of ['bottomFeed', 'topFeed']) site.plumbing[pipe].roughness = 1e-5;
    expect(scenarioOf(site).assumed).toEqual([]);
  });

  test('of stones, lips, streams and media have their figures and bands', () => {
    const site = fullSite();
    delete site.watercourse[0].stones[0].cd;
    delete site.watercourse[1].manning;
    delete site.filter.lip.cd;
    delete site.filter.media.gap;
    delete site.filter.media.submergedWeight;
    site.plumbing.main.checkValve = 'unknown';
    const scenario = scenarioOf(site);
    const notes = assumed(scenario);
    expect(notes['watercourse[0].stones[0].cd']).toMatchObject({ value: 0.9, band: [0.82, 0.96] });
    expect(notes['watercourse[1].manning']?.value).toBe(0.12);
    expect(notes['watercourse[1].manning']?.band?.[0]).toBeCloseTo(0.08, 12);
    expect(notes['watercourse[1].manning']?.band?.[1]).toBeCloseTo(0.18, 12);
    expect(notes['filter.lip.cd']).toMatchObject({ value: 1.08, band: undefined });
    expect(notes['filter.media.gap']).toMatchObject({ value: 0.005, band: [0, 0.02] });
    expect(notes['filter.media.submergedWeight']).toMatchObject({ value: 60, band: [30, 120] });
    expect(notes['plumbing.main.checkValve']).toMatchObject({ value: 'unknown' });
    expect(scenario.plumbing.main.checkValve).toEqual({ kind: 'unknown' });
  });
});

describe('the start', () => {
  test('is standing where the pump is off or the pond is empty', () => {
    const off = barePond();
    off.pump.running = false;
    expect(scenarioOf(off).start).toBe('standing');
    const empty = barePond();
    Object.assign(empty.pond, { level: 'empty', fillMark: -0.1 });
    expect(scenarioOf(empty)).toMatchObject({ start: 'standing', pond: { level: 'empty', fillMark: -0.1 } });
  });

  test('has the pond at its mark where no level is given', () => {
    const site = barePond();
    delete site.pond.level;
    site.pond.fillMark = '-4 in';
    expect(scenarioOf(site).pond.fillMark).toBe(-0.1016);
    expect(pondStart(scenarioOf(site))).toBe(-0.1016);
  });
});

describe('the feeds', () => {
  const withTop = (to?: string) => {
    const site = barePond();
    site.plumbing.topFeed = { diameter: 0.05, length: 1, outlet: 0.9, ...(to !== undefined && { to }) };
    return site;
  };

  test('end in the pond where nothing stands above it', () => {
    expect(scenarioOf(withTop()).plumbing.topFeed?.to).toBe('pond');
  });

  test('end in the first part of the watercourse where there is no filter', () => {
    const site = withTop('filter');
    site.watercourse = [{ name: 'run', kind: 'stream', length: 3, width: 0.6, slope: 0.03, foot: 0.05 }];
    expect(scenarioOf(site).plumbing.topFeed?.to).toBe('run');
  });

  test('end in the filter where there is one, or where the file says', () => {
    const site = fullSite();
    delete site.plumbing.topFeed.to;
    expect(scenarioOf(site).plumbing.topFeed?.to).toBe('filter');
    site.plumbing.topFeed.to = 'upper pool';
    expect(scenarioOf(site).plumbing.topFeed?.to).toBe('upper pool');
  });
});

describe('what is derived', () => {
  test('are the media’s solids, where the file says nothing of the filter’s room', () => {
    const { filter } = scenarioOf(fullSite());
    // (1 − porosity) · 0.42 m² of media over 0.5 m² of filter.
    expect(filter?.displaced.map(({ fraction }) => fraction)).toEqual([
      expect.closeTo(0.08 * 0.84, 12),
      expect.closeTo(0.2 * 0.84, 12),
    ]);
    expect(filter?.displaced[1]?.from).toBeCloseTo(0.55, 12);
    const told = fullSite();
    told.filter.displaced = [];
    expect(scenarioOf(told).filter?.displaced).toEqual([]);
  });

  test('is a month’s rain over that month’s own length, February’s by the year of the start', () => {
    const site = fullSite();
    expect(scenarioOf(site).weather.rain?.[1]).toBeCloseTo(0.05 / (28 * 86400), 18);
    site.starts = '2032-06-01T06:00';
    expect(scenarioOf(site).weather.rain?.[1]).toBeCloseTo(0.05 / (29 * 86400), 18);
    expect(scenarioOf(site).weather.rain?.[0]).toBeCloseTo(0.05 / (31 * 86400), 18);
  });

  test('is a profile from a shape, its gravel before the rock that the file adds', () => {
    const site = barePond();
    delete site.pond.profile;
    site.pond.shape = { plan: 'freeform', length: 4, width: 3, depth: 1, gravel: 0.08 };
    site.pond.displaced = [{ from: -0.5, to: 0, fraction: 0.1 }];
    const scenario = scenarioOf(site);
    expect(scenario.pond.boxVolume).toBeCloseTo(12, 12);
    expect(scenario.pond.profile[0]).toEqual([-1, expect.closeTo(0.82 * 12, 12)]);
    expect(scenario.pond.displaced.map(({ fraction }) => fraction)).toEqual([0.6, 0.1]);
    expect(assumed(scenario)['pond.shape.plan']).toMatchObject({ value: 0.82, band: [0.8, 0.85] });
  });
});

describe('every key', () => {
  const scenario = scenarioOf(fullSite());
  const [pool, stream] = scenario.watercourse as [Pool, Stream];

  test('of levels, leaks and pipes comes out in SI', () => {
    expect(scenario.pond.profile[0]?.[0]).toBeCloseTo(-0.9144, 12);
    expect(scenario.pond.leak).toEqual({ elevation: -0.4, area: 1e-5 });
    expect(scenario.vault.level).toBe(-0.1);
    expect(scenario.water.temperature).toBeCloseTo(15, 12);
    expect(scenario.plumbing.main).toMatchObject({ length: 9.144, fittings: { elbow90: 3 } });
    expect(scenario.plumbing.topFeed).toMatchObject({ law: 'cock', valve: 0.5, diameter: expect.closeTo(0.057, 12) });
    expect(scenario.filter?.media?.submergedWeight).toBeCloseTo(58.8399, 6);
  });

  test('of stones and streams comes out, silence meaning nothing', () => {
    expect(pool.stones[0]).toMatchObject({
      main: true,
      seep: { k: 3e-4, foot: 0.35 },
      splash: 0.001,
      along: undefined,
    });
    expect(pool.stones[1]).toMatchObject({
      main: false,
      seep: { k: 0, foot: 0.3 },
      along: 0.3048,
      nose: 0.0127,
      blockage: 0,
    });
    expect(stream).toMatchObject({ slope: 0.03, foot: 0.05, edge: { height: 0.08, length: 0.5, cd: 1 } });
  });

  test('of supply and limits comes out', () => {
    expect(scenario.hoses).toMatchObject([
      { name: 'north', on: false, meter: expect.closeTo(3.785411784, 12) },
      { name: 'south', flow: expect.closeTo(1 / 3000, 15) },
    ]);
    expect(scenario.autofill).toMatchObject({ set: -0.08, low: -0.1, in: 'pond' });
    expect(scenario.limits).toEqual({
      'drain-back': [0.02, 0.04],
      channeling: 0.15,
      headroom: [0.01, 0.03],
      velocity: 2.4384,
    });
  });

  test('of the actions comes out with its place', () => {
    expect(scenario.actions).toHaveLength(14);
    expect(scenario.actions[2]).toEqual({
      timing: { when: { basin: 'pond', crossing: 'rises', level: -0.08 } },
      deed: { do: 'hose', to: 'off', name: undefined },
      place: 'actions[2]',
    });
    expect(scenario.actions[3]).toMatchObject({ timing: { at: 18000 }, deed: { do: 'power', to: 'off', for: 1200 } });
    expect(scenario.actions[6]).toMatchObject({ deed: { do: 'storm', depth: 0.025, lasting: 3600, shape: 'scs2' } });
    expect(scenario.actions[13]).toEqual({ daily: [28800, 79200], deed: { do: 'pump' }, place: 'actions[13]' });
  });
});
