import { describe, expect, test } from 'vitest';
import { evaporationFlow, floatValveFlow } from '../../sim/laws/surface.ts';
import { derivative, relativeError, worstSlope } from './differences.ts';

const out = new Float64Array(2);
const rate = 6e-8;

/** A basin whose open area is 2 + 3 × depth. */
const evaporation = ([depth]: readonly number[]) => {
  evaporationFlow(rate, 2 + 3 * depth, 3, depth, out);
  return { value: out[0], slopes: [out[1]] };
};
const float = ([level]: readonly number[]) => {
  floatValveFlow(2e-4, -0.05, -0.01, level, out);
  return { value: out[0], slopes: [out[1]] };
};

describe('evaporation', () => {
  test('is rate times area, and fades over the last millimeter', () => {
    expect(evaporation([0.2]).value).toBeCloseTo(rate * 2.6, 20);
    expect(evaporation([0.0005]).value).toBeCloseTo(rate * 2.0015 * 0.5, 20);
    expect(evaporation([0]).value).toBe(0);
    expect(evaporation([-1e-9]).value).toBe(0);
  });

  test('has slopes that equal differences, from above at the floor', () => {
    for (const depth of [1e-4, 0.00099, 0.00101, 0.3])
      expect(worstSlope(evaporation, [depth], 1e-5)).toBeLessThan(1e-7);
    const fromAbove = derivative((d) => evaporation([d]).value, 2e-9, 1e-10);
    expect(relativeError(evaporation([0]).slopes[0], fromAbove)).toBeLessThan(1e-6);
  });

  test('never takes a film below its floor: depth falls as exp(−rate t/1 mm)', () => {
    let depth = 0.001;
    const step = 20;
    const hours = 24;
    for (let t = 0; t < hours * 3600; t += step) {
      evaporationFlow(rate, 2, 0, depth, out);
      const half = depth - (0.5 * step * out[0]) / 2;
      evaporationFlow(rate, 2, 0, half, out);
      depth -= (step * out[0]) / 2;
    }
    expect(relativeError(depth, 0.001 * Math.exp((-rate * hours * 3600) / 0.001))).toBeLessThan(1e-5);
  });
});

describe('a float valve', () => {
  test('is full at its low level, shut at its set level, and straight between', () => {
    expect(float([-0.2]).value).toBe(2e-4);
    expect(float([-0.05]).value).toBe(2e-4);
    expect(float([-0.03]).value).toBeCloseTo(1e-4, 18);
    expect(float([-0.01]).value).toBe(0);
    expect(float([0.3]).value).toBe(0);
  });

  test('has slopes that equal differences on both sides of both ends', () => {
    for (const level of [-0.06, -0.051, -0.049, -0.03, -0.0101, -0.0099, 0.2])
      expect(worstSlope(float, [level], 1e-5)).toBeLessThan(1e-8);
  });
});
