/** A fill against sums by hand: every expected figure is volume over flow, or the closed form of a tank that loses. */
import { describe, expect, test } from 'vitest';
import { type FillPlan, fillPlan } from '../../sim/fill/plan.ts';
import { AREA, FLOOR, FLOW, fullAt, MARK, planOf, siteOf, VAULT } from './sites.ts';

/** The pipe stands as a pipe of its whole volume over its height, from −0.75 m up to 0.3 m. */
const PIPE = ((Math.PI / 4) * 0.05 ** 2 * 5) / (0.3 + 0.75);
const pipe = (level: number): number => PIPE * Math.max(0, level + 0.75);
const whole = (AREA + VAULT) * (MARK - FLOOR) + pipe(MARK);

describe('an upright pond under one hose', () => {
  test('stands at every quarter of its depth when that volume has run in', () => {
    const plan = planOf();
    expect(plan.marks.map(({ name }) => name)).toEqual(['quarter depth', 'half depth', 'three quarters', 'fill mark']);
    for (const { level, reached, volume, surface } of plan.marks) {
      const expected = (AREA + VAULT) * (level - FLOOR) + pipe(level);
      expect(volume).toBeCloseTo(expected, 4);
      expect(Math.abs((reached?.t ?? 0) - expected / FLOW)).toBeLessThan(0.5);
      expect(surface).toBeCloseTo(AREA, 12);
    }
    expect(plan.volume).toBeCloseTo(whole, 5);
    expect(plan.lost).toBeCloseTo(0, 9);
  });

  test('opened at 18:00 on a Sunday is full after midnight, on Monday', () => {
    // 8.756 m³ at 20 L/min: 7 h 17 min 48 s.
    const plan = planOf();
    expect(plan.open?.clock).toBe('18:00');
    expect(plan.full?.clock).toBe('Mon 2 Jun 01:17');
    expect(plan.never).toBeNull();
  });

  test('has its level in the series, from empty to the mark', () => {
    const { series, full } = planOf();
    expect(series.t[0]).toBe(0);
    expect(series.t.at(-1)).toBe(full?.t);
    expect(series.pond[0]).toBe(FLOOR);
    expect(series.pond.at(-1)).toBeCloseTo(MARK, 6);
    series.t.forEach((t, i) => {
      if (i > 0) expect(t).toBeGreaterThan(series.t[i - 1]);
      expect(series.volume[i]).toBeCloseTo(FLOW * t, 9);
      expect(Math.abs(series.pond[i] - (FLOOR + (FLOW * t) / (AREA + VAULT)))).toBeLessThan(1e-3);
    });
  });

  test('reads the meter by each mark', () => {
    const plan = planOf((file) => (file.supply.hose.meter = '123.4 m3'));
    expect(plan.hoses[0].meter).toBeCloseTo(123.4 + whole, 4);
    expect(plan.marks[1].meters[0]).toBeCloseTo(123.4 + (plan.marks[1].volume ?? 0), 9);
  });

  test('of water that stands there already needs so much less', () => {
    const plan = planOf((file) => (file.pond.level = -0.5));
    expect(fullAt(planOf()) - fullAt(plan)).toBeCloseTo(((AREA + VAULT) * 0.3 + pipe(-0.5)) / FLOW, 0);
    // What stands under water is no mark to wait for.
    expect(plan.marks.map(({ level }) => level).every((level) => level > -0.5)).toBe(true);
  });

  test('is told of the levels it is asked for', () => {
    const marks = [
      { name: 'under the coping', level: -0.2 },
      { name: 'over the mark', level: 0.05 },
    ];
    const [under, over] = planOf(undefined, { marks }).marks;
    expect(under.reached?.t).toBeCloseTo(((AREA + VAULT) * 0.6 + pipe(-0.2)) / FLOW, 0);
    expect(over).toMatchObject({ name: 'over the mark', reached: null, volume: null });
  });
});

