import { describe, expect, test } from 'vitest';
import { readSite } from '../../sim/scenario/read.ts';
import { fullSite } from './full-site.ts';

type Site = ReturnType<typeof fullSite>;
type Mistake = readonly [what: string, make: (site: Site) => unknown, ...places: string[]];

const pool = (site: Site) => site.watercourse[0];
const raise = (line: number[][], by: number) => line.map(([s, z]) => [s, (z ?? 0) + by]);
const without = (part: Record<string, unknown>, key: string) => delete part[key];

/** Each breaks one thing in a valid file: the problems must stand at these places and at no others. */
const MISTAKES: readonly Mistake[] = [
  // types, units and ranges
  ['a volume for a length', (s) => (s.intake.width = '3 gal'), 'intake.width'],
  ['a length for a flow', (s) => (s.supply.autofill.flow = '3 m'), 'supply.autofill.flow'],
  ['a text without a unit', (s) => (s.span = '48'), 'span'],
  ['a span of nothing', (s) => (s.span = 0), 'span'],
  ['a decimal comma', (s) => (s.plumbing.tee = '0,35 m'), 'plumbing.tee'],
  ['a list for a number', (s) => (s.pump.suction = [-0.95]), 'pump.suction'],
  ['null for a number', (s) => (s.pump.minimum = null), 'pump.minimum'],
  ['a text for a flag', (s) => (s.pump.running = 'yes'), 'pump.running'],
  ['an unknown display', (s) => (s.display = 'imperial'), 'display'],
  ['a title of a page', (s) => (s.title = 'T'.repeat(121)), 'title'],
  ['a stone named by a poem', (s) => (pool(s).stones[1].name = 'n'.repeat(61)), 'watercourse[0].stones[1].name'],
  ['a number as a title', (s) => (s.title = 7), 'title'],
  ['a day that is none', (s) => (s.starts = '2031-02-29T06:00'), 'starts'],
  ['a clock time with seconds', (s) => (s.starts = '2031-02-28 06:00'), 'starts'],
  ['boiling water', (s) => (s.water.temperature = 100), 'water.temperature'],
  ['a blockage above 1', (s) => (s.intake.blockage = 1.2), 'intake.blockage'],
  ['a valve at a handle angle', (s) => (s.plumbing.topFeed.valve = '45 deg'), 'plumbing.topFeed.valve'],
  ['a pipe of no bore', (s) => (s.plumbing.bottomFeed.diameter = 0), 'plumbing.bottomFeed.diameter'],
  ['more muck than pores', (s) => (s.filter.media.layers[0].deposit = '40 L'), 'filter.media.layers[0].deposit'],
  ['a pump that hardly turns', (s) => (s.pump.speed = 0.05), 'pump.speed'],
  ['a porosity of 1', (s) => (s.filter.media.layers[1].porosity = 1), 'filter.media.layers[1].porosity'],
  ['a splash above 1 %', (s) => (pool(s).stones[0].splash = 0.02), 'watercourse[0].stones[0].splash'],
  ['a level stream', (s) => (s.watercourse[1].slope = 0), 'watercourse[1].slope'],
  ['eleven months', (s) => s.weather.rain.pop(), 'weather.rain'],
  ['a crest of one point', (s) => pool(s).stones[1].crest.pop(), 'watercourse[0].stones[1].crest'],
  ['a point of three figures', (s) => pool(s).stones[1].crest[1].push(1), 'watercourse[0].stones[1].crest[1]'],
  ['a text among the figures', (s) => (s.pond.profile[1][1] = 'wide'), 'pond.profile[1][1]'],
  ['a pump at twice its speed', (s) => (s.actions[0].to = 2), 'actions[0].to'],
  ['an hour that is none', (s) => (s.actions[13].daily[1] = '24:00'), 'actions[13].daily[1]'],
  // keys
  ['a mistyped key', (s) => (s.pump.curv = 1), 'pump.curv'],
  ['a mistyped key at the top', (s) => (s.ponds = 1), 'ponds'],
  ['a name of the language as key', (s) => (s.intake.constructor = 1), 'intake.constructor'],
  ['a limit of no check', (s) => (s.limits.turnover = 1), 'limits.turnover'],
  ['no pond', (s) => without(s, 'pond'), 'pond'],
  ['no vault', (s) => without(s, 'vault'), 'vault'],
  ['no span', (s) => without(s, 'span'), 'span'],
  ['no pump curve', (s) => without(s.pump, 'curve'), 'pump.curve'],
  ['no rim on a pool', (s) => without(pool(s), 'rim'), 'watercourse[0].rim'],
  ['a shape beside a profile', (s) => (s.pond.shape = { plan: 'ellipse', length: 4, width: 3, depth: 0.9 }), 'pond'],
  ['a bore beside a nominal size', (s) => (s.plumbing.main.diameter = 0.078), 'plumbing.main'],
  ['an efficiency beside a power', (s) => (s.pump.efficiency = 0.25), 'pump'],
  [
    'no feed',
    (s) => without(s.plumbing, 'bottomFeed') && without(s.plumbing, 'topFeed') && s.actions.splice(4, 2),
    'plumbing',
  ],
  ['a layer without grain', (s) => without(s.filter.media.layers[1], 'grain'), 'filter.media.layers[1]'],
  ['an element of no kind', (s) => (s.watercourse[1].kind = 'brook'), 'watercourse[1].kind'],
  ['a deed that is none', (s) => (s.actions[8].do = 'clean filters'), 'actions[8].do'],
  ['a time and a level for one action', (s) => (s.actions[2].at = 1), 'actions[2]'],
  ['an action without a time', (s) => without(s.actions[4], 'at'), 'actions[4]'],
  ['a size that is not made', (s) => (s.plumbing.main.size = '7 in'), 'plumbing.main.size'],
  // not computed yet
  ['weather from a file', (s) => (s.weather.file = 'weather.csv'), 'weather.file'],
  [
    'a hose by its pressure without a length',
    (s) => (s.supply.hose[0] = { name: 'north', pressure: '45 psi', bore: '5/8 in' }),
    'supply.hose[0].length',
  ],
  ['a tank truck with nothing in it', (s) => (s.supply.hose[0].volume = 0), 'supply.hose[0].volume'],
  ['a sketch', (s) => (s.sketch = {}), 'sketch.length', 'sketch.width', 'sketch.depth', 'sketch.pump'],
  ['water that is mostly debris', (s) => (s.debris = 0.5), 'debris'],
  ['a load by the hour', (s) => (s.load = '20 g/h'), 'load'],
  ['less than no load', (s) => (s.load = -1), 'load'],
  ['a concentration that begins with 0', (s) => (s.concentration = '0 ft 6 in'), 'concentration'],
  // profiles, crests and layers
  [
    'a profile that turns back',
    (s) => (s.vault.profile[1][0] = -1.2),
    'vault.profile[1]',
    'vault.profile',
    'pump.minimum',
  ],
  ['a profile that closes', (s) => (pool(s).profile[1][1] = 0), 'watercourse[0].profile'],
  ['three points at one elevation', (s) => s.pond.profile.splice(2, 0, [-0.45, 10]), 'pond.profile[3]'],
  ['a crest that turns back', (s) => (s.filter.lip.crest[0][0] = 1), 'filter.lip.crest[1]'],
  ['a layer upside down', (s) => (s.pond.displaced[0].to = -0.95), 'pond.displaced[0]'],
  ['more rock than room', (s) => s.pond.displaced.push({ from: -0.85, to: 0, fraction: 0.5 }), 'pond.displaced'],
  // elevations
  ['a lip above its rim', (s) => (s.filter.lip.crest = raise(s.filter.lip.crest, 0.12)), 'filter.lip.crest'],
  ['a suction below the floor', (s) => (s.pump.suction = -1.05), 'pump.suction'],
  ['a minimum below the suction', (s) => (s.pump.minimum = -0.96), 'pump.minimum'],
  [
    'a stone above its rim',
    (s) => (pool(s).stones[1].crest = raise(pool(s).stones[1].crest, 0.2)),
    'watercourse[0].stones[1].crest',
  ],
  [
    'a stone below its pool',
    (s) => (pool(s).stones[1].crest = raise(pool(s).stones[1].crest, -0.4)),
    'watercourse[0].stones[1].crest',
  ],
  [
    'a stone that leads uphill',
    (s) => (s.watercourse[1].foot = 0.52),
    'watercourse[0].stones[0].crest',
    'actions[10].elevation',
  ],
  ['a stream that ends under water', (s) => (s.watercourse[1].foot = -0.2), 'watercourse[1].foot'],
  ['a lip that leads uphill', (s) => (s.filter.lip.crest = raise(s.filter.lip.crest, -0.45)), 'filter.lip.crest'],
  ['an intake above the rim', (s) => (s.intake.elevation = 0.1), 'intake.elevation', 'pond.fillMark'],
  ['an intake below the floor', (s) => (s.intake.elevation = -0.95), 'intake.elevation'],
  ['a mark above the rim', (s) => (s.pond.fillMark = 0.02), 'pond.fillMark'],
  ['an overflow above the rim', (s) => (s.pond.overflow.elevation = 0.05), 'pond.overflow.elevation'],
  ['media that reach out', (s) => (s.filter.media.layers[1].thickness = 0.6), 'filter.media.layers'],
  ['media wider than the filter', (s) => (s.filter.media.area = 0.6), 'filter.media.area'],
  ['media under the floor', (s) => (s.filter.media.bottom = 0.29), 'filter.media.bottom', 'plumbing.bottomFeed.inlet'],
  ['media that weigh nothing', (s) => (s.filter.media.submergedWeight = 0), 'filter.media.submergedWeight'],
  [
    'a check valve that leaks more than its pipe',
    (s) => (s.plumbing.main.checkValve = { leak: '60 cm2' }),
    'plumbing.main.checkValve.leak',
  ],
  ['a hole of ten square meters', (s) => (s.pond.leak.area = 10), 'pond.leak.area'],
  ['an inlet above the media’s bottom', (s) => (s.plumbing.bottomFeed.inlet = 0.5), 'plumbing.bottomFeed.inlet'],
  ['an outlet under the filter', (s) => (s.plumbing.topFeed.outlet = 0.2), 'plumbing.topFeed.outlet'],
  ['a tee under the suction', (s) => (s.plumbing.tee = -1), 'plumbing.tee'],
  ['a hole under the floor', (s) => (s.pond.leak.elevation = -1), 'pond.leak.elevation'],
  ['a level under the floor', (s) => (s.vault.level = -1.1), 'vault.level'],
  ['a cut-out that restarts at once', (s) => (s.pump.cutOut.restart = -0.7), 'pump.cutOut.restart'],
  ['an autofill the wrong way round', (s) => (s.supply.autofill.low = -0.05), 'supply.autofill.set'],
  ['a seep under its pool', (s) => (pool(s).stones[0].seep.foot = 0.2), 'watercourse[0].stones[0].seep.foot'],
  // the pump's curve
  ['a curve that rises', (s) => (s.pump.curve[2][1] = 5), 'pump.curve[2]'],
  ['flows that do not ascend', (s) => (s.pump.curve[2][0] = 0.002), 'pump.curve[2]'],
  ['a curve without shut-off head', (s) => (s.pump.curve[0][0] = 0.001), 'pump.curve[0]'],
  [
    'power points that turn back',
    (s) =>
      (s.pump.power = [
        [0.002, 300],
        [0.001, 280],
      ]),
    'pump.power[1]',
  ],
  // names
  ['a name used twice', (s) => (pool(s).stones[1].name = 'run'), 'watercourse[1].name', 'actions[7].of'],
  ['a reserved name', (s) => (pool(s).name = 'vault'), 'watercourse[0].name'],
  ['the name of a flow', (s) => (pool(s).stones[0].name = 'vault spill'), 'watercourse[0].stones[0].name'],
  ['a name that another makes', (s) => (pool(s).stones[0].name = 'upper pool rim'), 'watercourse[0].stones[0].name'],
  ['a seep’s name', (s) => (pool(s).name = 'side stone seep'), 'watercourse[0].name'],
  ['an edge’s name', (s) => (pool(s).name = 'run edge'), 'watercourse[0].name'],
  ['no name at all', (s) => (pool(s).name = ' '), 'watercourse[0].name'],
  ['two hoses of one name', (s) => (s.supply.hose[1].name = 'north'), 'supply.hose[1].name'],
  ['two layers of one name', (s) => (s.filter.media.layers[1].name = 'coarse mat'), 'filter.media.layers[1].name'],
  ['two main stones', (s) => (pool(s).stones[1].main = true), 'watercourse[0].stones[1].main'],
  ['a feed to nowhere', (s) => (s.plumbing.topFeed.to = 'lower pool'), 'plumbing.topFeed.to'],
  ['a dam on a basin', (s) => (s.actions[7].of = 'upper pool'), 'actions[7].of'],
  ['a leak nowhere', (s) => (s.actions[10].in = 'cellar'), 'actions[10].in'],
  ['a hose nobody has', (s) => (s.actions[1].name = 'west'), 'actions[1].name'],
  ['a level of no basin', (s) => (s.actions[2].when.basin = 'side stone'), 'actions[2].when.basin'],
  // what is done
  ['an action past the span', (s) => (s.actions[0].at = '49 h'), 'actions[0].at'],
  ['pumping out below the floor', (s) => (s.actions[12].until = -1), 'actions[12].until'],
  ['power back for a time', (s) => (s.actions[3].to = 'on'), 'actions[3].for'],
  ['a hose turned where none is', (s) => without(s.supply, 'hose'), 'actions[1].do', 'actions[2].do'],
  ['an autofill shut where none is', (s) => without(s.supply, 'autofill'), 'actions[11].do'],
  ['one clock time twice', (s) => (s.actions[13].daily[1] = '08:00'), 'actions[13].daily[1]'],
  ['running with the pump off', (s) => (Object.assign(s, { start: 'running' }).pump.running = false), 'start'],
  ['running with an empty pond', (s) => (Object.assign(s, { start: 'running' }).pond.level = 'empty'), 'start'],
  [
    'an empty pond without a mark',
    (s) => without(Object.assign(s.pond, { level: 'empty' }), 'fillMark'),
    'pond.fillMark',
  ],
  ['limits the wrong way round', (s) => s.limits['drain-back'].reverse(), 'limits["drain-back"]'],
];

