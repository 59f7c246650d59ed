/**
 * Facts that crews know from the work itself: common practice, no source. Each is asked of a whole small site, read
 * as any file is.
 */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import { channelingCheck } from '../../sim/results/checks/channeling.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { seriesOf } from '../../sim/results/series.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { fill } from '../../sim/trials/filling.ts';

const GPH = 0.003785411784 / 3600;
const INCH = 0.0254;

const level = (width: number, z: number): [number, number][] => [
  [0, z],
  [width, z],
];

const upright = (floor: number, top: number, area: number): [number, number][] => [
  [floor, area],
  [top, area],
];

/** A pump that gives one flow (gal/h) nearly whatever it lifts. */
const steady = (gph: number): [number, number][] => [
  [0, 14],
  [0.99 * gph * GPH, 10],
  [1.01 * gph * GPH, 1],
];

const vault = { profile: upright(-1, 0.05, 0.5) };
const pump = { suction: -0.95, minimum: -0.75 };
const base = { span: '1 h', intake: { width: 0.8, elevation: -0.3 }, vault };
const pond = { profile: upright(-0.8, 0, 15), level: -0.1, rim: { crest: level(2, 0) } };

function read(file: object): Scenario {
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

describe('a waterfall filter box of usual size, its lip 0.6 m wide', () => {
  const box = (gph: number, sides: number): BalanceAnswer =>
    balance(
      read({
        ...base,
        pond,
        pump: { ...pump, curve: steady(gph) },
        plumbing: {
          main: { size: '4 in', length: 6 },
          bottomFeed: { size: '3 in', length: 1, inlet: 0.4 },
        },
        filter: {
          profile: upright(0.3, 1.2, 0.45),
          lip: { crest: level(0.6, 1) },
          rim: { crest: level(2.2, 1 + sides) },
        },
      }),
    );

  test('carries 10,000 gal/h with 45 mm over its lip', () => {
    const { levels, flows } = box(10_000, 0.05);
    expect(Math.abs(flows.main / (10_000 * GPH) - 1)).toBeLessThan(0.01);
    expect(levels.filter - 1).toBeGreaterThan(0.0435);
    expect(levels.filter - 1).toBeLessThan(0.0465);
    expect(flows['filter rim']).toBe(0);
  });

  test('pushes water over sides of 45 to 50 mm from there on', () => {
    expect(box(9_500, 0.045).flows['filter rim']).toBe(0);
    expect(box(10_600, 0.045).flows['filter rim']).toBeGreaterThan(0);
    expect(box(12_200, 0.05).flows['filter rim']).toBeGreaterThan(0);
  });
});

describe('100 gal/h per inch of spillway', () => {
  const stone = (cd: number): BalanceAnswer['stones'][string] =>
    balance(
      read({
        ...base,
        pond,
        pump: { ...pump, curve: steady(2400) },
        plumbing: { main: { size: '2 in', length: 5 }, topFeed: { size: '2 in', length: 1, outlet: 1, to: 'pool' } },
        watercourse: [
          {
            name: 'pool',
            kind: 'pool',
            profile: upright(0.3, 0.8, 1),
            stones: [{ name: 'stone', crest: level(24 * INCH, 0.6), cd }],
            rim: { crest: level(1, 0.75) },
          },
        ],
      }),
    ).stones.stone;

  test('gives a sheet of 12 mm, its critical depth', () => {
    expect(stone(0.9).criticalDepth).toBeGreaterThan(0.0117);
    expect(stone(0.9).criticalDepth).toBeLessThan(0.0124);
  });

  test.each([0.9, 1.0, 1.08])('and 17 to 20 mm of water behind the stone, Cd %f', (cd) => {
    expect(stone(cd).head).toBeGreaterThan(0.0168);
    expect(stone(cd).head).toBeLessThan(0.0201);
  });
});

/** A pump of some 8,000 gal/h, 3 inch main, 2 inch feeds, a filter of the usual size with 2 mm round its mats. */
const eightThousand = (topValve: number, porosity: number): Scenario =>
  read({
    ...base,
    pond,
    pump: {
      ...pump,
      curve: [
        [0, 8],
        [4000 * GPH, 7],
        [8000 * GPH, 2.9],
        [9000 * GPH, 0.8],
      ],
    },
    plumbing: {
      main: { size: '3 in', length: 9, fittings: { elbow90: 4, entrance: 1 }, k: 2.5 },
      tee: 0.4,
      bottomFeed: { size: '2 in', length: 1.8, fittings: { elbow90: 2 }, k: 1, inlet: 0.4 },
      topFeed: { size: '2 in', length: 1.8, fittings: { elbow90: 2 }, k: 1, outlet: 1.1, valve: topValve },
    },
    filter: {
      profile: upright(0.3, 1.2, 0.43),
      media: {
        bottom: 0.5,
        area: 0.42,
        perimeter: 2.6,
        gap: 0.002,
        layers: [
          { name: 'mats', thickness: 0.1, porosity: 0.9, grain: 0.002 },
          { name: 'bags', thickness: 0.25, porosity, grain: 0.008 },
        ],
        submergedWeight: 60,
      },
      lip: { crest: level(0.6, 1) },
      rim: { crest: level(2.2, 1.1) },
    },
  });

const CLEAN = 0.8;
/** What muck leaves of a seasoned bed's pores. Deposit is not computed: the file states what is left of them. */
const SEASONED = 0.42;

describe('a pump of about 8,000 gal/h in 3 inch pipe with 2 inch feeds', () => {
  const { duty, split, flows } = balance(eightThousand(1, CLEAN));

  test('runs 1.8 m/s in the main and 1.9 m/s in the feeds', () => {
    expect(flows.main / GPH).toBeGreaterThan(7_800);
    expect(flows.main / GPH).toBeLessThan(8_200);
    expect(Math.abs(duty.velocity.main - 1.8)).toBeLessThan(0.1);
    const feeds = (duty.velocity['bottom feed'] + duty.velocity['top feed']) / 2;
    expect(Math.abs(feeds - 1.9)).toBeLessThan(0.1);
  });

  test('sends about half of that up through the filter, both valves open', () => {
    expect(split).toBeGreaterThan(0.45);
    expect(split).toBeLessThan(0.56);
  });

  test('channels through a seasoned filter with all of it, and does not with half', () => {
    const half = eightThousand(1, SEASONED);
    const whole = eightThousand(0, SEASONED);
    expect(balance(half).lift).toBeLessThan(1);
    expect(channelingCheck({ scenario: half, balance: balanceOf(half) })?.verdict).not.toBe('fail');
    expect(balance(whole).lift).toBeGreaterThan(1);
    expect(channelingCheck({ scenario: whole, balance: balanceOf(whole) })?.verdict).toBe('fail');
  });

  test('lifts no clean coarse media, even with all of it', () => {
    expect(balance(eightThousand(0, CLEAN)).lift).toBeLessThan(0.25);
  });
});

test('a bare freeform pond of 14 × 20 × 3 ft fills overnight from a hose of 9 gal/min', () => {
  const site = read({
    ...base,
    span: '24 h',
    pond: {
      shape: { plan: 'freeform', length: '20 ft', width: '14 ft', depth: '3 ft' },
      level: 'empty',
      fillMark: '-2 in',
      rim: { crest: level(2, 0) },
    },
    pump: { ...pump, curve: steady(4000), running: false },
    plumbing: { main: { size: '3 in', length: 9 }, topFeed: { size: '2 in', length: 1, outlet: 1 } },
    supply: { hose: { flow: '9 gpm' } },
  });
  const hours = (fill(site)?.time ?? 0) / 3600;
  expect(hours).toBeGreaterThan(8);
  expect(hours).toBeLessThan(11);
});

describe('a second stone set slightly higher', () => {
  const site = read({
    ...base,
    span: '10 min',
    start: 'standing',
    pond,
    pump: { ...pump, curve: steady(4000) },
    plumbing: { main: { size: '3 in', length: 5 }, topFeed: { size: '2 in', length: 1, outlet: 1, to: 'pool' } },
    watercourse: [
      {
        name: 'pool',
        kind: 'pool',
        profile: upright(0.3, 0.8, 1.5),
        level: 0.5,
        stones: [
          { name: 'first', main: true, crest: level(0.6, 0.6) },
          { name: 'second', crest: level(0.6, 0.61) },
        ],
        rim: { crest: level(1, 0.75) },
      },
    ],
  });

  test('runs second', () => {
    const { t, flows } = seriesOf(run(site).record, 1);
    const begins = (name: string): number => t[flows[name]!.findIndex((q) => q > 1e-6)]!;
    expect(begins('first')).toBeGreaterThan(0);
    expect(begins('second')).toBeGreaterThan(begins('first'));
  });

  test('and takes the smaller share', () => {
    const { first, second } = balance(site).stones;
    expect(second!.share).toBeGreaterThan(0);
    expect(second!.share).toBeLessThan(first!.share);
  });
});
