import { describe, expect, test } from 'vitest';
import { assumptionWords } from '../../sim/results/checks/assumptionWords.ts';
import { bandOf } from '../../sim/results/checks/bands.ts';
import { flowsAlike, withValue } from '../../sim/results/checks/withValue.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { least, siteOf } from './sites.ts';

const site = siteOf({ sketch: least() });
const lipOf = ({ filter }: Scenario): number => filter!.lip.crest[0][1];
const stoneOf = ({ watercourse }: Scenario): number =>
  watercourse[0].kind === 'pool' ? watercourse[0].stones[0].crest[0][1] : 0;

describe('another value of a sketch’s number', () => {
  test('has the whole site expanded again, with what follows from it', () => {
    const higher = withValue(site, 'sketch.lip', 0.9)!;
    expect([lipOf(site), lipOf(higher)]).toEqual([0.762, 0.9]);
    expect(stoneOf(higher)).toBeCloseTo((0.9 + 3 * 0.0254) / 2, 9);
    expect(higher.plumbing.topFeed!.outlet).toBeCloseTo(0.9 + 4 * 0.0254, 9);
    expect(higher.assumed).toBe(site.assumed);
  });

  test('leaves the parts given beside the sketch, and is what typing it gives', () => {
    const beside = { intake: { width: 0.5 } };
    const changed = withValue(siteOf({ ...beside, sketch: least() }), 'sketch.pipe.length', 12)!;
    const typed = siteOf({ ...beside, sketch: { ...least(), pipe: { length: 12 } } });
    expect({ ...changed, assumed: [], sketched: 0 }).toEqual({ ...typed, assumed: [], sketched: 0 });
  });

  test('is none where the site makes no sense with it, or has no sketch', () => {
    expect(withValue(site, 'sketch.lip', 0.1)).toBeUndefined();
    expect(withValue({ ...site, sketched: undefined }, 'sketch.lip', 0.9)).toBeUndefined();
  });

  test('is felt by the water or not', () => {
    const other = (place: string, value: number) => withValue(site, place, value)!;
    expect(flowsAlike(site, other('sketch.efficiency', 0.4))).toBe(true);
    expect(flowsAlike(site, other('sketch.climate', 1e-8))).toBe(true);
    expect(flowsAlike(site, other('sketch.splash', 0))).toBe(false);
    expect(flowsAlike(site, other('sketch.blockage', 0))).toBe(false);
  });
});

test('a figure that is a number of the sketch has that number’s own band', () => {
  const { band, most } = bandOf(site, lipOf, 0);
  expect(band).toBeCloseTo((0.9144 - 0.6096) / 2, 9);
  expect(most?.assumption.place).toBe('sketch.lip');
  expect(assumptionWords(site, most!.assumption)).toBe('the height of the filter’s lip above the water');
});

test('a check names the number that moves it most, by half its figure’s change from one end of the band to the other', () => {
  const volume = (s: Scenario): number =>
    simulate({ ...s, assumed: [], sketched: undefined }).answer.checks.find(({ name }) => name === 'volume')!.value!;
  const { rests } = simulate(site).answer.checks.find(({ name }) => name === 'volume')!;
  const [low, high] = site.assumed.find(({ place }) => place === rests?.place)!.band!;
  const [atLow, atHigh] = [low, high].map((value) => volume(withValue(site, rests!.place, value)!));
  expect(rests?.moves).toBeCloseTo(Math.abs(atHigh! - atLow!) / 2, 6);
});

describe('the answers of a site from a sketch', () => {
  const { checks } = simulate(site).answer;
  const of = (name: string) => checks.find((check) => check.name === name)!;

  test('say how good they are and which assumed number moves them most', () => {
    for (const name of ['first start', 'falls', 'headroom', 'velocity', 'duty', 'turnover', 'volume', 'loss']) {
      expect(of(name).band, name).toBeGreaterThan(0);
      expect(of(name).says).toMatch(/The figure is good to ± .+, most of it for the .+, which is assumed\.$/);
    }
    expect(of('volume').says).toContain('the share of rock in the pond');
    expect(of('volume').rests?.place).toBe('sketch.rock');
    for (const { name, rests, says } of checks)
      if (rests && says.includes('most of it for')) expect(says, name).toContain(assumptionWords(site, rests));
    expect(of('drain-back').says).toContain('the height of the pond’s edge above the water, which is assumed');
  });

  test('have the band that the two ends of every assumption give, the box’s counted once', () => {
    // The reach rests on the head of the box alone: 12 % of it.
    expect(of('reach').band).toBeCloseTo(0.12 * 18 * 0.3048, 6);
  });

  test('have a narrower band when the number that moves them is typed', () => {
    const typed = simulate(siteOf({ sketch: { ...least(), rock: 'usual', edge: '3 in' } })).answer.checks;
    for (const name of ['volume', 'drain-back']) {
      const now = typed.find((check) => check.name === name)!;
      expect(now.value).toBeCloseTo(of(name).value!, 9);
      expect(now.band).toBeLessThan(0.8 * of(name).band);
    }
  });
});
