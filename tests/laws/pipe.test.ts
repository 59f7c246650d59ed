import { describe, expect, test } from 'vitest';
import { guessFlow, makePipe, pipeLoss } from '../../sim/laws/pipe.ts';
import { bisect, relativeError, worstSlope } from './differences.ts';

const NU = 1.0035e-6;
const out = new Float64Array(2);

describe('head lost in a pipe', () => {
  const pipe = makePipe(0.05, 12, 1e-5, 3.2, NU);
  const law = ([flow]: readonly number[]) => {
    pipeLoss(pipe, flow, 1.3, out);
    return { value: out[0], slopes: [out[1]] };
  };

  test('has slopes that equal differences through laminar, transition and turbulent flow', () => {
    for (const re of [5e-4, 2e-3, 50, 1990, 2010, 3000, 3990, 4010, 2e4, 1e6]) {
      const flow = (re * Math.PI * 0.05 * NU) / 4;
      // The step is small beside the flow: worstSlope takes it relative to 1e-3 at least.
      const step = 1e-4 * Math.min(1, flow / 1e-3);
      expect(worstSlope(law, [flow], step), `Re ${re}`).toBeLessThan(1e-6);
    }
  });

  test('is Hagen–Poiseuille in slow flow, 128 ν L Q/(π g D⁴), and joins on to it from rest', () => {
    const bare = makePipe(0.02, 3, 1e-5, 0, NU);
    for (const re of [1e-6, 0.999e-3, 1.001e-3, 1, 1999]) {
      const flow = (re * Math.PI * 0.02 * NU) / 4;
      pipeLoss(bare, flow, 0, out);
      expect(relativeError(out[0], (128 * NU * 3 * flow) / (Math.PI * 9.80665 * 0.02 ** 4))).toBeLessThan(1e-12);
    }
    pipeLoss(bare, 0, 0, out);
    expect(out[0]).toBe(0);
    expect(relativeError(out[1], (128 * NU * 3) / (Math.PI * 9.80665 * 0.02 ** 4))).toBeLessThan(1e-14);
  });

  test('counts K on its own velocity head, and its fittings add to the friction', () => {
    const flow = 3e-3;
    const velocityHead = (flow / ((Math.PI / 4) * 0.05 ** 2)) ** 2 / (2 * 9.80665);
    pipeLoss(makePipe(0.05, 12, 1e-5, 0, NU), flow, 0, out);
    const friction = out[0];
    pipeLoss(pipe, flow, 1.3, out);
    expect(relativeError(out[0] - friction, 4.5 * velocityHead)).toBeLessThan(1e-13);
  });

  test('takes a short pipe for ten diameters', () => {
    pipeLoss(makePipe(0.05, 0, 1e-5, 0, NU), 1e-3, 0, out);
    const none = out[0];
    pipeLoss(makePipe(0.05, 0.5, 1e-5, 0, NU), 1e-3, 0, out);
    expect(out[0]).toBe(none);
    pipeLoss(makePipe(0.05, 0.6, 1e-5, 0, NU), 1e-3, 0, out);
    expect(relativeError(out[0], 1.2 * none)).toBeLessThan(1e-14);
  });

  test('is guessed within a factor 2 from laminar to turbulent', () => {
    for (const drive of [1e-7, 1e-5, 1e-3, 0.1, 5]) {
      const flow = bisect(
        (q) => {
          pipeLoss(pipe, q, 0, out);
          return out[0] - drive;
        },
        0,
        1,
      );
      const guess = guessFlow(pipe, drive, 0);
      expect(guess / flow).toBeGreaterThan(0.5);
      expect(guess / flow).toBeLessThan(2);
    }
  });
});
