/**
 * How long a drop stays in mixed tanks one behind the other: the distribution of the sum of exponential stays, of N
 * equal tanks (a gamma distribution) and of a pure delay.
 *
 * The closed form by partial fractions cancels to nothing where two stays are nearly alike, so the sum is written as a
 * mixture instead: each stay is a random number of shorter ones of one common rate Λ, the fastest of all (uniformization,
 * Jensen 1953, Skand. Aktuarietidskr. 36; a tank of rate a < Λ is a geometric number of them, N tanks a negative binomial
 * one). With w(n) the probability of n short stays in all, and p(m; x) Poisson's,
 *   E(t) = Λ Σ p(m; Λt) w(m + 1),   F(t) = Σ p(m; Λt) Σ_{n ≤ m} w(n).
 * Every term is positive: nothing cancels, at no ratio of the stays, and what is left out is known.
 */
export interface Passage {
  /** Pure delay in front of everything, s. */
  readonly delay: number;
  /** Λ, 1/s; 0 where there is nothing but the delay. */
  readonly rate: number;
  /** w(n) from n = `first` on, and its running sum. */
  readonly first: number;
  readonly weight: Float64Array;
  readonly sum: Float64Array;
}

export interface Stays {
  /** Mean stays in single mixed tanks, s, ≥ 0. */
  readonly mixed: readonly number[];
  /** N equal tanks and the mean stay in all of them together, s. */
  readonly series: { readonly tanks: number; readonly stay: number } | undefined;
  /** s */
  readonly delay: number;
}

/** A part that spreads the passage by less than this share of its mean counts as a delay: E moves by its square. */
const SHORT = 1e-3;
/** Probability left out at the ends of each distribution. */
const TAIL = 1e-16;

/** The passage through tanks and a delay; a sum does not mind their order. */
export function makePassage({ mixed, series, delay }: Stays): Passage {
  const mean = mixed.reduce((sum, stay) => sum + stay, delay + (series?.stay ?? 0));
  const long = mixed.filter((stay) => stay > SHORT * mean);
  const spreads = series !== undefined && series.stay > SHORT * mean * Math.sqrt(series.tanks);
  const kept = long.reduce((sum, stay) => sum + stay, spreads ? series.stay : 0);
  const rates = long.map((stay) => 1 / stay);
  const tankRate = spreads ? series.tanks / series.stay : 0;
  const rate = Math.max(tankRate, ...rates, 0);
  if (rate === 0) return { delay: mean, rate, first: 0, weight: new Float64Array(0), sum: new Float64Array(0) };
  const start = spreads ? negativeBinomial(series.tanks, tankRate / rate) : { first: 0, weight: Float64Array.of(1) };
  const { first, weight } = rates.reduce((so, own) => withGeometric(so, own / rate), start);
  let total = 0;
  const sum = weight.map((w) => {
    total += w;
    return total;
  });
  return { delay: Math.max(0, mean - kept), rate, first, weight, sum };
}

interface Counts {
  readonly first: number;
  readonly weight: Float64Array;
}

/** Number of short stays in N tanks of share p of the common rate: N + j, j negative binomial. */
function negativeBinomial(tanks: number, p: number): Counts {
  const q = 1 - p;
  const mode = Math.floor(((tanks - 1) * q) / p);
  const up = [1];
  for (let j = mode + 1; up[up.length - 1] > TAIL; j++) up.push((up[up.length - 1] * (tanks + j - 1) * q) / j);
  const down = [1];
  for (let j = mode; j > 0 && down[down.length - 1] > TAIL; j--)
    down.push((down[down.length - 1] * j) / ((tanks + j - 1) * q));
  const weight = Float64Array.from([...down.slice(1).reverse(), ...up]);
  const total = weight.reduce((sum, w) => sum + w, 0);
  return { first: tanks + mode + 1 - down.length, weight: weight.map((w) => w / total) };
}

/** Adds the geometric number of a tank of share p of the common rate. */
function withGeometric({ first, weight }: Counts, p: number): Counts {
  if (p >= 1) return { first: first + 1, weight };
  const out: number[] = [];
  for (let n = 0, w = 0, left = 1; n < weight.length || left > TAIL; n++) {
    w = (1 - p) * w + p * (weight[n] ?? 0);
    out.push(w);
    left -= w;
    // Past the last weight what is left decays by (1 − p) a step.
    if (n >= weight.length && w < TAIL * p) break;
  }
  return { first: first + 1, weight: Float64Array.from(out) };
}

/** Share of what has entered at once that has passed after t s, 0..1. */
export function passedBy(p: Passage, t: number): number {
  const x = p.rate * (t - p.delay);
  if (p.rate === 0 || x < 0) return t >= p.delay && p.rate === 0 ? 1 : 0;
  if (isOver(p, x)) return p.sum[p.sum.length - 1];
  return poissonMean(x, (m) => (m < p.first ? 0 : p.sum[Math.min(m - p.first, p.sum.length - 1)]));
}

/** Rate at which it passes after t s, 1/s; 0 where it all passes in one instant. */
export function passingAt(p: Passage, t: number): number {
  const x = p.rate * (t - p.delay);
  if (p.rate === 0 || x < 0 || isOver(p, x)) return 0;
  return p.rate * poissonMean(x, (m) => p.weight[m + 1 - p.first] ?? 0);
}

/** Whether so many short stays are to be expected that all counts with any weight lie ten deviations below. */
const isOver = ({ first, weight }: Passage, expected: number): boolean =>
  expected - 10 * Math.sqrt(expected) > first + weight.length;

/** Mean of a value over Poisson's distribution of a mean, from its mode outward. */
function poissonMean(mean: number, value: (m: number) => number): number {
  const mode = Math.floor(mean);
  let total = 1;
  let sum = value(mode);
  for (let m = mode + 1, w = mean / m; w > TAIL; m++, w *= mean / m) {
    total += w;
    sum += w * value(m);
  }
  for (let m = mode - 1, w = mode / mean; m >= 0 && w > TAIL; w *= m / mean, m--) {
    total += w;
    sum += w * value(m);
  }
  return sum / total;
}
