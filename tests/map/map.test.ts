/** What physics demands of a map, its lines, its region, its sentences, and sites that have none. */
import { describe, expect, test } from 'vitest';
import type { MapPoint, OperatingMap, Plane } from '../../sim/map/answer.ts';
import { figureAt } from '../../sim/map/between.ts';
import { borderOf, liftOnset, lineAt, regionOf, roundLevels } from '../../sim/map/lines.ts';
import { operatingMap } from '../../sim/map/map.ts';
import { siteAt } from '../../sim/map/seeker.ts';
import { figureWords, handleWords, presentWords, regionWords } from '../../sim/map/words.ts';
import { headroomCheck } from '../../sim/results/checks/headroom.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { velocityCheck } from '../../sim/results/checks/velocity.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { felted, siteOf } from './sites.ts';

function mapOf(site: Scenario, plane: Plane = 'valves', n = 21): OperatingMap {
  const map = operatingMap(site, { plane, n });
  if (!map.ok) throw new Error(map.says);
  return map;
}

const courtyard = siteOf('courtyard');
const felt = siteOf('courtyard', felted);
const feltMap = mapOf(felt);

/** Pairs of neighbors along an axis, both with a balance. */
function pairs({ x, points }: OperatingMap, axis: 'x' | 'y'): (readonly [MapPoint, MapPoint])[] {
  const by = axis === 'x' ? 1 : x.length;
  return points.flatMap((point, k) => {
    const next = points[k + by];
    const beside = next !== undefined && (axis === 'y' || next.y === point.y);
    return beside && point.found && next.found ? [[point, next] as const] : [];
  });
}

const bottomFlow = ({ flow, split }: MapPoint): number => (flow ?? 0) * (split ?? 0);
const topFlow = (point: MapPoint): number => (point.flow ?? 0) - bottomFlow(point);
/** Rounding in which Newton's method stops, m³/s. */
const ROUNDING = 1e-11;

describe('as physics demands', () => {
  test.each([
    ['courtyard', courtyard],
    ['felted courtyard', felt],
    ['backyard', siteOf('backyard')],
    ['storm', siteOf('storm')],
  ])('in the %s a valve opened gives its own feed more, the other less, and the pump more in all', (_, site) => {
    const map = mapOf(site);
    for (const [less, more] of pairs(map, 'x')) {
      expect(bottomFlow(more) - bottomFlow(less)).toBeGreaterThan(-ROUNDING);
      expect(topFlow(more) - topFlow(less)).toBeLessThan(ROUNDING);
      expect((more.flow ?? 0) - (less.flow ?? 0)).toBeGreaterThan(-ROUNDING);
    }
    for (const [less, more] of pairs(map, 'y')) {
      expect(topFlow(more) - topFlow(less)).toBeGreaterThan(-ROUNDING);
      expect(bottomFlow(more) - bottomFlow(less)).toBeLessThan(ROUNDING);
      expect((more.flow ?? 0) - (less.flow ?? 0)).toBeGreaterThan(-ROUNDING);
    }
  });

  test('media carry a head that grows with the flow through them, and water stands the higher the more there is', () => {
    for (const axis of ['x', 'y'] as const)
      for (const [a, b] of pairs(feltMap, axis)) {
        if (a.lift !== null && b.lift !== null && a.pore !== null && b.pore !== null) {
          const [more, through] = [b.lift - a.lift, 1 / b.pore - 1 / a.pore];
          if (Math.abs(through) > 1e-9) expect(Math.sign(more)).toBe(Math.sign(through));
        }
        expect((a.headroom ?? 0) - (b.headroom ?? 0)).toBeGreaterThan(-1e-9);
      }
  });

  test('what goes through the media times its contact time is the volume of the bed, and of its pores', () => {
    const layers = felt.filter?.media?.layers ?? [];
    const area = felt.filter?.media?.area ?? 0;
    const bed = area * layers.reduce((sum, { thickness }) => sum + thickness, 0);
    const pores = area * layers.reduce((sum, { thickness, porosity }) => sum + thickness * porosity, 0);
    for (const point of feltMap.points) {
      if (point.emptyBed === null || point.pore === null) continue;
      const through = bottomFlow(point) * (1 - (point.channeled ?? 0));
      expect((through * point.emptyBed) / bed).toBeCloseTo(1, 8);
      expect((through * point.pore) / pores).toBeCloseTo(1, 8);
    }
  });

  test('at one share a faster pump lifts more', () => {
    for (const site of [courtyard, felt])
      for (const [slow, fast] of pairs(mapOf(site, 'flow'), 'x')) {
        expect(slow.split === null || Math.abs(slow.split - slow.y) < 2e-6 || slow.flow === 0).toBe(true);
        expect((fast.flow ?? 0) - (slow.flow ?? 0)).toBeGreaterThan(-ROUNDING);
      }
  });
});

