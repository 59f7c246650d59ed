import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { shownBy } from '../../sim/readings/model.ts';
import { NINETY } from '../../sim/readings/prior.ts';
import { type Fit, readBack } from '../../sim/readings/readBack.ts';
import { observationOf, type SiteReading } from '../../sim/readings/reading.ts';
import { bandAfter } from '../../sim/readings/spread.ts';
import { siteAt, unknownsOf } from '../../sim/readings/unknowns.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { withValueAt } from '../../sim/studies/place.ts';
import { firstStart } from '../../sim/trials/firstStart.ts';
import { fileOf, siteOf, truthOf } from './sites.ts';

function read(s: Scenario, readings: readonly SiteReading[]): Fit {
  const back = readBack(s, readings);
  if (!back.ok) throw new Error(JSON.stringify(back.problems));
  return back;
}

const courtyard = siteOf('courtyard');
const head = (over: string, m: number, error?: number): SiteReading => ({ kind: 'head', over, head: m, error });
const bucket = (seconds: number): SiteReading => ({ kind: 'bucket', volume: 0.01, seconds });

describe('a site read back', () => {
  test('from readings that are exactly its own stays as it is', () => {
    const shown = shownBy(courtyard);
    const back = read(courtyard, [
      head('lip', shown['head lip']),
      head('broad stone', shown['head broad stone']),
      bucket(0.01 / shown['top feed']),
    ]);
    for (const { value, before } of back.fitted) expect(value).toBeCloseTo(before.value, 6);
    expect(back.flow.main.value).toBeCloseTo(shown.main, 8);
    expect(back.contradictions).toEqual([]);
  });

  test('by exact readings of fine errors has the true flows, whatever pump, crests and valves really are', () => {
    for (let seed = 0; seed < 10; seed++) {
      const { site, unknowns, u } = truthOf(courtyard, seed);
      // The crests known, the pump and the valves not: three exact readings settle the three.
      const known = siteAt(
        courtyard,
        unknowns,
        u.map((each, k) => (unknowns[k].kind === 'cd' ? each : 0)),
      );
      const shown = shownBy(site);
      const fine = 1e-5;
      const back = read(known, [
        head('lip', shown['head lip'], fine),
        head('broad stone', shown['head broad stone'], fine),
        head('corner stone', shown['head corner stone'], fine),
        { kind: 'bucket', volume: 0.01, seconds: 0.01 / shown['top feed'], error: 1e-3, volumeError: 1e-4 },
      ]);
      expect(back.shown['head broad stone'].value).toBeCloseTo(shown['head broad stone'], 5);
      expect(back.flow['top feed']!.value / shown['top feed']).toBeCloseTo(1, 3);
      expect(back.flow.main.band[0]).toBeLessThan(shown.main);
      expect(back.flow.main.band[1]).toBeGreaterThan(shown.main);
    }
  });

  test('by one reading lies between what was assumed and what was read', () => {
    const own = shownBy(courtyard)['head broad stone'];
    const back = read(courtyard, [head('broad stone', own + 0.003)]);
    const { value } = back.shown['head broad stone'];
    expect(value).toBeGreaterThan(own + 2e-4);
    expect(value).toBeLessThan(own + 0.003);
    expect(back.flow.main.value).toBeGreaterThan(balance(courtyard).duty.flow);
    const stone = back.fitted.find(({ place }) => place === 'watercourse[0].stones[0].cd')!;
    expect(stone.value).toBeLessThan(0.9);
  });

  test('by the same reading twice is as by one of an error less by the root of two', () => {
    // The mean of n readings, JCGM 100:2008, 4.2.3.
    const twice = read(courtyard, [head('lip', 0.03), head('lip', 0.03)]);
    const once = read(courtyard, [head('lip', 0.03, 0.002 / Math.SQRT2)]);
    for (const [k, { value, band }] of once.fitted.entries()) {
      expect(twice.fitted[k].value).toBeCloseTo(value, 5);
      expect(twice.fitted[k].band[1] - twice.fitted[k].band[0]).toBeCloseTo(band[1] - band[0], 4);
    }
  });

  test('tells a pond wider than its outline, and a rougher stream, by the fall of its first start', () => {
    const unknowns = unknownsOf(courtyard);
    const u = unknowns.map(({ kind, place }) => (kind === 'manning' ? 1.5 : place === 'pond.shape.plan' ? -1 : 0));
    const trial = firstStart(siteAt(courtyard, unknowns, u))!;
    const fall = trial.start - trial.lowestPond.value;
    const back = read(courtyard, [{ kind: 'fall', fall, error: 2e-4 }]);
    expect(back.shown.fall.value).toBeCloseTo(fall, 3);
    const again = firstStart(back.scenario)!;
    expect(again.start - again.lowestPond.value).toBeCloseTo(fall, 3);
  });

  test('puts the fitted values into its scenario and, as changes, into its file alike', () => {
    const back = read(courtyard, [head('lip', 0.031), head('broad stone', 0.028), bucket(6.5)]);
    const file = back.edits.reduce((at, { place, value }) => withValueAt(at, place, value), fileOf('courtyard'));
    const reading = readScenario(JSON.stringify(file));
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const [mine, theirs] = [balance(back.scenario), balance(reading.scenario)];
    expect(theirs.duty.flow).toBeCloseTo(mine.duty.flow, 9);
    expect(theirs.stones['broad stone'].head).toBeCloseTo(mine.stones['broad stone'].head, 7);
    expect(mine.duty.flow).toBeCloseTo(back.flow.main.value, 8);
    const assumed = back.scenario.assumed.find(({ place }) => place === 'watercourse[0].stones[0].cd')!;
    const { value, band } = back.fitted.find(({ place }) => place === assumed.place)!;
    expect([assumed.value, assumed.band]).toEqual([value, band]);
  });

  test('bands another figure by the unknowns together: the flow as it was banded itself', () => {
    const back = read(courtyard, [head('lip', 0.028), head('broad stone', 0.026), bucket(7)]);
    const [flow, none] = bandAfter(courtyard, back, (site) => [balance(site).duty.flow, undefined]);
    expect(none).toBeUndefined();
    expect(flow!.value).toBeCloseTo(back.flow.main.value, 9);
    const width = back.flow.main.band[1] - back.flow.main.band[0];
    expect((flow!.band[1] - flow!.band[0]) / width).toBeCloseTo(1, 1);
  });

  test('goes as plain data to a worker and back', () => {
    const back = read(courtyard, [head('lip', 0.028)]);
    expect(structuredClone(back)).toEqual(back);
  });
});

