import type { DyeFigures } from './answer.ts';
import { bafflingOf } from './baffling.ts';
import { makePassage, type Passage, passedBy, passingAt } from './passage.ts';
import type { Waters } from './waters.ts';

/** Flows of a filter, m³/s: up through its bottom feed, of which through media and gap; from a top feed into it. */
export interface FilterFlows {
  readonly bottom: number;
  readonly media: number;
  readonly gap: number;
  readonly top: number;
}

export type Figures = Omit<DyeFigures, 'at' | 'says'>;

/** Points of the curve. */
const POINTS = 361;
/** The curve spans at least so many means, and goes on until so much has passed, but for so many means at the most. */
const LEAST_MEANS = 3;
const RECOVERED = 0.999;
const MOST_MEANS = 12;

/**
 * Figures of a pulse of dye in the plenum: a mixed tank; then N equal mixed tanks in series in the pores, beside plug
 * flow in the gap; then mixed free water, which a top feed dilutes.
 *
 * @param flows bottom > 0
 * @param tanks N, ≥ 1
 */
export function dyeFigures(volumes: Omit<Waters, 'beside'>, flows: FilterFlows, tanks: number): Figures {
  const { plenum, pore, gap, free } = volumes;
  const channeled = flows.gap / (flows.media + flows.gap);
  const times = {
    plenum: plenum / flows.bottom,
    media: flows.media > 0 ? pore / flows.media : null,
    gap: flows.gap > 0 ? gap / flows.gap : null,
    mixed: free / (flows.bottom + Math.max(0, flows.top)),
  };
  const moving = plenum + (times.media === null ? 0 : pore) + (times.gap === null ? 0 : gap);
  const T = moving / flows.bottom + times.mixed;
  const ways = waysThrough(times, channeled, tanks);
  const F = (t: number): number => ways.reduce((sum, { share, passage }) => sum + share * passedBy(passage, t), 0);
  const { mean, variance } = moments(times, channeled, tanks);
  const [t10, t50, t90] = [0.1, 0.5, 0.9].map((part) => timeOf(F, part, mean));
  const end = Math.min(MOST_MEANS * mean, Math.max(LEAST_MEANS * mean, timeOf(F, RECOVERED, mean)));
  const t = Float64Array.from({ length: POINTS }, (_, k) => (end * k) / (POINTS - 1));
  return {
    fed: true,
    flows,
    channeled,
    times,
    volumes: { plenum, pore, gap, free },
    tanks,
    mean,
    variance,
    t10,
    t50,
    t90,
    morrill: t90 / t10,
    T,
    baffling: t10 / T,
    ...bafflingOf(t10 / T),
    recovered: F(end),
    E: { t, through: density(ways[0], t), round: density(ways[1], t) },
    F: t.map(F),
  };
}

interface Way {
  readonly share: number;
  readonly passage: Passage;
}

function waysThrough({ plenum, media, gap, mixed }: Figures['times'], channeled: number, tanks: number): [Way, Way] {
  const both = [plenum, mixed];
  const series = { tanks, stay: media ?? 0 };
  return [
    { share: 1 - channeled, passage: makePassage({ mixed: both, series, delay: 0 }) },
    { share: channeled, passage: makePassage({ mixed: both, series: undefined, delay: gap ?? 0 }) },
  ];
}

/** First moment and second central moment: those of tanks and delay add along a way, and the two ways mix. */
function moments(
  { plenum, media, gap, mixed }: Figures['times'],
  channeled: number,
  tanks: number,
): { mean: number; variance: number } {
  const [m, g] = [media ?? 0, gap ?? 0];
  const between = channeled * (1 - channeled) * (m - g) ** 2;
  return {
    mean: plenum + (1 - channeled) * m + channeled * g + mixed,
    variance: plenum ** 2 + mixed ** 2 + ((1 - channeled) * m ** 2) / tanks + between,
  };
}

/** Earliest time at which a share has passed, s, to rounding; bisection, for F may jump. */
function timeOf(F: (t: number) => number, part: number, mean: number): number {
  let low = 0;
  let high = mean;
  while (F(high) < part) {
    low = high;
    high *= 2;
  }
  for (let i = 0; i < 50; i++) {
    const mid = (low + high) / 2;
    if (F(mid) < part) low = mid;
    else high = mid;
  }
  return high;
}

/** What passes by one way at each moment; what comes in one instant is spread over its own step of the curve. */
function density({ share, passage }: Way, t: Float64Array): Float64Array {
  if (share === 0) return new Float64Array(t.length);
  const step = t[1] - t[0];
  if (passage.rate === 0) return t.map((at) => (Math.abs(at - passage.delay) <= step / 2 ? share / step : 0));
  return t.map((at) => share * passingAt(passage, at));
}
