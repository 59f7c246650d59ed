/** Sites out of the common run: whatever the water does, it is drawn within the sheet, and what overtops is shown. */
import { describe, expect, test } from 'vitest';
import { momentAt } from '../../web/state/moment.ts';
import { faultsOfSite } from './sectionFaults.ts';
import { type Drawn, drawn, marksOf, pointsOf, scenarioOf } from './sectionPaths.ts';
import { siteText } from './sites.ts';

// biome-ignore lint/suspicious/noExplicitAny: a file as anybody may write it
type File = any;

function site(change: (file: File) => void): string {
  const file = JSON.parse(siteText('courtyard')) as File;
  change(file);
  return JSON.stringify(file);
}

const stones = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    name: `stone ${i + 1}`,
    ...(i === 0 ? { main: true } : {}),
    crest: [
      [0, 0.62 + 0.002 * i],
      [0.2, 0.62 + 0.002 * i],
    ],
    fall: '0.2 m',
  }));

const pond = (length: string, width: string, depth: string) => (file: File) => {
  Object.assign(file.pond.shape, { plan: 'rectangle', length, width, depth, slope: 0.1, shelves: [] });
};

const sites: Readonly<Record<string, string>> = {
  'a pond that floods': site((file) => {
    file.pond.fillMark = '-20 mm';
  }),
  'a filter that floods': site((file) => {
    file.filter.lip.crest = [
      [0, 1.05],
      [0.02, 1.05],
    ];
  }),
  'a pool whose stones are grown over': site((file) => {
    for (const stone of file.watercourse[0].stones) stone.blockage = 0.97;
  }),
  'a stream under leaves': site((file) => {
    file.watercourse[1].edge.height = '5 mm';
  }),
  'an intake under leaves': site((file) => {
    file.intake.blockage = 0.99;
  }),
  'no water and no hose': site((file) => {
    file.start = 'standing';
    file.pond.level = 'empty';
    delete file.supply;
    file.weather = {};
  }),
  'a bath tub': site(pond('1.5 m', '0.7 m', '0.5 m')),
  'a hall': site(pond('40 m', '20 m', '2.5 m')),
  'twelve stones': site((file) => {
    file.watercourse[0].stones = stones(12);
  }),
  'no filter': site((file) => {
    delete file.filter;
    delete file.plumbing.bottomFeed;
    file.plumbing.topFeed.to = 'upper pool';
  }),
  'no top feed': site((file) => {
    delete file.plumbing.topFeed;
  }),
  'nothing but a pond': site((file) => {
    delete file.filter;
    delete file.plumbing.bottomFeed;
    file.watercourse = [];
    file.plumbing.topFeed.to = 'pond';
  }),
  'names as long as they may be': site((file) => {
    for (const reach of file.watercourse) reach.name = `${reach.name} ${'o'.repeat(58 - reach.name.length)}`;
  }),
  'no open pond': siteText('gravel-basin'),
  'a dry first start': siteText('first-start'),
};

describe.each(Object.entries(sites))('%s', (_, text) => {
  test.each([360, 984])('is drawn of numbers, within its sheet of %i px', { timeout: 60_000 }, (width) => {
    expect(faultsOfSite(scenarioOf(text), width)).toEqual([]);
  });
});

/** Points of the arrows over edges at all moments of a run, with the flow that is lost at each. */
function spills(by: Drawn, flow: string): { lost: number; points: [number, number][] }[] {
  return Array.from(by.series.t, (t) => {
    const moment = momentAt(by.series, t);
    const marks = marksOf(by, by.at(moment)).filter(({ look }) => look === 'spill');
    return { lost: moment.flows[flow]!, points: marks.flatMap((m) => (m.kind === 'path' ? pointsOf(m.d) : [])) };
  });
}

describe('water that runs over', () => {
  test.each([
    ['a pond that floods', 'rim'],
    ['a filter that floods', 'filter rim'],
    ['a pool whose stones are grown over', 'upper pool rim'],
    ['a stream under leaves', 'stream edge'],
  ])('%s: an arrow goes up over the edge and down outside it while it is lost, and at no other time', (name, flow) => {
    const by = drawn(scenarioOf(sites[name]!), 984);
    const moments = spills(by, flow);
    const running = moments.filter(({ lost }) => lost > 1e-7);
    expect(running.length).toBeGreaterThan(0);
    for (const { points } of running) {
      const [from, over, , to] = points;
      expect(over![1]).toBeLessThan(from![1] - 5);
      expect(to![1]).toBeGreaterThan(over![1]);
      expect(to![0]).not.toBeCloseTo(from![0], 0);
    }
    const dry = moments.filter(({ lost }) => !(lost > 0));
    if (name === 'a pond that floods') for (const { points } of dry) expect(points).toEqual([]);
  });

  test('leaves a filter on its outer side', () => {
    const by = drawn(scenarioOf(sites['a filter that floods']!), 984);
    const wall = by.scale.x(by.scene.filter!.cut.left - by.scene.filter!.wall);
    const { points } = spills(by, 'filter rim').find(({ lost }) => lost > 1e-5)!;
    expect(points[3]![0]).toBeLessThan(wall);
  });
});