/** A map of made-up figures on 5 by 4 points. */
function madeUp(headroom: (x: number, y: number) => number | null): OperatingMap {
  const [x, y] = [
    [0, 0.2, 0.5, 0.7, 1],
    [0, 0.25, 0.6, 1],
  ];
  const points = y.flatMap((b) => x.map((a) => ({ ...feltMap.points[0], x: a, y: b, headroom: headroom(a, b) })));
  return { ...feltMap, x, y, points };
}

describe('lines', () => {
  test('of a plane are straight, from edge to edge', () => {
    const { pieces } = lineAt(
      madeUp((x, y) => x + y),
      'headroom',
      0.8,
    );
    expect(pieces).toHaveLength(1);
    for (const [x, y] of pieces[0]) expect(x + y).toBeCloseTo(0.8, 12);
    const ends = [pieces[0][0], pieces[0][pieces[0].length - 1]].map(([x, y]) =>
      [x, y].map((v) => Math.round(v * 1e9) / 1e9),
    );
    expect(ends.sort((a, b) => a[0] - b[0])).toEqual([
      [0, 0.8],
      [0.8, 0],
    ]);
  });

  test('end beside blank points', () => {
    const whole = lineAt(
      madeUp((_, y) => y),
      'headroom',
      0.3,
    ).pieces.flat();
    const holed = lineAt(
      madeUp((x, y) => (x === 0.5 && y === 0.6 ? null : y)),
      'headroom',
      0.3,
    );
    expect(whole.map(([x]) => x)).toEqual(expect.arrayContaining([0, 0.2, 0.5, 0.7, 1]));
    expect(holed.pieces).toHaveLength(2);
    for (const [x, y] of holed.pieces.flat()) {
      expect(x <= 0.2 || x >= 0.7).toBe(true);
      expect(y).toBeCloseTo(0.3, 12);
    }
  });

  test.each(['channeled', 'pore', 'stone', 'headroom', 'lift'] as const)(
    'of %s lie where the map has their level',
    (figure) => {
      const units = { channeled: 0.01, pore: 1, stone: 1 / 60000, headroom: 0.001, lift: 0.1 };
      const levels = roundLevels(feltMap, figure, units[figure], 4);
      expect(levels.length).toBeGreaterThanOrEqual(2);
      for (const level of levels) {
        const { pieces } = lineAt(feltMap, figure, level);
        expect(pieces.length).toBeGreaterThan(0);
        for (const [x, y] of pieces.flat())
          expect((figureAt(feltMap, figure, Math.min(1, x), Math.min(1, y)) ?? Number.NaN) / level).toBeCloseTo(1, 9);
      }
    },
  );

  test('of the lift: on one side the media stay down, on the other they float', () => {
    const { pieces } = liftOnset(feltMap);
    expect(pieces).toHaveLength(1);
    for (const [x, y] of pieces[0]) {
      const lift = (by: number): number =>
        balanceOf(siteAt(felt, { bottom: Math.min(1, x + by), top: Math.max(0, y - by), speed: 1 }))?.answer.lift ??
        Number.NaN;
      expect(lift(-0.03)).toBeLessThan(1);
      if (x < 0.97 && y > 0.03) expect(lift(0.03)).toBeGreaterThan(1);
    }
  });

  test('where the share that slips round hardly changes there is none, and a sentence says so', () => {
    const map = mapOf(courtyard);
    expect(roundLevels(map, 'channeled', 0.01, 4, 0.5)).toEqual([]);
    expect(map.says.join(' ')).toMatch(
      /At every setting 0\.5 % to 1\.2 % of the bottom feed’s water slips round .* the gap decides it/,
    );
  });
});

