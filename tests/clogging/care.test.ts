/** How often the media are to be cleaned: against a hand calculation of two parallel paths, the long run, and scaling. */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import type { Care } from '../../sim/clogging/answer.ts';
import { care } from '../../sim/clogging/care.ts';
import { hoursADay } from '../../sim/clogging/timetable.ts';
import { kinematicViscosity } from '../../sim/laws/water.ts';
import { depositsAt } from '../../sim/results/deposits.ts';
import { restoreNetwork } from '../../sim/results/inside.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run, simulate } from '../../sim/simulate.ts';
import { type File, siteWith, thinLayer } from './sites.ts';

const WEEK = 604800;
const off = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

function found(s: Scenario): Care {
  const answer = care(s);
  if (!answer.care) throw new Error(answer.says);
  return answer;
}

function passes(s: Scenario): number {
  const { passing } = found(s);
  if (passing.when !== 'later') throw new Error(passing.when);
  return passing.t;
}

const G = 9.80665;

/**
 * Time until the share passes a limit, a whole flow Q given to one layer and the gap beside it: both paths lie between
 * the same heads, Ergun's through the layer and flow between plates in the gap; the porosity falls as the layer catches.
 */
function byHand(s: Scenario, whole: number, limit: number): number {
  const media = s.filter!.media!;
  const [layer] = media.layers;
  const { thickness: L, grain, porosity, capture } = layer!;
  const nu = kinematicViscosity(s.water.temperature);
  const d = grain!;
  const gapFlow = (head: number): number => {
    const a = (12 * nu * L) / (G * media.gap ** 2);
    const b = (1.5 + (0.04 * L) / (2 * media.gap)) / (2 * G);
    return (media.perimeter * media.gap * 2 * head) / (a + Math.sqrt(a * a + 4 * b * head));
  };
  const through = (e: number): number => {
    const head = (u: number): number =>
      L * (((150 * nu * (1 - e) ** 2) / (G * e ** 3 * d * d)) * u + ((1.75 * (1 - e)) / (G * e ** 3 * d)) * u * u);
    let [low, high] = [0, whole];
    for (let i = 0; i < 60; i++) {
      const mid = (low + high) / 2;
      if (mid + gapFlow(head(mid / media.area)) > whole) high = mid;
      else low = mid;
    }
    return low;
  };
  const step = 2e-5;
  const kept = s.debris * (1 - Math.exp(-capture * L));
  let t = 0;
  for (let e = porosity; 1 - through(e) / whole < limit; e -= step)
    t += (step * media.area * L) / (kept * through(e - step / 2));
  return t;
}

describe('one layer beside its gap', () => {
  const s = thinLayer(2e-7, '1 d', (file: File) => {
    Object.assign(file.filter.media.layers[0], { thickness: 0.1, grain: 0.02, porosity: 0.6, capture: 3 });
    Object.assign(file.filter.media, { gap: 0.004, submergedWeight: 2000 });
    file.limits = { channeling: 0.08 };
  });

  test('passes its limit when the hand calculation says', () => {
    expect(off(passes(s), byHand(s, balance(s).flows['bottom feed']!, 0.08))).toBeLessThan(2e-3);
  });

  test('starts from the running balance of the clean site', () => {
    const clean = balance(s);
    const { course } = found(s);
    expect(course.channeled[0]).toBeCloseTo(clean.channeled!, 9);
    expect(course.split[0]).toBeCloseTo(clean.split!, 9);
    expect(course.duty[0]).toBeCloseTo(clean.duty.flow, 9);
    expect(course.emptyBed[0]).toBeCloseTo(clean.contact!.emptyBed, 5);
    expect(course.pore[0]).toBeCloseTo(clean.contact!.pore, 5);
  });
});

const fine = (change: (file: File) => void = () => {}): Scenario =>
  siteWith((file) => {
    file.debris = 2e-6;
    Object.assign(file.filter.media.layers[0], { grain: 0.0005, porosity: 0.9 });
    change(file);
  });

describe('the way of the running balances', () => {
  test('is that of the long run: share and deposits where it passes', () => {
    const s = fine((file) => (file.span = '60 d'));
    const { course } = found(s);
    const { record } = run(s);
    const volumes = new Float64Array(record.network.size);
    const { gap, media } = record.network.parts.circuit.flow;
    for (let k = 1; k < course.t.length && course.t[k]! < 60 * 86400; k++) {
      restoreNetwork(record, course.t[k]!, volumes);
      const [round, through] = [record.network.flow[gap]!, record.network.flow[media]!];
      expect(Math.abs(round / (round + through) - course.channeled[k]!)).toBeLessThan(1e-3);
      const held = depositsAt(record, course.t[k]!)['coarse mat']!;
      expect(off(held, course.deposits['coarse mat']![k]!)).toBeLessThan(2e-4);
    }
  });

  test('scales: twice the debris takes half the time, seven times β a seventh, half the hours twice the time', () => {
    const t = passes(fine());
    expect(off(passes(fine((file) => (file.debris = 4e-6))), t / 2)).toBeLessThan(1e-4);
    const bulky = fine((file) => {
      for (const layer of file.filter.media.layers) layer.beta = 7;
    });
    expect(off(passes(bulky), t / 7)).toBeLessThan(1e-4);
    const daily = fine((file) => (file.actions = [{ daily: ['08:00', '20:00'], do: 'pump' }]));
    expect(off(passes(daily), 2 * t)).toBeLessThan(1e-9);
  });
});