describe('readings that contradict', () => {
  test('each other are named with both figures', () => {
    const { contradictions } = read(courtyard, [head('lip', 0.036), head('broad stone', 0.017)]);
    expect(contradictions).toHaveLength(1);
    expect(contradictions[0]).toMatchObject({ readings: [0, 1], against: 'each other' });
    expect(contradictions[0].says).toMatch(
      /^The water over the filter’s lip \(36 mm\) and the water over ‘broad stone’ \(17 mm\) contradict each other/,
    );
  });

  test('the site alone are held against it', () => {
    const { contradictions } = read(courtyard, [head('broad stone', 0.045)]);
    expect(contradictions).toHaveLength(1);
    expect(contradictions[0]).toMatchObject({ readings: [0], against: 'the site' });
    expect(contradictions[0].says).toContain('45 mm');
  });

  test('are as far apart as two measures of one thing are that has a spread of its own', () => {
    // By hand from JCGM 100:2008, 5.1.2 and 5.2.2: readings own ∓ a of variance 1, the thing itself of variance P about own.
    // From the first alone the second is expected at −a P/(P + 1) with variance P/(P + 1), and read with 1 more:
    // distance a √((2P + 1)/(P + 1)).
    const unknowns = unknownsOf(courtyard);
    const sd = 0.002 / NINETY;
    const at = (k: number, u: number): number =>
      shownBy(
        siteAt(
          courtyard,
          unknowns,
          unknowns.map((_, i) => (i === k ? u : 0)),
        ),
      )['head broad stone'];
    const own = at(-1, 0);
    const spread = unknowns.reduce((sum, _, k) => sum + ((at(k, 0.1) - at(k, -0.1)) / 0.2 / sd) ** 2, 0);
    const distance = (apart: number): number => (apart / 2 / sd) * Math.sqrt((2 * spread + 1) / (spread + 1));
    const two = (apart: number): Fit =>
      read(courtyard, [head('broad stone', own - apart / 2), head('broad stone', own + apart / 2)]);
    const [found] = two(0.01).contradictions;
    expect(found).toMatchObject({ readings: [0, 1], against: 'each other' });
    expect(found.distance / distance(0.01)).toBeCloseTo(1, 1);
    // Baarda (1968): 3.29 at 0.1 %.
    const limit = (0.01 * 3.29) / distance(0.01);
    expect(two(0.95 * limit).contradictions).toEqual([]);
    expect(two(1.05 * limit).contradictions).toHaveLength(1);
  });
});