describe('the region', () => {
  test('through the present point is bordered where the first check turns, to a tenth of a degree', () => {
    const turn = 1 / 900;
    let borders = 0;
    for (const top of [0.1, 0.3, 0.4, 0.5, 0.8]) {
      const site = siteAt(felt, { bottom: 0.5, top, speed: 1 });
      for (const { from, to, below, above } of mapOf(site).along.x) {
        if (from === 0) continue;
        for (const [edge, out, beyond] of [
          [from, -1, below],
          [to, 1, above],
        ] as const) {
          borders++;
          const failsAt = (bottom: number) => presentOf(siteAt(felt, { bottom, top, speed: 1 })).fails;
          expect(failsAt(edge - out * 1e-6), `${edge}, ${top}`).toBe(null);
          expect(beyond).not.toBe(null);
          expect(failsAt(edge + out * turn), `${edge}, ${top}`).toBe(beyond);
        }
      }
    }
    expect(borders).toBeGreaterThanOrEqual(6);
  });

  const presentOf = (site: Scenario): MapPoint => mapOf(site, 'valves', 2).now;

  test('as rings holds the points that hold, and no other', () => {
    const rings = regionOf(feltMap);
    const inside = (x: number, y: number): boolean =>
      rings.reduce((odd, ring) => {
        const crossed = ring.slice(1).filter(([x2, y2], k) => {
          const [x1, y1] = ring[k];
          return y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1);
        });
        return crossed.length % 2 === 1 ? !odd : odd;
      }, false);
    for (const { x, y, fails } of feltMap.points) {
      if (x === 0 || y === 0 || x === 1 || y === 1) continue;
      expect(inside(x + 1e-9, y + 1e-9), `${x}, ${y}`).toBe(fails === null);
    }
    expect(borderOf(feltMap).pieces.length).toBeGreaterThan(0);
  });
});

describe('in words', () => {
  test('the present setting, its figures and its check, and where all hold', () => {
    expect(presentWords(feltMap, 'metric')).toMatch(
      /^As it is \(the bottom valve 18° closed, the top valve 40° closed\) the pump lifts 235 L\/min, 64 % of it goes by the bottom feed, .* The check ‘headroom’ fails\.$/,
    );
    const half = mapOf(siteAt(felt, { bottom: 0.5, top: 0.3, speed: 1 }));
    const [along, across, all] = regionWords(half);
    expect(along).toMatch(
      /^With the top valve as it is \(63° closed\), all checks hold with the bottom valve shut, and between \d+° and \d+° closed\. Beyond, .*fails\.$/,
    );
    expect(across).toMatch(
      /^With the bottom valve as it is \(45° closed\), all checks hold with the top valve between /,
    );
    expect(all).toMatch(
      /^All checks hold at \d+ of the map’s 441 points; the first to fail is ‘falls’ at 1, ‘channeling’ at/,
    );
  });

  test('handles, and water that does not come', () => {
    expect([1, 0.6, 0.001, 0].map(handleWords)).toEqual(['open', '36° closed', 'shut', 'shut']);
    expect(figureWords(feltMap.points[0], null, 'metric')).toBe('no water comes up');
  });
});

