import { describe, expect, test } from 'vitest';
import { conveyance, jarrettManning, normalDepth, streamFlow } from '../../sim/laws/stream.ts';
import { relativeError, worstSlope } from './differences.ts';

const out = new Float64Array(2);

describe('a stream', () => {
  test('flows by Manning at normal depth', () => {
    const c = conveyance(0.4, 0.09, 0.05);
    streamFlow(c, 0.02, out);
    expect(relativeError(out[0], (0.4 / 0.05) * 0.02 ** (5 / 3) * 0.3)).toBeLessThan(1e-14);
  });

  test('has the depth whose flow it is', () => {
    const c = conveyance(0.6, 0.03, 0.1);
    for (const y of [1e-4, 0.01, 0.3]) {
      streamFlow(c, y, out);
      expect(relativeError(normalDepth(out[0], c), y)).toBeLessThan(1e-14);
    }
  });

  test('has slopes that equal differences and none when dry', () => {
    const law = ([y]: readonly number[]) => {
      streamFlow(1.7, y, out);
      return { value: out[0], slopes: [out[1]] };
    };
    for (const y of [1e-5, 0.004, 0.05, 1])
      expect(worstSlope(law, [y], 1e-3 * Math.min(1, y / 1e-3))).toBeLessThan(1e-8);
    for (const y of [-0.1, 0]) {
      streamFlow(1.7, y, out);
      expect([...out]).toEqual([0, 0]);
    }
  });

  test('over stones is rougher the shallower and the steeper it runs', () => {
    // Jarrett (1984) in feet: n = 0.39 S^0.38 R^−0.16; in meters 0.3225, printed 0.32.
    expect(relativeError(jarrettManning(0.02, 0.3), 0.39 * 0.02 ** 0.38 * (0.3 / 0.3048) ** -0.16)).toBeLessThan(0.01);
    expect(jarrettManning(0.02, 0.05)).toBeGreaterThan(jarrettManning(0.02, 0.3));
    expect(jarrettManning(0.04, 0.3)).toBeGreaterThan(jarrettManning(0.02, 0.3));
  });
});
