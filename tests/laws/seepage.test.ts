import { expect, test } from 'vitest';
import { seepageFlow } from '../../sim/laws/seepage.ts';
import { worstSlope } from './differences.ts';

const out = new Float64Array(3);
const law = ([up, down]: readonly number[]) => {
  seepageFlow(3e-3, 0.1, up, down, out);
  return { value: out[0], slopes: [out[1], out[2]] };
};

test('seepage is proportional to what stands above the foot of its path, both ways', () => {
  expect(law([0.3, 0.05]).value).toBeCloseTo(3e-3 * 0.2, 16);
  expect(law([0.3, 0.25]).value).toBeCloseTo(3e-3 * 0.05, 16);
  expect(law([0.05, 0.3]).value).toBeCloseTo(-3e-3 * 0.2, 16);
  expect(law([0.05, 0.02]).value).toBe(0);
});

test('its slopes equal differences on every side of the foot', () => {
  for (const up of [0.02, 0.099, 0.101, 0.4])
    for (const down of [0.02, 0.099, 0.101, 0.4]) expect(worstSlope(law, [up, down], 1e-4)).toBeLessThan(1e-9);
});

test('a basin that only seeps empties as exp(−kt/A): half of it in ln 2 · A/k', () => {
  // Explicit midpoint steps of a second; the closed form is that of the linear reservoir.
  let level = 0.4;
  const seconds = Math.round((Math.LN2 * 2) / 3e-3);
  for (let t = 0; t < seconds; t++) {
    const half = level - (0.5 * law([level, -1]).value) / 2;
    level -= law([half, -1]).value / 2;
  }
  expect(level - 0.1).toBeCloseTo(0.3 * Math.exp((-3e-3 / 2) * seconds), 6);
});