const placesOf = (site: unknown): string[] => {
  const reading = readSite(site);
  return reading.ok ? [] : reading.problems.map(({ place }) => place);
};

describe('a file with one mistake', () => {
  test('is made from one without any', () => {
    expect(placesOf(fullSite())).toEqual([]);
  });

  test.each(MISTAKES.map(([what, make, ...places]) => ({ what, make, places })))(
    '$what is told at its place and nowhere else',
    ({ make, places }) => {
      const site = fullSite();
      make(site);
      expect(placesOf(site).sort()).toEqual([...places].sort());
    },
  );
});

describe('a file with many mistakes', () => {
  test('has all of them told at once, those of type and those of sense', () => {
    const site = fullSite();
    site.intake.width = '3 gal';
    site.pump.suction = -1.05;
    site.filter.lip.crest = raise(site.filter.lip.crest, 0.12);
    site.weathr = {};
    expect(placesOf(site).sort()).toEqual(['filter.lip.crest', 'intake.width', 'pump.suction', 'weathr']);
  });

  test('gets a place, what was found and what is wanted for each', () => {
    const site = fullSite();
    site.intake.width = '3 gal';
    site.weathr = {};
    const reading = readSite(site);
    const lines = reading.ok ? [] : reading.problems.map((each) => Object.values(each).join(' | '));
    expect(lines.join('\n')).toMatch(/^weathr \| a key that is not known \| "weather", perhaps; one of title/m);
    expect(lines.join('\n')).toMatch(/^intake.width \| the unit gal in "3 gal" \| a length.*mm, cm, m, in, ft/m);
  });

  test('names what is not computed yet', () => {
    const site = fullSite();
    site.weather.file = 'weather.csv';
    const reading = readSite(site);
    expect(reading.ok ? '' : reading.problems[0]?.wanted).toBe('nothing or 0; not computed yet: weather from a file');
  });
});