describe('what shifts the clock', () => {
  const shift = (change: Parameters<typeof planOf>[0]): number => fullAt(planOf(change)) - fullAt(planOf());

  test('gravel, 0.2 m of it with 0.4 of water, is 1.44 m³ and 72 min less', () => {
    expect(shift((f) => (f.pond.displaced = [{ from: FLOOR, to: -0.6, fraction: 0.6 }]))).toBeCloseTo(-4320, 0);
  });

  test('a shelf of 3 m² from −0.4 m up is 0.9 m³ and 45 min more, and is a mark', () => {
    const shelved = planOf((file) => {
      file.pond.profile = [
        [FLOOR, AREA],
        [-0.4, AREA],
        [-0.4, AREA + 3],
        [0.1, AREA + 3],
      ];
    });
    expect(fullAt(shelved) - fullAt(planOf())).toBeCloseTo(2700, 0);
    const shelf = shelved.marks.find(({ name }) => name === 'shelf');
    expect(shelf?.level).toBe(-0.4);
    expect(shelf?.reached?.t).toBeCloseTo(((AREA + VAULT) * 0.4 + pipe(-0.4)) / FLOW, 0);
    // An inch of level on the shelf is 15 m² × 25.4 mm.
    expect((shelf?.surface ?? 0) * 0.0254).toBeCloseTo(0.381, 9);
  });

  test('evaporation of 10 mm a day takes 12 m² × 10 mm/d from the hose', () => {
    const loss = (AREA * 0.01) / 86400;
    const plan = planOf((file) => (file.weather = { evaporation: '10 mm/d' }));
    // It fades over the last millimeter of depth, which the hose passes in half a minute.
    expect(Math.abs(fullAt(plan) - whole / (FLOW - loss))).toBeLessThan(1);
    expect(Math.abs(plan.lost! - loss * fullAt(plan))).toBeLessThan(1e-4);
  });

  test('a hole at the floor takes what Torricelli says', () => {
    // A h' = Q − k √h from empty: t = −(2 A/k²) (k √h + Q ln(1 − k √h/Q)).
    const area = 4e-5;
    const k = area * Math.sqrt(2 * 9.80665);
    const root = k * Math.sqrt(MARK - FLOOR);
    const exact = (-2 * (AREA + VAULT) * (root + FLOW * Math.log(1 - root / FLOW))) / (k * k);
    const plan = planOf((file) => (file.pond.leak = { elevation: FLOOR, area }));
    expect(exact / (whole / FLOW)).toBeGreaterThan(1.2);
    // The pipe's 6 L are beside the closed form.
    expect(Math.abs(fullAt(plan) / exact - 1)).toBeLessThan(1.5e-3);
  });

  test('rain of the season is not counted on', () => {
    expect(shift((file) => (file.weather = { rain: Array(12).fill('90 mm') }))).toBe(0);
  });
});

/** Frusta of a rectangular pond with banks at 2:1, 12 ft deep. */
describe('a pond of a published volume', () => {
  const FT3 = 0.3048 ** 3;
  const GPM = 3.785411784e-3 / 60;
  const dug = (length: number, width: number): FillPlan =>
    planOf((file) => {
      const shape = { plan: 'rectangle', length: `${length} ft`, width: `${width} ft`, depth: '12 ft', slope: 2 };
      const crest = [
        [0, 0.05],
        [1, 0.05],
      ];
      file.pond = { shape, level: 'empty', fillMark: 0, rim: { crest } };
      file.vault.profile = [
        [-3.6576, 0.01],
        [0.1, 0.01],
      ];
      file.intake.elevation = -3.6576;
      file.supply.hose.flow = '1000 gpm';
    });

  test.each([
    // Mathematics problem of a pond of 100 ft by 70 ft, answered by Math Central, University of Regina (2007): 44,256 ft³.
    [100, 70, 44256],
    // USDA Natural Resources Conservation Service, Agriculture Handbook 590 (1997), excavated ponds, 40 ft by 100 ft at
    // the bottom, 88 ft by 148 ft at the brim: 3,612 yd³ (from memory; the prismoidal formula gives 3,612.4).
    [148, 88, 3612.4 * 27],
  ])('of %d ft by %d ft takes its %d ft³ over the flow', (length, width, volume) => {
    const plan = dug(length, width);
    expect(Math.abs(fullAt(plan) / ((volume * FT3) / (1000 * GPM)) - 1)).toBeLessThan(2e-4);
    // Half as deep, by the prismoidal formula from the same banks.
    const [a, b, c] = [12, 9, 6].map((down) => (length - 4 * down) * (width - 4 * down));
    const half = plan.marks.find(({ name }) => name === 'half depth');
    expect(Math.abs((half?.volume ?? 0) / (((a + 4 * b + c) / 6) * 6 * FT3) - 1)).toBeLessThan(2e-3);
  });
});

describe('no fill', () => {
  test('where the water stands above the mark: it is over at once', () => {
    const plan = planOf((file) => (file.pond.level = -0.05));
    expect(plan.full?.t).toBe(0);
    expect(plan.lasts).toBe(0);
    expect(plan.volume).toBe(0);
    expect(plan.marks.map(({ reached }) => reached?.t)).toEqual([0]);
  });

  test('where a leak takes as much: never, with the level at which it stays', () => {
    const area = 2e-4;
    const began = performance.now();
    const plan = planOf((file) => (file.pond.leak = { elevation: FLOOR, area }));
    expect(performance.now() - began).toBeLessThan(5000);
    expect(plan).toMatchObject({ full: null, never: 'weak', volume: null, lasts: null });
    // Q = a √(2 g h): h = 0.142 m.
    expect(plan.series.pond.at(-1)).toBeCloseTo(FLOOR + (FLOW / area) ** 2 / (2 * 9.80665), 3);
    expect(plan.marks.at(-1)).toMatchObject({ name: 'fill mark', reached: null });
  });

  test('of a trickle within three months', () => {
    const began = performance.now();
    expect(planOf((file) => (file.supply.hose.flow = 1e-7))).toMatchObject({ full: null, never: 'long' });
    expect(performance.now() - began).toBeLessThan(5000);
  });

  test('without a hose, without flow, without a mark', () => {
    const s = siteOf();
    expect(fillPlan({ ...s, hoses: [] })).toBeUndefined();
    expect(fillPlan(siteOf((file) => (file.supply.hose.flow = 0)))).toBeUndefined();
    expect(fillPlan({ ...s, pond: { ...s.pond, fillMark: undefined } })).toBeUndefined();
  });
});
