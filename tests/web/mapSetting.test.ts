/** A place of the plane of flow as a setting of pump and valves, and what is read there: against the balance of the site so set. */
import { describe, expect, test } from 'vitest';
import { operatingMap, speedsBy } from '../../sim/map/map.ts';
import { siteAt } from '../../sim/map/seeker.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { familiesOf } from '../../web/map/families.ts';
import { flowTicks } from '../../web/map/flow-scale.ts';
import { setAt } from '../../web/map/setting.ts';
import { underHand } from '../../web/map/under-hand.ts';
import { mapOf, siteOf } from '../map/sites.ts';

const clogged = siteOf('teaching-filter', (file) => {
  file.filter.media.layers[0].deposit = '6 L';
});

const flowMap = (site: typeof clogged) => {
  const map = operatingMap(site, { plane: 'flow', x: speedsBy(site, 0.025) });
  if (!map.ok) throw new Error(map.says);
  return map;
};
const map = flowMap(clogged);
const splitAt = (setting: Parameters<typeof siteAt>[1], site = clogged) =>
  balanceOf(siteAt(site, setting))?.answer.split ?? Number.NaN;

describe('a setting read between the points of the plane of flow', () => {
  test.each([
    ['clogged filter', clogged],
    ['courtyard', siteOf('courtyard')],
    ['backyard', siteOf('backyard')],
  ])('splits the water as asked, within three percent: %s', (_, site) => {
    const plane = flowMap(site);
    for (const speed of [0.66, 0.77, 0.93, 1])
      for (const share of [0.02, 0.07, 0.22, 0.5, 0.63, 0.82, 0.97]) {
        const set = setAt(plane, [speed, share]);
        expect(set?.place).toEqual([speed, share]);
        expect(set?.setting.speed).toBe(speed);
        expect(Math.max(set?.setting.bottom ?? 0, set?.setting.top ?? 0)).toBe(1);
        expect(Math.abs(splitAt(set!.setting, site) - share), `${speed}, ${share}`).toBeLessThan(0.03);
      }
  });

  test('at the map’s own points is the map’s own', () => {
    for (const { x, y, bottom, top } of map.points) {
      if (bottom === null || top === null) continue;
      const setting = setAt(map, [x, y])?.setting;
      expect(setting?.bottom).toBeCloseTo(bottom, 3);
      expect(setting?.top).toBeCloseTo(top, 3);
    }
  });

  test('shuts a valve where none or all of the water goes below', () => {
    expect(setAt(map, [0.8, 0])?.setting).toEqual({ bottom: 0, top: 1, speed: 0.8 });
    expect(setAt(map, [0.8, 1])?.setting).toEqual({ bottom: 1, top: 0, speed: 0.8 });
  });

  test('is that of the nearest place where there is none, along a ruler where only that is moved', () => {
    const near = setAt(map, [0.41, 0.5])!;
    expect(near.place[0]).toBeGreaterThan(0.44);
    expect(splitAt(near.setting)).toBeGreaterThan(0);
    const along = setAt(map, [0.41, 0.5], 'x')!;
    expect(along.place[1]).toBe(0.5);
    expect(along.place[0]).toBeGreaterThanOrEqual(near.place[0]);
    expect(setAt(map, [0.41, 0.5], 'y')?.place[0]).toBe(0.41);
  });

  test('in the plane of valves is the place itself, at the pump’s speed', () => {
    const slow = mapOf(
      siteOf('teaching-filter', (file) => {
        file.pump.speed = 0.8;
      }),
    );
    expect(setAt(slow, [0.3, 0.6])).toEqual({ place: [0.3, 0.6], setting: { bottom: 0.3, top: 0.6, speed: 0.8 } });
  });
});

test('the sentence under the hand tells the figures of the site so set', () => {
  const set = setAt(map, [0.9, 0.35])!;
  const { flows } = balanceOf(siteAt(clogged, set.setting))!.answer;
  const told = underHand(map, set, 'metric') ?? '';
  expect(told).toMatch(
    /^Under the hand \(the pump at 90 % of its full speed, the bottom valve \d+° closed, the top valve open\) the pump lifts/,
  );
  expect(told).toMatch(/The check ‘channeling’ fails\.$/);
  const lifts = Number(/lifts (\d+) L\/min/.exec(told)?.[1]);
  expect(Math.abs(lifts / (flows['main'] * 60000) - 1)).toBeLessThan(0.02);
});

describe('the scale of flow', () => {
  const flow = familiesOf(map, 'metric').find(({ figure }) => figure === 'flow')!;

  test('stands where the pump lifts round flows at that share, the last with its unit', () => {
    const ticks = flowTicks(map, 0.5, flow, 560);
    expect(ticks.map(({ text }) => text)).toEqual(['50', '100', '150', '200', '250 L/min']);
    for (const { value, text } of ticks) {
      const { setting } = setAt(map, [value, 0.5])!;
      const { flows } = balanceOf(siteAt(clogged, setting))!.answer;
      expect(Math.abs(flows['main'] * 60000 - Number.parseInt(text, 10)), text).toBeLessThan(3);
    }
  });

  test('has fewer figures where it is narrow, none on another', () => {
    const ticks = flowTicks(map, 0.5, flow, 200);
    expect(ticks.length).toBeGreaterThanOrEqual(2);
    for (const [i, { value }] of ticks.entries())
      if (i > 0) expect(((value - ticks[i - 1].value) / 0.6) * 200).toBeGreaterThan(40);
  });
});
