/** What of a site is not known and moves what a ruler shows: each with the spread it has before anything is read. */
import { ballValveLoss, cockLoss } from '../laws/valve.ts';
import { assumptionWords } from '../results/checks/assumptionWords.ts';
import { withValue } from '../results/checks/withValue.ts';
import { BANDS } from '../scenario/assume.ts';
import type { Feed, Scenario } from '../scenario/scenario.ts';
import { NINETY, type Spread, spreadOver } from './prior.ts';

export type UnknownKind = 'pump' | 'cd' | 'valve' | 'manning' | 'other';

export interface Unknown {
  /** Where it stands in the file; `pump.curve` is a factor on the curve's heads. */
  readonly place: string;
  readonly kind: UnknownKind;
  /** How a sentence calls it. */
  readonly words: string;
  /** Value at the place by a standard normal figure; physical at every u. */
  readonly at: Spread;
}

/** Miller's table and a valve differ by this factor of the loss coefficient, either way: common practice, no source. */
const VALVE = 2;
/** From this opening on a valve resists less than half an elbow: its handle can't be wrong by anything that shows. */
const ALL_BUT_OPEN = 0.9;

/**
 * The unknowns of a site: the pump's curve, the coefficient of each crest that a ruler may be held on, what the valves'
 * handles really mean, Manning's n, and every other assumed value that has a band.
 *
 * A value typed into the file is uncertain as its default would be, in proportion. A crest's coefficient is none where
 * it follows from the stone's length along the flow.
 */
export function unknownsOf(s: Scenario): Unknown[] {
  const named = [pump(s), ...crests(s), ...valves(s), ...streams(s)];
  const places = named.map(({ place }) => place);
  return [...named, ...others(s, places)].filter((each) => withValue(s, each.place, each.at(0)) !== undefined);
}

/** The band a place is assumed with, if it lies about the value; or another in its stead. */
function bandAt(
  s: Scenario,
  place: string,
  value: number,
  otherwise: readonly [number, number],
): readonly [number, number] {
  const band = s.assumed.find((a) => a.place === place)?.band;
  return band !== undefined && band[0] < value && value < band[1] ? band : otherwise;
}

function pump(s: Scenario): Unknown {
  const band = bandAt(s, 'pump.curve', 1, BANDS.box);
  const at = atLeast(spreadOver(1, band), 0.05);
  return { place: 'pump.curve', kind: 'pump', words: 'the pump’s curve', at };
}

function crests(s: Scenario): Unknown[] {
  const [low, high] = BANDS.stone.map((cd) => cd / 0.9);
  const unknown = (place: string, cd: number, words: string): Unknown => {
    const at = atLeast(spreadOver(cd, bandAt(s, place, cd, [low * cd, high * cd])), 0.05);
    return { place, kind: 'cd', words, at };
  };
  const stones = s.watercourse.flatMap((reach, i) =>
    reach.kind === 'pool'
      ? reach.stones.map((stone, k) => ({ ...stone, place: `watercourse[${i}].stones[${k}].cd` }))
      : [],
  );
  const lip = s.filter ? [unknown('filter.lip.cd', s.filter.lip.cd, 'the coefficient of the filter’s lip')] : [];
  const rest = stones.filter(({ along }) => along === undefined);
  return [...lip, ...rest.map(({ place, cd, name }) => unknown(place, cd, `the coefficient of ‘${name}’`))];
}

function valves(s: Scenario): Unknown[] {
  const feeds = [
    ['bottomFeed', 'bottom feed'],
    ['topFeed', 'top feed'],
  ] as const;
  return feeds.flatMap(([key, name]) => {
    const feed = s.plumbing[key];
    if (!feed || feed.valve >= ALL_BUT_OPEN || !Number.isFinite(lossOf(feed.law, feed.valve))) return [];
    const rate = Math.log(VALVE) / NINETY;
    const at: Spread = (u) =>
      u === 0 ? feed.valve : openingOf(feed.law, lossOf(feed.law, feed.valve) * Math.exp(rate * u));
    return [{ place: `plumbing.${key}.valve`, kind: 'valve' as const, words: `the valve of the ${name}`, at }];
  });
}

function streams(s: Scenario): Unknown[] {
  return s.watercourse.flatMap((reach, i): Unknown[] => {
    if (reach.kind !== 'stream') return [];
    const place = `watercourse[${i}].manning`;
    const n = reach.manning;
    const at = atLeast(spreadOver(n, bandAt(s, place, n, [n / 1.5, n * 1.5])), 0.005);
    return [{ place, kind: 'manning', words: `the roughness of ‘${reach.name}’`, at }];
  });
}

/**
 * Assumed values beside those. One at the end of its own band (pipe that can only grow rougher) has no spread about it and
 * stays: what it would do, the factor on the pump's curve takes up.
 */
function others(s: Scenario, known: readonly string[]): Unknown[] {
  return s.assumed.flatMap((assumption): Unknown[] => {
    const { place, value, band } = assumption;
    if (known.includes(place) || band === undefined || typeof value !== 'number') return [];
    if (!(band[0] < value && value < band[1])) return [];
    // Gaps and the like are never negative; elevations may be.
    const at = atLeast(spreadOver(value, band), band[0] >= 0 ? 0 : Number.NEGATIVE_INFINITY);
    return [{ place, kind: 'other', words: assumptionWords(s, assumption), at }];
  });
}

function atLeast(at: Spread, least: number): Spread {
  return (u) => Math.max(least, at(u));
}

export const lossOf = (law: Feed['law'], opening: number): number =>
  law === 'cock' ? cockLoss(opening) : ballValveLoss(opening);

/** Opening at which a valve has a loss coefficient: by halving, its law falls all the way. 1 where even open it has more. */
export function openingOf(law: Feed['law'], loss: number): number {
  let low = 0;
  let high = 1;
  if (lossOf(law, high) >= loss) return high;
  while (high - low > 1e-12) {
    const mid = (low + high) / 2;
    if (lossOf(law, mid) > loss) low = mid;
    else high = mid;
  }
  return high;
}

/** The site with its unknowns at standard normal figures. */
export function siteAt(s: Scenario, unknowns: readonly Unknown[], u: readonly number[]): Scenario {
  return unknowns.reduce(
    (site, { place, at }, k) => (u[k] === 0 ? site : (withValue(site, place, at(u[k])) ?? site)),
    s,
  );
}
