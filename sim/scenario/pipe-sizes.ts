/**
 * Inside diameters of plastic pressure pipe by its nominal size.
 *
 * Inch sizes: ASTM D1785 schedule 40, outside diameter less twice the minimum wall. Walls of 1/2 to 1 in read in a
 * public copy of the table, bores of 1 to 2 in in a state worksheet and 2 and 3 in in the Illinois Administrative
 * Code (Title 77, Part 906, Exhibit I); the rest from memory.
 * Metric sizes: EN ISO 1452-2 PN 10 (SDR 21 to 90 mm, SDR 26 from 110 mm), the outside diameter less twice the
 * minimum wall; walls from memory, within 0.1 mm of outside diameter over SDR. 20 and 25 mm are made no thinner than
 * 1.5 mm, which is more than PN 10.
 */

const MILLIMETER = 0.001;

/** [size, outside diameter in, minimum wall in] */
const SCHEDULE_40: readonly (readonly [string, number, number])[] = [
  ['1/2 in', 0.84, 0.109],
  ['3/4 in', 1.05, 0.113],
  ['1 in', 1.315, 0.133],
  ['1 1/4 in', 1.66, 0.14],
  ['1 1/2 in', 1.9, 0.145],
  ['2 in', 2.375, 0.154],
  ['2 1/2 in', 2.875, 0.203],
  ['3 in', 3.5, 0.216],
  ['4 in', 4.5, 0.237],
  ['5 in', 5.563, 0.258],
  ['6 in', 6.625, 0.28],
  ['8 in', 8.625, 0.322],
];

/** [outside diameter mm, minimum wall mm] */
const PN_10: readonly (readonly [number, number])[] = [
  [20, 1.5],
  [25, 1.5],
  [32, 1.6],
  [40, 1.9],
  [50, 2.4],
  [63, 3.0],
  [75, 3.6],
  [90, 4.3],
  [110, 4.2],
  [125, 4.8],
  [140, 5.4],
  [160, 6.2],
  [180, 6.9],
  [200, 7.7],
  [225, 8.6],
];

const BORES: ReadonlyMap<string, number> = new Map([
  ...SCHEDULE_40.map(([name, outside, wall]) => [name, (outside - 2 * wall) * 25.4 * MILLIMETER] as const),
  ...PN_10.map(([outside, wall]) => [`${outside} mm`, (outside - 2 * wall) * MILLIMETER] as const),
]);

export const PIPE_SIZES: readonly string[] = [...BORES.keys()];

/** Inside diameter in m of a nominal size, '1-1/2 in' as well as '1 1/2 in'; undefined where there is no such size. */
export function boreOf(size: string): number | undefined {
  return BORES.get(
    size
      .trim()
      .replace(/\s+/g, ' ')
      .replace(/^(\d)-(\d\/\d)/, '$1 $2')
      .replace(/(\d)(in|mm)$/, '$1 $2'),
  );
}
