import { type Display, formatFlow, formatLength, formatNumber } from '../quantity/index.ts';
import { covarianceOf, type Estimate } from './leastSquares.ts';
import { NINETY } from './prior.ts';
import { type Observation, type SiteReading, whatWords } from './reading.ts';

/** Readings that cannot all hold. */
export interface Contradiction {
  /** Which readings: two against each other, or one against all the others or against the site as its file has it. */
  readonly readings: readonly number[];
  readonly against: 'each other' | 'the other readings' | 'the site';
  /** Normalized residual: distance from what is expected, in standard deviations of that distance. */
  readonly distance: number;
  readonly says: string;
}

/**
 * A normalized residual beyond this is said: one sound reading in a thousand is (Baarda 1968, A testing procedure for
 * use in geodetic networks: 3.29 at 0.1 %).
 */
export const LIMIT = 3.29;

/** What the rest of the readings say a reading should be: its distance from that, and the figure. */
interface Expected {
  readonly distance: number;
  /** Expected reading and half-width of its 90 % band, in standard deviations of the reading, from the reading. */
  readonly off: number;
  readonly band: number;
}

/** A reading as others and the priors foretell it: by the slopes at the estimate, as if the model were straight. */
function expected({ slopes, residuals, u }: Estimate, reading: number, from: readonly number[]): Expected {
  // Innovations: reading less model at the priors' own values.
  const innovation = slopes.map((row, i) => residuals[i] + dot(row, u));
  const rows = from.map((i) => slopes[i]);
  const covariance = covarianceOf(rows, u.length);
  const pull = u.map((_, k) => rows.reduce((sum, row, i) => sum + row[k] * innovation[from[i]], 0));
  const foretold = covariance.map((row) => dot(row, pull));
  const row = slopes[reading];
  const variance = dot(
    row,
    covariance.map((each) => dot(each, row)),
  );
  const off = innovation[reading] - dot(row, foretold);
  return { distance: off / Math.sqrt(variance + 1), off, band: NINETY * Math.sqrt(variance) };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, each, i) => sum + each * b[i], 0);
}

export function contradictionsIn(
  estimate: Estimate,
  readings: readonly SiteReading[],
  observations: readonly Observation[],
  display: Display,
): Contradiction[] {
  const say = new Sayer(readings, observations, display);
  const all = observations.map((_, i) => i);
  const pairs = all.flatMap((i) => all.slice(i + 1).flatMap((k) => pair(estimate, i, k, say)));
  const told = pairs.flatMap((each) => each.readings);
  const alone = all.filter((i) => !told.includes(i)).flatMap((i) => single(estimate, i, all, say));
  return [...pairs, ...alone].sort((a, b) => b.distance - a.distance);
}

/** Two readings of which neither is what the other makes of it. */
function pair(estimate: Estimate, i: number, k: number, say: Sayer): Contradiction[] {
  const first = expected(estimate, i, [k]);
  const second = expected(estimate, k, [i]);
  const distance = Math.min(Math.abs(first.distance), Math.abs(second.distance));
  if (distance <= LIMIT) return [];
  return [{ readings: [i, k], against: 'each other', distance, says: say.pair(i, k, second) }];
}

function single(estimate: Estimate, i: number, all: readonly number[], say: Sayer): Contradiction[] {
  const bySite = expected(estimate, i, []);
  const others = all.filter((k) => k !== i);
  const byOthers = expected(estimate, i, others);
  const distance = Math.abs(byOthers.distance);
  if (distance <= LIMIT) return [];
  const against = Math.abs(bySite.distance) > LIMIT ? 'the site' : 'the other readings';
  return [
    { readings: [i], against, distance, says: say.single(i, against === 'the site' ? bySite : byOthers, against) },
  ];
}

/** Puts contradictions in words. */
class Sayer {
  private readonly readings: readonly SiteReading[];
  private readonly observations: readonly Observation[];
  private readonly display: Display;

  constructor(readings: readonly SiteReading[], observations: readonly Observation[], display: Display) {
    this.readings = readings;
    this.observations = observations;
    this.display = display;
  }

  pair(i: number, k: number, second: Expected): string {
    return (
      `${upper(this.named(i))} and ${this.named(k)} contradict each other: by the first alone the second should be ` +
      `${this.should(k, second)}. Take both again.`
    );
  }

  single(i: number, by: Expected, against: Contradiction['against']): string {
    const whose = against === 'the site' ? 'the site as it is drawn makes it' : 'the other readings make it';
    const then = against === 'the site' ? 'take it again, then look at pump, valves and crests' : 'take it again';
    return `${upper(this.named(i))} can’t be right: ${whose} ${this.should(i, by)}. Better ${then}.`;
  }

  private named(i: number): string {
    const { what, value } = this.observations[i];
    return `${whatWords(what)} (${this.figure(i, value)})`;
  }

  private should(i: number, { off, band }: Expected): string {
    const { value, error } = this.observations[i];
    const sd = error / NINETY;
    const [low, high] = [value - (off + band) * sd, value - (off - band) * sd].map((each) => Math.max(0, each));
    const [from, to] = this.readings[i].kind === 'bucket' ? [high, low] : [low, high];
    return `${this.figure(i, from)} to ${this.figure(i, to)}`;
  }

  /** A figure as it is read: a bucket's flow in seconds. */
  private figure(i: number, value: number): string {
    const reading = this.readings[i];
    if (reading.kind !== 'bucket') return formatLength(value, this.display);
    const seconds = reading.volume / value;
    return Number.isFinite(seconds) && seconds < 600
      ? `${formatNumber(seconds, 1)} s`
      : formatFlow(value, this.display);
  }
}

function upper(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