describe('the answer', () => {
  test('tells whole weeks rounded down, with the band of what nobody has measured', () => {
    const s = fine((file) => {
      file.debris = 3e-7;
      delete file.filter.media.gap;
      file.limits = { channeling: 0.2 };
    });
    const answer = found(s);
    const { passing, weeks, band, rests, says } = answer;
    expect(passing.when === 'later' && Math.floor(passing.t / WEEK)).toBe(weeks);
    expect(rests.map(({ place }) => place)).toEqual(['filter.media.gap', 'filter.media.layers[0].beta']);
    expect(rests[1]!.atLow).toBe(weeks);
    expect(band[0]).toBe(0);
    expect(band[1] === null || band[1] >= weeks!).toBe(true);
    expect(says).toMatch(
      new RegExp(`^Clean the media every ${weeks} weeks \\(under one to (over )?\\d+\\): with the pump on`),
    );
    expect(says).toMatch(/the gap round the media, which nobody has measured: .* at none, under one week at 20 mm/);
  });

  test('notes the bands of gap and deposit where the file leaves them open', () => {
    const { assumed } = fine((file) => delete file.filter.media.gap);
    const of = (place: string) => assumed.find((each) => each.place === place);
    expect(of('filter.media.gap')?.band).toEqual([0, 0.02]);
    expect(of('filter.media.layers[0].beta')).toMatchObject({ value: 1, band: [1, 7] });
    expect(siteWith().assumed.some(({ place }) => place.endsWith('beta'))).toBe(false);
  });

  test('is no cleaning where the gap is too wide for clean media', () => {
    const { passing, weeks, says } = found(fine((file) => (file.filter.media.gap = 0.02)));
    expect([passing.when, weeks]).toEqual(['clean', 0]);
    expect(says).toContain('no cleaning mends that');
  });

  test('is never within two years where little settles', () => {
    const { passing, weeks, says } = found(fine((file) => (file.debris = 1e-10)));
    expect([passing.when, weeks]).toEqual(['never', null]);
    expect(says).toContain('stays within 10 % for two years');
  });

  test('holds without a gap: the media lift in the end', () => {
    const { passing, course } = found(fine((file) => (file.filter.media.gap = 0)));
    expect(passing.when).toBe('later');
    expect(course.channeled[0]).toBe(0);
    expect(course.lift.some((lift) => lift > 1)).toBe(true);
  });

  test.each<[string, (file: File) => void, RegExp]>([
    ['no debris', (file) => (file.debris = 0), /no debris/],
    ['no filter', (file) => delete file.filter, /no media/],
    ['no media', (file) => delete file.filter.media, /no media/],
    [
      'media that catch nothing',
      (file) => {
        for (const layer of file.filter.media.layers) layer.capture = 0;
      },
      /catches anything/,
    ],
    ['no bottom feed', (file) => delete file.plumbing.bottomFeed, /No bottom feed/],
    ['the bottom valve shut', (file) => (file.plumbing.bottomFeed.valve = 0), /No water goes up/],
  ])('says in a sentence what follows from %s', (_, change, says) => {
    const answer = care(fine(change));
    expect(answer.care).toBe(false);
    expect(answer.says).toMatch(says);
  });

  test('has no figure that is none, though a layer fills up wholly', () => {
    const { course } = found(fine((file) => Object.assign(file, { debris: 1e-4, limits: { channeling: 0.95 } })));
    for (const column of [course.t, course.split, course.channeled, course.duty, course.lift])
      expect([...column].every(Number.isFinite)).toBe(true);
  });

  test('comes well under a second', () => {
    const s = fine((file) => delete file.filter.media.gap);
    care(s);
    const begin = performance.now();
    care(s);
    expect(performance.now() - begin).toBeLessThan(1000);
  });
});

describe('the check', () => {
  test('is told after channeling, and left out where nothing clogs', () => {
    const names = simulate(fine()).answer.checks.map(({ name }) => name);
    expect(names.indexOf('cleaning')).toBe(names.indexOf('channeling') + 1);
    expect(simulate(siteWith()).answer.checks.some(({ name }) => name === 'cleaning')).toBe(false);
  });
});

describe('hours of a day', () => {
  const daily = (...times: number[]) =>
    ({ daily: times.map((h) => h * 3600), deed: { do: 'pump' }, place: '' }) as const;
  test('are those between on and off, over midnight too', () => {
    expect(hoursADay([])).toBe(24);
    expect(hoursADay([daily(8, 22)])).toBe(14);
    expect(hoursADay([daily(22, 6)])).toBe(8);
    expect(hoursADay([daily(6, 10, 18, 21)])).toBe(7);
    expect(hoursADay([daily(6, 10), daily(18, 21)])).toBe(7);
  });
});
