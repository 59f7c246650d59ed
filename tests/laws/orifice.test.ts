import { describe, expect, test } from 'vitest';
import { holeFlow, overflowPipeFlow } from '../../sim/laws/orifice.ts';
import { bisect, relativeError, worstSlope } from './differences.ts';

const out = new Float64Array(2);
const hole = ([head]: readonly number[]) => {
  holeFlow(2e-6, head, out);
  return { value: out[0], slopes: [out[1]] };
};
const pipe = ([head]: readonly number[]) => {
  overflowPipeFlow(0.05, head, out);
  return { value: out[0], slopes: [out[1]] };
};

describe('a hole', () => {
  test('lets out a √(2 g h), linear below a millimeter, nothing from below', () => {
    expect(relativeError(hole([0.3]).value, 2e-6 * Math.sqrt(2 * 9.80665 * 0.3))).toBeLessThan(1e-15);
    expect(relativeError(hole([0.0005]).value, hole([0.001]).value / 2)).toBeLessThan(1e-14);
    expect(hole([0]).value).toBe(0);
    expect(hole([-0.2])).toEqual({ value: 0, slopes: [0] });
  });

  test('has slopes that equal differences on both sides of the millimeter', () => {
    for (const h of [2e-4, 0.00099, 0.00101, 0.02, 1]) expect(worstSlope(hole, [h], 1e-4)).toBeLessThan(1e-9);
    expect(hole([0.001 - 1e-15]).value).toBeCloseTo(hole([0.001 + 1e-15]).value, 12);
  });
});

describe('a standing overflow pipe', () => {
  test('is a weir round its edge at first and its mouth as an orifice from then on', () => {
    const weir = (h: number): number => 1.08 * (2 / 3) ** 1.5 * Math.sqrt(9.80665) * Math.PI * 0.05 * h ** 1.5;
    const mouth = (h: number): number => 0.6 * (Math.PI / 4) * 0.05 ** 2 * Math.sqrt(2 * 9.80665 * h);
    const seam = bisect((h) => weir(h) - mouth(h), 1e-4, 1);
    expect(relativeError(pipe([0.5 * seam]).value, weir(0.5 * seam))).toBeLessThan(1e-14);
    expect(relativeError(pipe([2 * seam]).value, mouth(2 * seam))).toBeLessThan(1e-14);
    for (const h of [0.1 * seam, 0.99 * seam, 1.01 * seam, 0.3]) expect(worstSlope(pipe, [h], 1e-4)).toBeLessThan(1e-8);
    expect(relativeError(pipe([seam * (1 + 1e-12)]).value, pipe([seam * (1 - 1e-12)]).value)).toBeLessThan(1e-11);
  });

  test('takes nothing below its edge', () => {
    expect(pipe([-0.1])).toEqual({ value: 0, slopes: [0] });
  });
});
