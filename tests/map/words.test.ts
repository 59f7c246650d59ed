/** What a map says: of the present setting, of the others, of a clogged site, a lifting one and a slow pump. */
import { describe, expect, test } from 'vitest';
import { mapSentences, regionWords } from '../../sim/map/region-words.ts';
import { siteAt } from '../../sim/map/seeker.ts';
import { figureWords, handleWords, presentWords } from '../../sim/map/words.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { felted, mapOf, siteOf } from './sites.ts';

const felt = siteOf('courtyard', felted);
const feltMap = mapOf(felt);

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

/** The teaching filter with so much settled in it that the media float up as the site stands. */
const clogged = (deposit: string, speed = 1) =>
  siteOf('teaching-filter', (file) => {
    file.filter.media.layers[0].deposit = deposit;
    file.filter.media.submergedWeight = deposit === '9 L' ? '30 N' : '55 N';
    file.pump.speed = speed;
  });

describe('a clogged site', () => {
  test('is told with what has settled; a site that only will clog, with its clean media', () => {
    expect(mapOf(clogged('6 L')).says[0]).toBe('The map is drawn with what has settled in the media now, 6.0 L.');
    expect(mapOf(clogged('0 L')).says[0]).toMatch(/^The map is drawn with clean media, as they are at the start:/);
    const never = siteOf('teaching-filter', (file) => {
      for (const layer of file.filter.media.layers) delete layer.capture;
    });
    expect(mapOf(never).says.join(' ')).not.toMatch(/clean|settled/);
  });

  test('whose media float says so of the present setting and of the map', () => {
    const map = mapOf(clogged('9 L'));
    expect(presentWords(map, 'metric')).toMatch(/\d+ % of that slips round the media, which float up, /);
    const lifted = map.points.filter(({ lift }) => (lift ?? 0) >= 1).length;
    expect(lifted).toBeGreaterThan(100);
    expect(regionWords(map).at(-1)).toContain(` At ${lifted} points the media float up.`);
    expect(regionWords(mapOf(clogged('0 L'))).join(' ')).not.toContain('float');
  });
});

describe('a pump driven slower', () => {
  const slowed = clogged('0 L', 0.8);

  test('is told by its speed, and what a pump that has one speed wants in its place', () => {
    const map = mapOf(slowed);
    const said = mapSentences(map, 'metric');
    expect(said[0]).toMatch(/^As it is \(the pump at 80 % of its full speed, the bottom valve 45° closed,/);
    const full = balanceOf(clogged('0 L'))?.answer.flows['main'] ?? Number.NaN;
    expect(map.fullSpeed).toBeCloseTo(full, 9);
    expect(said.at(-1)).toBe(
      `A pump that can’t be driven slower wants a smaller one in its place, or a throttle. The most that today’s pump gives is its flow at full speed, ${(full * 60000).toFixed(0)} L/min with the valves as they are.`,
    );
    expect(mapSentences(mapOf(clogged('0 L')), 'metric').join(' ')).not.toContain('full speed');
  });

  test('stands within the plane of flow, whose sentences name its speed', () => {
    const map = mapOf(slowed, 'flow');
    expect(regionWords(map)[1]).toMatch(/^With the pump as fast as it is \(80 % of its full speed\), all checks hold/);
    const [slow, fast] = [0.25, 1.15].map((speed) => mapOf(clogged('0 L', speed), 'flow').x);
    expect([slow[0], slow.at(-1)]).toEqual([0.2, 1]);
    expect([fast[0], fast.at(-1)]).toEqual([0.4, 1.2]);
  });

  test('whose valves are both closed lifts less than its place in the plane of flow, which says so', () => {
    expect(mapOf(clogged('0 L'), 'flow').says.join(' ')).toMatch(
      /as far open as its share lets them: so opened, the pump would lift 285 L\/min where it now lifts 265 L\/min\./,
    );
  });
});