describe('what cannot be told', () => {
  const tells = (back: Fit, place: string): readonly string[] | undefined =>
    back.cannotTell.find((each) => each.place === place)?.by;

  test('without a bucket is how much goes by the top feed; the bucket decides it', () => {
    const without = read(courtyard, [head('lip', 0.027), head('broad stone', 0.026)]);
    expect(tells(without, 'top feed')).toEqual(['top feed']);
    expect(tells(without, 'plumbing.topFeed.valve')).toEqual(['top feed']);
    expect(without.cannotTell.find(({ place }) => place === 'top feed')!.says).toBe(
      'The readings can’t tell how much goes by the top feed: the seconds in which the top feed fills a bucket would.',
    );
    const { seconds } = { seconds: 0.01 / shownBy(courtyard)['top feed'] };
    const with_ = read(courtyard, [head('lip', 0.027), head('broad stone', 0.026), bucket(seconds)]);
    expect(tells(with_, 'top feed')).toBeUndefined();
    expect(tells(with_, 'plumbing.topFeed.valve')).toBeUndefined();
  });

  test('without the fall is the roughness of the stream', () => {
    expect(tells(read(courtyard, [head('lip', 0.027)]), 'watercourse[1].manning')).toEqual(['fall']);
  });

  test('by a ruler of 2 mm is the flow, which finer readings tell', () => {
    const coarse = read(courtyard, [head('lip', 0.027), head('broad stone', 0.026)]);
    expect(tells(coarse, 'main')).toEqual([]);
    expect(coarse.cannotTell.find(({ place }) => place === 'main')!.says).toContain('only much finer ones would');
    const fine = ['lip', 'broad stone', 'corner stone'].map((over) => {
      const shown = shownBy(courtyard)[`head ${over}`];
      return head(over, shown, 2e-4);
    });
    expect(tells(read(courtyard, fine), 'main')).toBeUndefined();
  });
});

describe('readings that cannot be', () => {
  test.each<[SiteReading, RegExp]>([
    [head('broad stone', -0.01), /can’t be less than nothing/],
    [head('broad stone', 0), /leave it out/],
    [head('broad stone', Number.NaN), /is no figure/],
    [head('broad stone', '1 finger' as unknown as number), /is no figure \(‘1 finger’\)/],
    [head('broad stone', 0.2), /80 mm above the edge of ‘upper pool’ and run over it: there is room for 120 mm/],
    [head('lip', 0.15), /50 mm above the edge of the filter/],
    [head('chair', 0.02), /No stone here is called ‘chair’/],
    [head('lip', 0.02, 0), /no ruler reads exactly/],
    [{ kind: 'fall', fall: 3 }, /to its floor it is 740 mm/],
    [bucket(0.5), /more than the pump gives at no height at all/],
    [bucket(-3), /can’t be less than nothing/],
  ])('are told as a builder would: %o', (reading, says) => {
    expect(readBack(courtyard, [head('lip', 0.027), reading])).toEqual({
      ok: false,
      problems: [{ reading: 1, says: expect.stringMatching(says) }],
    });
  });

  test('are told where there is nothing at all, no filter, or no top feed', () => {
    const gravel = siteOf('gravel-basin');
    const says = (readings: SiteReading[]): string => {
      const back = readBack(gravel, readings);
      return back.ok ? '' : back.problems[0].says;
    };
    expect(says([])).toMatch(/^Give at least one reading/);
    expect(says([head('lip', 0.02)])).toBe('This site has no filter, and so no lip.');
    expect(says([bucket(8)])).toBe('This site has no top feed to fill a bucket from.');
  });
});

test('a bucket is a flow whose relative errors add as squares', () => {
  // By hand: 10 L in 8 s is 1.25 L/s; 0.5/8 = 6.25 % and 3 % make 6.93 %.
  const { value, error } = observationOf(bucket(8));
  expect(value).toBeCloseTo(0.00125, 12);
  expect(error / value).toBeCloseTo(0.0693, 4);
});
