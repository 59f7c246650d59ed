import { describe, expect, test } from 'vitest';
import { assumptionWords } from '../../sim/results/checks/assumptionWords.ts';
import { bandOf, bandsOf } from '../../sim/results/checks/bands.ts';
import { withValue } from '../../sim/results/checks/withValue.ts';
import type { Assumption, Scenario, Stream } from '../../sim/scenario/scenario.ts';
import { plainFile, siteOf } from '../trials/plainSite.ts';

const site = (): Scenario => {
  const file = plainFile();
  file.watercourse[0].stones[0].cd = undefined;
  file.watercourse.push({ name: 'run', kind: 'stream', length: 3, width: 0.5, slope: 0.03, foot: 0.05 });
  return siteOf(file);
};

const stoneCd = ({ watercourse }: Scenario): number =>
  watercourse[0].kind === 'pool' ? watercourse[0].stones[0].cd : 0;
const manning = ({ watercourse }: Scenario): number => (watercourse[1] as Stream).manning;

describe('a band', () => {
  test('is the root sum of squares of half the changes, and the model’s own beside it (JCGM 100:2008, 5.1.2)', () => {
    // Cd 0.82..0.96 (USGS TWRI 3-A5), n 0.08..0.18 (0.12 by a factor 1.5).
    const found = bandOf(site(), (s) => 3 * stoneCd(s) + 10 * manning(s), 0.002);
    expect(found.band).toBeCloseTo(Math.hypot((3 * 0.14) / 2, (10 * 0.1) / 2) + 0.002, 12);
    expect(found.most?.assumption.place).toBe('watercourse[1].manning');
    expect(found.most?.moves).toBeCloseTo(0.5, 12);
  });

  test('does not ask which way a value moves the figure', () => {
    const up = bandOf(site(), (s) => stoneCd(s), 0).band;
    expect(bandOf(site(), (s) => -stoneCd(s), 0).band).toBe(up);
    expect(up).toBeCloseTo(0.07, 12);
  });

  test('of several figures comes from one look at each change', () => {
    let asked = 0;
    const figures = (s: Scenario): number[] => {
      asked++;
      return [stoneCd(s), manning(s)];
    };
    const [cd, n] = bandsOf(site(), figures, [0, 1]);
    const changes = 2 * site().assumed.filter((a) => a.band !== undefined).length;
    expect(asked).toBe(changes);
    expect([cd.band, n.band]).toEqual([expect.closeTo(0.07, 12), expect.closeTo(1.05, 12)]);
  });

  test('takes the whole change to the other end where one end has no answer', () => {
    const found = bandOf(site(), (s) => (manning(s) > 0.15 ? undefined : manning(s)), 0);
    expect(found.band).toBeCloseTo(0.12 - 0.08, 12);
  });

  test('leaves out what holds no single figure, and says which', () => {
    const word: Assumption = { place: 'plumbing.main.checkValve', value: 'unknown', band: [0, 1], from: 'default' };
    const s = { ...site(), assumed: [word] };
    expect(bandOf(s, stoneCd, 0.1)).toEqual({ band: 0.1, most: undefined, skipped: ['plumbing.main.checkValve'] });
  });

  test('calls an assumed value by its part', () => {
    const called = (place: string): string => assumptionWords(site(), { place });
    expect(called('watercourse[1].manning')).toBe('the roughness (Manning’s n) of ‘run’');
    expect(called('watercourse[0].stones[0].cd')).toBe('the discharge coefficient of ‘stone’');
    expect(called('plumbing.main.roughness')).toBe('the roughness of the main line');
    expect(called('somewhere.else')).toBe('the value at somewhere.else');
  });
});

describe('a site with another value', () => {
  test('differs there alone and leaves the site as it was', () => {
    const s = site();
    const before = structuredClone(s);
    const changed = withValue(s, 'watercourse[0].stones[0].cd', 0.96);
    expect(s).toEqual(before);
    expect(changed && stoneCd(changed)).toBe(0.96);
    expect(changed?.pond).toBe(s.pond);
    expect(changed?.watercourse[1]).toBe(s.watercourse[1]);
  });

  test('takes the head of a pump’s curve as a factor, from the box or point by point', () => {
    const s = site();
    expect(withValue(s, 'pump.curve', 1.1)?.pump.curve).toEqual({
      kind: 'points',
      points: [
        [0, 5 * 1.1],
        [0.003, 4.5 * 1.1],
        [0.006, 2 * 1.1],
      ],
    });
    const box = { ...s, pump: { ...s.pump, curve: { kind: 'box', flow: 0.004, head: 5 } as const } };
    expect(withValue(box, 'pump.curve', 0.88)?.pump.curve).toEqual({ kind: 'box', flow: 0.004, head: 4.4 });
  });

  test('takes a freeform outline as a share of its box, and an edge as its lowest point', () => {
    const file = plainFile();
    file.pond.profile = undefined;
    file.pond.shape = { plan: 'freeform', length: 4, width: 3, depth: 0.8 };
    const s = siteOf(file);
    const wider = withValue(s, 'pond.shape.plan', 0.85);
    expect(wider?.pond.profile.at(-1)?.[1]).toBeCloseTo(0.85 * 12, 9);
    expect(withValue(s, 'pond.rim', -0.02)?.pond.rim.crest).toEqual([
      [0, -0.02],
      [1, -0.02],
    ]);
    expect(withValue(site(), 'pond.shape.plan', 0.85)).toBeUndefined();
  });

  test('there is none where no figure stands', () => {
    for (const place of ['title', 'pond', 'watercourse[7].manning', 'nothing.here', 'plumbing.topFeed.valve'])
      expect(withValue(site(), place, 1)).toBeUndefined();
  });
});
