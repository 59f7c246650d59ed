import { describe, expect, test } from 'vitest';
import { inWords } from '../../web/plots/level-words.ts';
import type { Limit, Line } from '../../web/plots/subjects.ts';
import { flowScale, levelScale } from '../../web/plots/value-scale.ts';
import { axisUnit, valueTicks } from '../../web/plots/value-ticks.ts';

const place = { top: 0, bottom: 150, display: 'metric' } as const;
const times = Float64Array.of(0, 3600);

const level = (key: string, edge: number | undefined, ...values: number[]): Line => ({
  key,
  name: key,
  measure: 'level',
  times,
  values: Float64Array.from(values),
  edge,
  usual: true,
});
const flow = (...values: number[]): Line => ({ ...level('main', undefined, ...values), measure: 'flow' });

const pond = level('pond', 0.05, -0.1, -0.04);
const edge: Limit = { name: 'edge', elevation: 0.05, look: 'edge' };

describe('the scale of levels', () => {
  test('puts every basin’s own edge at nought, and depths downward', () => {
    const pool = level('upper pool', 0.75, 0.6, 0.7);
    const { y } = levelScale([pond, pool], [edge], 'depth', place);
    expect(y(0.05, pond)).toBeCloseTo(y(0.75, pool), 9);
    expect(y(-0.05, pond)).toBeCloseTo(y(0.65, pool), 9);
    expect(y(-0.1, pond)).toBeGreaterThan(y(-0.04, pond));
    expect(y(0.05, pond)).toBe(0);
  });

  test('is told in depths without a sign, nought at the edge', () => {
    const { ticks, unit } = levelScale([pond], [edge], 'depth', place);
    expect(unit).toBe('mm');
    expect(ticks.map(({ label }) => label)).toEqual(['0', '50', '100', '150']);
    expect(ticks[0]!.y).toBe(0);
    expect(ticks[2]!.y).toBeCloseTo(levelScale([pond], [edge], 'depth', place).y(-0.05, pond), 9);
  });

  test('by elevation takes in the first line and its limits, and true heights', () => {
    const pool = level('upper pool', 0.75, 0.6, 0.7);
    const { y, ticks } = levelScale([pond, pool], [edge], 'elevation', place);
    expect(y(0.6, pool)).toBeLessThan(0);
    expect(y(-0.1, pond)).toBeLessThan(150);
    expect(ticks.find(({ label }) => label === '0')!.y).toBeCloseTo(y(0, pond), 9);
    expect(ticks.find(({ label }) => label === '−100')!.y).toBeCloseTo(y(-0.1, pond), 9);
  });

  test('does not blow a ripple of a tenth of a millimeter up to a wave', () => {
    const still = level('vault', undefined, -0.1, -0.1001);
    const { y } = levelScale([still], [], 'elevation', place);
    expect(y(-0.1001, still) - y(-0.1, still)).toBeLessThan(1);
  });
});

describe('the scale of flows', () => {
  test('stands on nought, and reaches below it for water that runs the other way', () => {
    expect(flowScale([flow(0, 0.002)], place).y(0, pond)).toBe(150);
    expect(flowScale([flow(-0.001, 0.002)], place).y(0, pond)).toBeLessThan(110);
  });

  test('has its unit by size: 1,900 gph as pumps are sold, 10 gpm as feeds are read', () => {
    expect(flowScale([flow(0.002, 0.002)], { ...place, display: 'us' }).unit).toBe('gph');
    expect(flowScale([flow(0.0006, 0.0006)], { ...place, display: 'us' }).unit).toBe('gpm');
    expect(flowScale([flow(0.02, 0.02)], place).unit).toBe('m³/h');
  });
});

describe('ticks of a scale', () => {
  test('are round in the unit shown: whole inches stand at multiples of 25.4 mm', () => {
    const ticks = valueTicks([0, 0.1016], 'in', 'level', 4);
    expect(ticks.map(({ label }) => label)).toEqual(['0', '1', '2', '3', '4']);
    expect(ticks[3]!.at).toBeCloseTo(0.0762, 12);
  });

  test('go by 1, 2 or 5 times a power of ten, whatever the range', () => {
    for (const range of [0.0007, 0.003, 0.012, 0.04, 0.3, 1.7]) {
      const ticks = valueTicks([0, range], 'mm', 'level', 4);
      const step = ticks[1]!.at * 1000;
      const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
      expect([1, 2, 5].some((each) => Math.abs(each - lead) < 1e-6)).toBe(true);
      expect(ticks.length).toBeGreaterThan(2);
      expect(ticks.length).toBeLessThan(9);
    }
  });

  test('of feet and meters begin where inches and millimeters end', () => {
    expect(axisUnit('level', 1.1, 'us')).toBe('in');
    expect(axisUnit('level', 1.3, 'us')).toBe('ft');
    expect(axisUnit('level', 2.1, 'metric')).toBe('m');
  });
});

test('a level is told from its edge or as an elevation, a flow as it is', () => {
  expect(inWords(-0.1, pond, 'metric', 'depth')).toBe('150 mm below its edge');
  expect(inWords(0.06, pond, 'metric', 'depth')).toBe('10 mm over its edge');
  expect(inWords(-0.1, pond, 'metric', 'elevation')).toBe('−100 mm');
  expect(inWords(0.002, flow(), 'us', 'depth')).toBe('1,900 gph');
});
