import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ledgerOf } from '../../sim/results/ledger.ts';
import { APART, marched, smallSite, upright } from '../network/smallSite.ts';

/** Banks that flare: rain falls on the uppermost area. */
const CATCHMENT = 16;
function open(more: object, pond: object = {}) {
  return smallSite({
    ...APART,
    pond: {
      ...upright(10, -1, -0.8),
      profile: [
        [-1, 8],
        [-0.3, 10],
        [0.1, CATCHMENT],
      ],
      fillMark: -0.2,
      runoff: { area: 25, coefficient: 0.8 },
      ...pond,
    },
    ...more,
  });
}

const RUNOFF = 25 * 0.8;
const volume = (run: ReturnType<typeof marched>, t: number): number => {
  const d = run.levelAt('pond', t) + 1;
  return 8 * d + (2 / 0.7 / 2) * d * d;
};
const storm = (at: string, depth: string, lasting: string, shape: string) => ({
  at,
  do: 'storm',
  depth,
  lasting,
  shape,
});

describe('a storm', () => {
  test('that falls evenly fills the pond by catchment × depth, and by what runs off beside it', () => {
    const run = marched(open({ actions: [storm('10 min', '20 mm', '30 min', 'even')] }));
    const { ledger } = { ledger: ledgerOf(run.march.record) };
    expect(ledger.in.rain).toBeCloseTo(CATCHMENT * 0.02, 12);
    expect(ledger.in.runoff).toBeCloseTo(RUNOFF * 0.02, 12);
    const whole = (CATCHMENT + RUNOFF) * 0.02;
    expect(volume(run, 600) - volume(run, 0)).toBeCloseTo(0, 12);
    expect(volume(run, 1200) - volume(run, 0)).toBeCloseTo(whole / 3, 9);
    expect(volume(run, 3600) - volume(run, 0)).toBeCloseTo(whole, 9);
    expect(run.march.events).toEqual([
      { t: 600, what: 'storm' },
      { t: 2400, what: 'storm over' },
    ]);
  });

  test('of type II over a day follows the table of NEH 630 ch. 4', () => {
    const run = marched(open({ span: '24 h', actions: [storm('0 h', '50 mm', '24 h', 'scs2')] }));
    const whole = (CATCHMENT + RUNOFF) * 0.05;
    const fallen = [
      [6, 0.08],
      [11, 0.235],
      [12, 0.663],
      [16, 0.88],
      [24, 1],
    ];
    for (const [hour, share] of fallen)
      expect((volume(run, 3600 * hour) - volume(run, 0)) / whole).toBeCloseTo(share, 9);
  });

  test('of six hours takes the heaviest six of the day, from 9 to 15 h with 0.703 of its rain', () => {
    const run = marched(open({ span: '6 h', actions: [storm('0 h', '72 mm', '6 h', 'scs2')] }));
    const whole = (CATCHMENT + RUNOFF) * 0.072;
    expect(volume(run, 6 * 3600) - volume(run, 0)).toBeCloseTo(whole, 9);
    const most = [...Array(21).keys()].map((k) => volume(run, 900 * k + 3600) - volume(run, 900 * k));
    // From 11.5 to 12.5 h the table gains 0.735 − 0.283 of the day.
    expect(Math.max(...most) / whole).toBeCloseTo(0.452 / 0.703, 9);
  });

  test('never loses a stretch, whenever it starts and however long it lasts', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1e5, noNaN: true }),
        fc.double({ min: 600, max: 86400, noNaN: true }),
        (at, lasting) => {
          const actions = [{ at, do: 'storm', depth: 0.03, lasting, shape: 'scs2' }];
          const { record } = marched(open({ span: 2e5, actions })).march;
          expect(ledgerOf(record).in.rain).toBeCloseTo(CATCHMENT * 0.03, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('falls beside another: what overlaps adds', () => {
    const actions = [storm('0 min', '10 mm', '40 min', 'even'), storm('20 min', '10 mm', '20 min', 'even')];
    const run = marched(open({ actions }));
    const perMinute = ((CATCHMENT + RUNOFF) * 0.01) / 40;
    expect(volume(run, 1200) - volume(run, 0)).toBeCloseTo(20 * perMinute, 9);
    expect(volume(run, 1800) - volume(run, 1200)).toBeCloseTo(30 * perMinute, 9);
    expect(volume(run, 3600) - volume(run, 0)).toBeCloseTo(80 * perMinute, 9);
  });
});

describe('by month', () => {
  const rates = [...Array(12).keys()].map((m) => `${m + 1} mm/d`);
  const depths = [...Array(12).keys()].map((m) => `${10 * (m + 1)} mm`);
  const upright10 = {
    profile: [
      [-1, 10],
      [0.1, 10],
    ],
    runoff: { area: 0, coefficient: 0 },
  };
  const fall = (starts: string, span: string): number => {
    const run = marched(open({ starts, span, weather: { evaporation: rates } }, upright10));
    return run.levelAt('pond', 0) - run.levelAt('pond', run.march.time);
  };

  test('evaporation changes at midnight between the months', () => {
    expect(fall('2031-01-30T00:00', '4 d')).toBeCloseTo(0.002 * 1 + 0.002 * 2, 12);
    expect(fall('2031-01-31T18:00', '12 h')).toBeCloseTo(0.00025 + 0.0005, 12);
  });

  test('February has 29 days in a leap year, 28 else, and 29 in 2000 but not in 2100', () => {
    for (const [year, leap] of [
      [2031, 0],
      [2032, 1],
      [2000, 1],
      [2100, 0],
      [96, 1],
    ])
      expect(fall(`${String(year).padStart(4, '0')}-02-28T00:00`, '3 d')).toBeCloseTo(
        0.002 * (1 + leap) + 0.003 * (2 - leap),
        12,
      );
  });

  test('a year’s evaporation and rain come out whole, December to January too', () => {
    const tenths = [...Array(12).keys()].map((m) => `${(m + 1) / 10} mm/d`);
    const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    const site = open(
      { starts: '2030-07-01T00:00', span: '365 d', weather: { evaporation: tenths, rain: depths } },
      { ...upright10, level: -0.8 },
    );
    const ledger = ledgerOf(marched(site).march.record);
    // Ten square meters of pond.
    expect(ledger.in.rain).toBeCloseTo(10 * depths.reduce((sum, _, m) => sum + 0.01 * (m + 1), 0), 9);
    expect(ledger.out.evaporation).toBeCloseTo(10 * days.reduce((sum, d, m) => sum + d * 0.0001 * (m + 1), 0), 9);
  });
});
