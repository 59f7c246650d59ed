/** Half-width of the middle 90 % of a normal distribution, in its standard deviations (JCGM 100:2008, table G.1: 1.645). */
export const NINETY = 1.6448536269514722;

/** A value by a standard normal figure u: the assumed value at 0, the ends of its band at ∓ 1.645. */
export type Spread = (u: number) => number;

/** Ends that lie this evenly about the value are taken as even. */
const EVEN = 1e-9;

/**
 * Spreads a value over its band, which is read as the middle 90 % (JCGM 100:2008, 4.3.4).
 *
 * The band need not lie evenly: the value follows a lognormal distribution with a threshold (Aitchison & Brown 1957, The
 * Lognormal Distribution, sec. 2.8), the one smooth rising curve c + a e^(bu) through the three points. It is straight
 * where they lie evenly and a plain lognormal where low : value = value : high.
 * @param low, high ends of the band, low < value < high
 */
export function spreadOver(value: number, [low, high]: readonly [number, number]): Spread {
  const ratio = (high - value) / (value - low);
  if (Math.abs(ratio - 1) < EVEN) return (u) => value + ((high - value) * u) / NINETY;
  const scale = (high - value) / (ratio - 1);
  const rate = Math.log(ratio) / NINETY;
  return (u) => value + scale * Math.expm1(rate * u);
}
