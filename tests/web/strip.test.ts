import { describe, expect, test } from 'vitest';
import { timeTicks, valueTicks } from '../../web/plots/axes.ts';
import { drawStrip, type Frame, type Subject } from '../../web/plots/strip.ts';

const frame: Frame = { width: 480, height: 100, window: [0, 86_400], starts: '2031-06-01T06:00', display: 'metric' };

/** A pond whose edge is at 50 mm: at noon it rises from 150 mm to 90 mm below the edge within 3 minutes. */
const pond: Subject = {
  name: 'pond',
  measure: 'level',
  times: Float64Array.of(0, 21_600, 21_780, 86_400),
  values: Float64Array.of(-0.1, -0.1, -0.04, -0.04),
  edge: 0.05,
  marks: [{ name: 'edge', value: 0.05, always: true }],
};

const flow: Subject = {
  name: 'main line',
  measure: 'flow',
  times: Float64Array.of(0, 21_600, 21_600, 86_400),
  values: Float64Array.of(0.002, 0.002, 0, 0),
  edge: undefined,
  marks: [],
};

const numbers = (path: string): number[] => [...path.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number);

describe('a strip', () => {
  test('says in a sentence what it draws, levels from the edge and moments by the clock', () => {
    expect(drawStrip(pond, frame).says).toBe(
      'pond: from 150 mm below its edge to 90 mm below its edge; lowest 150 mm below its edge at 06:00, highest 90 mm below its edge at 12:03.',
    );
  });

  test('draws the pond’s edge wherever the water stands, above the water', () => {
    const { marks, line, valueTicks } = drawStrip(pond, frame);
    expect(marks.map(({ label }) => label)).toEqual(['edge']);
    const heights = numbers(line).filter((_, i) => i % 2 === 1);
    expect(Math.min(...heights)).toBeGreaterThan(marks[0]!.at);
    expect(valueTicks.find(({ label }) => label === '0')!.at).toBe(marks[0]!.at);
  });

  test('puts noon a quarter along a day that begins at six', () => {
    const noon = drawStrip(pond, frame).timeTicks.find(({ label }) => label === '12:00');
    expect(noon!.at).toBe(120);
  });

  test('fills a flow down to zero and leaves a level open', () => {
    const { area, valueTicks } = drawStrip(flow, frame);
    expect(valueTicks.find(({ label }) => label === '0')!.at).toBe(100);
    expect(Math.max(...numbers(area).filter((_, i) => i % 2 === 1))).toBe(100);
    expect(drawStrip(pond, frame).area).toBe('');
  });

  test('keeps the fall of a flow that stops upright', () => {
    const points = numbers(drawStrip(flow, frame).line);
    const atNoon = points.filter((_, i) => i % 2 === 1 && points[i - 1] === 120);
    expect(atNoon.length).toBe(2);
  });

  test('does not blow a ripple of a tenth of a millimeter up to a wave', () => {
    const still: Subject = { ...pond, values: Float64Array.of(-0.1, -0.1001, -0.1, -0.1), marks: [], edge: undefined };
    const heights = numbers(drawStrip(still, frame).line).filter((_, i) => i % 2 === 1);
    expect(Math.max(...heights) - Math.min(...heights)).toBeLessThan(1);
  });

  test('tells a level that never moves once', () => {
    const still: Subject = { ...pond, values: Float64Array.of(-0.1, -0.1, -0.1, -0.1) };
    expect(drawStrip(still, frame).says).toBe('pond: 150 mm below its edge all the time.');
  });

  test('reads in inches and gallons where these are asked for', () => {
    expect(drawStrip(pond, { ...frame, display: 'us' }).unit).toBe('in');
    expect(drawStrip(flow, { ...frame, display: 'us' }).unit).toBe('gph');
    expect(drawStrip(flow, { ...frame, display: 'us' }).says).toContain('1,900 gph');
  });
});

describe('ticks', () => {
  test('are round in the unit shown: whole inches stand at multiples of 25.4 mm', () => {
    const ticks = valueTicks([0, 0.1016], 'in', 'level', 4);
    expect(ticks.map(({ label }) => label)).toEqual(['0', '1', '2', '3', '4']);
    expect(ticks[3]!.at).toBeCloseTo(0.0762, 12);
  });

  test('show minutes within a window of minutes, and days within a season', () => {
    expect(timeTicks('2031-06-01T06:00', [21_600, 22_800], 4).map(({ label }) => label)).toContain('12:05');
    expect(timeTicks('2031-06-01T06:00', [0, 90 * 86_400], 4).map(({ label }) => label)).toContain('Jul');
  });
});
