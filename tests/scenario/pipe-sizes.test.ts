import { describe, expect, test } from 'vitest';
import { boreOf, PIPE_SIZES } from '../../sim/scenario/pipe-sizes.ts';

describe('nominal pipe', () => {
  test('of 2 and 3 in has the bore of schedule 40 plastic pipe', () => {
    // The bores under the friction table for schedule 40 plastic pipe, Illinois Administrative Code 77, Part 906, App. A, Exhibit I.
    expect(boreOf('2 in')).toBeCloseTo(0.05248, 4);
    expect(boreOf('3 in')).toBeCloseTo(0.07792, 4);
  });

  test('of 1 to 2 in has the bores of schedule 40 in inches', () => {
    // ASTM D1785 schedule 40, as a public pipe data table repeats it.
    const bores = { '1 in': 1.049, '1 1/4 in': 1.38, '1 1/2 in': 1.61, '2 in': 2.067 };
    for (const [size, inches] of Object.entries(bores)) expect(boreOf(size)! / 0.0254).toBeCloseTo(inches, 3);
  });

  test('in metric sizes has the wall of SDR 21 to 90 mm and SDR 26 above, to a tenth of a millimeter', () => {
    // ISO 4065 (from memory): PN 10 is series S 10 to 90 mm and S 12.5 from 110 mm, which stands for 10^1.1; the wall is
    // the outside over 2 S + 1, rounded up.
    for (const size of PIPE_SIZES.filter((each) => each.endsWith(' mm'))) {
      const outside = Number.parseFloat(size);
      if (outside < 32) continue;
      const wall = (outside - boreOf(size)! * 1000) / 2;
      const series = outside / (2 * (outside <= 90 ? 10 : 10 ** 1.1) + 1);
      expect(wall - series).toBeGreaterThan(-0.01);
      expect(wall - series).toBeLessThan(0.11);
    }
  });

  test('is known as crews write it, and not where it is not made', () => {
    expect(boreOf('1-1/2 in')).toBe(boreOf('1 1/2 in'));
    expect(boreOf('90mm')).toBe(boreOf('90 mm'));
    expect([boreOf('7 in'), boreOf('3'), boreOf('')]).toEqual([undefined, undefined, undefined]);
  });

  test('never is as wide inside as outside, and widens with its size', () => {
    for (const unit of [' in', ' mm']) {
      const bores = PIPE_SIZES.filter((size) => size.endsWith(unit)).map((size) => boreOf(size)!);
      expect([...bores].sort((a, b) => a - b)).toEqual(bores);
    }
  });
});
