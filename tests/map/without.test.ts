/** Sites that have no map, or not all of one; and what a map costs. */
import { describe, expect, test } from 'vitest';
import { lineAt } from '../../sim/map/lines.ts';
import { operatingMap } from '../../sim/map/map.ts';
import { regionWords } from '../../sim/map/region-words.ts';
import { felted, mapOf, siteOf } from './sites.ts';

const felt = siteOf('courtyard', felted);
const feltMap = mapOf(felt);

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