describe('a site without', () => {
  const without = (change: Parameters<typeof siteOf>[1], name = 'courtyard') => operatingMap(siteOf(name, change));

  test('a top feed, a bottom feed or either has no plane of valves: a sentence', () => {
    expect(without((file) => delete file.plumbing.topFeed)).toEqual({
      ok: false,
      says: expect.stringMatching(/^There is no top feed: .*only throttles/),
    });
    expect(operatingMap(siteOf('low-edge'))).toEqual({
      ok: false,
      says: expect.stringMatching(/^There is no bottom feed: .*only throttles/),
    });
    expect(operatingMap(siteOf('gravel-basin'), { plane: 'flow' })).toEqual({
      ok: false,
      says: expect.stringContaining('no top feed'),
    });
  });

  test('media, or a filter, is mapped with what there is', () => {
    const bare = without((file) => delete file.filter.media);
    if (!bare.ok) throw new Error(bare.says);
    expect(bare.says).toEqual([
      'The filter holds no media: nothing floats up, nothing slips round, and there is no contact time.',
    ]);
    expect(bare.points.every(({ channeled, lift, pore }) => channeled === null && lift === null && pore === null)).toBe(
      true,
    );
    expect(bare.points[440].stone).toBeGreaterThan(0);
    expect(lineAt(bare, 'channeled', 0.1).pieces).toEqual([]);
    const open = without((file) => {
      delete file.filter;
      file.plumbing.bottomFeed.inlet = '0.46 m';
      file.plumbing.topFeed.to = 'upper pool';
    });
    if (!open.ok) throw new Error(open.says);
    expect(open.says[0]).toMatch(/^There is no filter/);
    expect(open.now.flow).toBeGreaterThan(0);
  });

  test('a gap, or a stone, says so', () => {
    const tight = without((file) => {
      file.filter.media.gap = 0;
    });
    expect(tight.ok && tight.says[0]).toMatch(/^There is no gap round the media/);
    const stoneless = without((file) => file.watercourse.shift());
    expect(stoneless.ok && stoneless.over).toBe(null);
    expect(stoneless.ok && stoneless.says.join(' ')).toContain('There is no stone');
  });

  test('a pump that lifts to the outlets is a map of standing water, every number finite', () => {
    const weak = without((file) => {
      file.pump.curve = [
        [0, '0.5 m'],
        ['90 L/min', '0.2 m'],
      ];
    });
    if (!weak.ok) throw new Error(weak.says);
    for (const point of weak.points)
      for (const value of Object.values(point))
        expect(typeof value === 'number' && !Number.isFinite(value)).toBe(false);
    expect(weak.points.every(({ fails }) => fails === 'falls')).toBe(true);
    expect(regionWords(weak).join(' ')).toContain('None of the map’s 441 points holds every check');
  });
});

test('limits of the file are the map’s: with a lower one velocity fails, with a higher headroom none', () => {
  const slow = siteOf('courtyard', (file) => {
    file.limits = { velocity: '0.9 m/s' };
  });
  const map = mapOf(slow, 'valves', 5);
  for (const { bottom, top, fails } of map.points) {
    const site = siteAt(slow, { bottom: bottom ?? 0, top: top ?? 0, speed: 1 });
    const input = { scenario: site, balance: balanceOf(site) };
    if (headroomCheck(input)?.verdict === 'fail' || fails === 'falls') continue;
    expect(fails).toBe(velocityCheck(input)?.verdict === 'fail' ? 'velocity' : null);
  }
  expect(map.points.some(({ fails }) => fails === 'velocity')).toBe(true);
});

test('a default map takes well under a second of the machine, in either plane', () => {
  for (const plane of ['valves', 'flow'] as const) {
    const spent = Array.from({ length: 3 }, () => {
      const before = process.cpuUsage();
      mapOf(felt, plane);
      return process.cpuUsage(before).user / 1e6;
    });
    expect(Math.min(...spent)).toBeLessThan(0.6);
  }
  const { work } = feltMap;
  expect(work.balances).toBeLessThan(600);
  expect(work.anew).toBeLessThan(150);
});
