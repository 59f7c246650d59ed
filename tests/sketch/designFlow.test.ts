/** The flow a site is laid out for, against closed forms and against the running balance of the site it leads to. */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { randomStream } from '../../sim/random.ts';
import { readSketch } from '../../sim/scenario/keys/sketch.ts';
import { type DesignSite, designFlow } from '../../sim/sketch/designFlow.ts';
import { Draft } from '../../sim/sketch/draft.ts';
import { siteOf } from './sites.ts';

/** Pipes so wide that they cost nothing. */
const WIDE = { bore: 10, length: 1, elbows: 0 };
const free: DesignSite = { curve: { flow: 0.004, head: 6 }, main: WIDE, mainLoss: 0, feed: WIDE, feeds: 2, lift: 1.5 };

describe('the design flow', () => {
  test('without losses is the box’s parabola at the lift: Q_max √(1 − z/H₀)', () => {
    expect(designFlow(free)).toBeCloseTo(0.004 * Math.sqrt(1 - 1.5 / 6), 8);
    expect(designFlow({ ...free, lift: 6 })).toBe(0);
  });

  test('of a pump far too strong is the square law of the pipe: √(z 2g A²/K)', () => {
    const main = { bore: 0.05, length: 10, elbows: 0 };
    const q = designFlow({ ...free, curve: { flow: 1e4, head: 11.5 }, main, mainLoss: 3 });
    const area = (Math.PI / 4) * 0.05 ** 2;
    expect(q).toBeCloseTo(Math.sqrt((10 * 2 * 9.80665 * area ** 2) / ((0.02 * 10) / 0.05 + 3)), 7);
  });

  test('of rated points on a straight line meets the losses there', () => {
    const curve = [
      [0, 6],
      [0.002, 4],
      [0.006, 0],
    ] as const;
    expect(designFlow({ ...free, curve })).toBeCloseTo(0.0045, 8);
    expect(designFlow({ ...free, curve, lift: 7 })).toBe(0);
  });
});

/** How far the design flow lies from the balance of the site, a fraction. */
function off(sketch: Record<string, unknown>): number {
  const raw = { sketch };
  const typed = readSketch(sketch, () => {});
  return new Draft(raw, typed).designFlow / balance(siteOf(raw)).flows['main'] - 1;
}

describe('against the running balance', () => {
  test.each([
    [8, 6, 2, 1500, 12],
    [11, 8, 2, 2400, 15],
    [16, 11, 2.5, 3600, 18],
    [20, 14, 3, 5200, 20],
    [25, 16, 3, 8000, 22],
    [30, 20, 4, 12000, 25],
  ])('is within 1.1 %% on a pond of %s × %s × %s ft with a pump of %s gph and %s ft', (l, w, d, flow, head) => {
    const pump = { flow: `${flow} gph`, head: `${head} ft` };
    expect(Math.abs(off({ length: `${l} ft`, width: `${w} ft`, depth: `${d} ft`, pump }))).toBeLessThan(0.011);
  });

  test('is within 5 % on thirty random sites, with both feeds or one', () => {
    const random = randomStream('design flow');
    const between = (a: number, b: number) => a + (b - a) * random();
    for (let i = 0; i < 30; i += 1) {
      const length = between(8, 30);
      const sketch = {
        length: `${length} ft`,
        width: `${length * between(0.55, 0.8)} ft`,
        depth: `${between(1.5, 4)} ft`,
        pump: { flow: `${between(1200, 12000)} gph`, head: `${between(10, 30)} ft` },
        lip: `${between(20, 60)} in`,
        feeds: ['both', 'both', 'bottom', 'top'][Math.floor(between(0, 4))],
      };
      expect(Math.abs(off(sketch)), JSON.stringify(sketch)).toBeLessThan(0.05);
    }
  });
});
