/** The values within a range for which something fails, and so the places where an answer turns. */

export type Stretch = readonly [from: number, to: number];

/** A range is looked at this often before it is narrowed down: two turns nearer than that are not seen apart. */
const LOOKS = 12;

/**
 * Stretches of a range on which a margin is negative, or has no value; ascending, their ends narrowed by halving.
 *
 * @param margin by the value; undefined where the site has no answer there
 * @param within how near the ends are found, > 0, in the value's unit
 */
export function failingStretches(
  margin: (value: number) => number | undefined,
  [low, high]: Stretch,
  within: number,
): Stretch[] {
  const fails = (value: number): boolean => !((margin(value) ?? -1) >= 0);
  const at = (i: number): number => (i === LOOKS ? high : low + ((high - low) * i) / LOOKS);
  const stretches: Stretch[] = [];
  let from = fails(low) ? low : undefined;
  for (let i = 1; i <= LOOKS; i++) {
    const failing = from !== undefined;
    if (fails(at(i)) === failing) continue;
    const turn = narrow((value) => fails(value) === failing, at(i - 1), at(i), within);
    if (from !== undefined) stretches.push([from, turn]);
    from = failing ? undefined : turn;
  }
  if (from !== undefined) stretches.push([from, high]);
  return stretches;
}

/** Where something that is so at `from` and not at `to` ceases to be so. */
function narrow(isSo: (value: number) => boolean, from: number, to: number, within: number): number {
  let so = from;
  let not = to;
  while (not - so > within) {
    const mid = (so + not) / 2;
    if (isSo(mid)) so = mid;
    else not = mid;
  }
  return (so + not) / 2;
}
