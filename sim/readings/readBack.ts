import { withValue } from '../results/checks/withValue.ts';
import { RunFailure } from '../results/failure.ts';
import type { Assumption, Scenario } from '../scenario/scenario.ts';
import { type CannotTell, cannotTell, questionsOf } from './cannotTell.ts';
import { type Contradiction, contradictionsIn } from './contradictions.ts';
import { type Edit, editsFor } from './edits.ts';
import { deviation, type Estimate, estimate } from './leastSquares.ts';
import { moving, type Shown, SiteModel } from './model.ts';
import { NINETY } from './prior.ts';
import { observationOf, readable, type SiteReading } from './reading.ts';
import { type ReadingProblem, tellReadings } from './tell.ts';
import { siteAt, type Unknown, type UnknownKind, unknownsOf } from './unknowns.ts';

/** A value and its 90 % band. */
export interface Banded {
  readonly value: number;
  readonly band: readonly [low: number, high: number];
}

export interface Fitted extends Banded {
  /** Place in the expanded file; `pump.curve`: a factor on the curve's heads. A valve's is the opening that its handle comes to. */
  readonly place: string;
  readonly kind: UnknownKind;
  readonly words: string;
  readonly before: Banded;
}

/** What readings say of a site: plain data, SI, bands of 90 %. */
export interface Fit {
  readonly ok: true;
  readonly fitted: readonly Fitted[];
  /** The real flows, m³/s; undefined where the site has no such feed. */
  readonly flow: {
    readonly main: Banded;
    readonly 'bottom feed': Banded | undefined;
    readonly 'top feed': Banded | undefined;
  };
  /** Water over each crest that a ruler may be held on, by `head NAME`, and 'fall' where it was read, m. */
  readonly shown: Readonly<Record<string, Banded>>;
  readonly contradictions: readonly Contradiction[];
  readonly cannotTell: readonly CannotTell[];
  /** The site with the fitted values in it, its assumed values with the bands they have now. */
  readonly scenario: Scenario;
  /** The same as changes to the expanded file. */
  readonly edits: readonly Edit[];
  /** Joint spread of the unknowns, in the order of `fitted`: standard normal figures and their covariance. */
  readonly posterior: Pick<Estimate, 'u' | 'covariance'>;
  /** False where the readings lie at an abrupt turn of the site (its pump begins to draw air): the bands are rough then. */
  readonly converged: boolean;
}

export type ReadBack = Fit | { readonly ok: false; readonly problems: readonly ReadingProblem[] };

/** The trial of a first start is laid over the balance until that moves the fall less than this, m, at most so often. */
const FALL_LAID = 2e-4;
const MOST_LAID = 3;

/**
 * What rulers, watch and bucket say of a site: its real flow, its pump's curve, its crests and valves, with bands, by
 * weighted least squares against what is assumed of each (see `estimate`). Heads and bucket are those of the running
 * balance with the pond at its level, the fall that of the trial of a first start.
 *
 * Readings that cannot be are told and nothing is fitted; so is a site without a running balance.
 */
export function readBack(s: Scenario, readings: readonly SiteReading[]): ReadBack {
  const problems = tellReadings(s, readings);
  if (problems.length > 0) return { ok: false, problems };
  try {
    return fitSite(s, readings);
  } catch (error) {
    if (!(error instanceof RunFailure)) throw error;
    return { ok: false, problems: [{ reading: -1, says: `The site finds no running balance: ${error.words}.` }] };
  }
}

function fitSite(s: Scenario, readings: readonly SiteReading[]): Fit {
  const observations = readings.map(observationOf);
  const all = new SiteModel(s, unknownsOf(s), observations);
  const start = all.unknowns.map(() => 0);
  const asked = all.unknowns.filter(({ kind }) => kind !== 'other');
  const moved = moving(all.unknowns, all.slopes(start, all.misfit(start)));
  const unknowns = all.unknowns.filter((each) => asked.includes(each) || moved.includes(each));
  const model = new SiteModel(s, unknowns, observations);
  const found = solve(model);
  const { shown, slopes } = model.allSlopes(found.u);
  const taken = observations.map(({ what }) => what);
  const left = readable(s).filter((what) => !taken.includes(what));
  const scenario = fittedSite(s, unknowns, found);
  return {
    ok: true,
    fitted: unknowns.map((unknown, k) => fittedOf(unknown, found, k)),
    flow: flowsOf(s, shown, slopes, found),
    shown: banded(shown, slopes, found, (what) => what.startsWith('head') || taken.includes(what)),
    contradictions: contradictionsIn(found, readings, observations, s.display),
    cannotTell: cannotTell(questionsOf(s, unknowns, slopes), found, { left, all: readable(s), shown, slopes }),
    scenario,
    edits: editsFor(scenario, unknowns, found.u),
    posterior: { u: found.u, covariance: found.covariance },
    converged: found.converged,
  };
}

function solve(model: SiteModel): Estimate {
  model.layFall(model.unknowns.map(() => 0));
  let found = estimate(model, model.unknowns.length);
  for (let i = 0; i < MOST_LAID && model.layFall(found.u) > FALL_LAID; i++)
    found = estimate(model, model.unknowns.length, found.u);
  return found;
}

function fittedOf({ place, kind, words, at }: Unknown, { u, covariance }: Estimate, k: number): Fitted {
  const half = NINETY * Math.sqrt(covariance[k][k]);
  return {
    place,
    kind,
    words,
    value: at(u[k]),
    band: ordered(at(u[k] - half), at(u[k] + half)),
    before: { value: at(0), band: ordered(at(-NINETY), at(NINETY)) },
  };
}

const ordered = (a: number, b: number): [number, number] => (a < b ? [a, b] : [b, a]);

function banded(
  shown: Shown,
  slopes: Readonly<Record<string, readonly number[]>>,
  { covariance }: Estimate,
  which: (what: string) => boolean,
): Record<string, Banded> {
  const of = (what: string): Banded => {
    const half = NINETY * deviation(slopes[what], covariance);
    return { value: shown[what], band: [Math.max(0, shown[what] - half), shown[what] + half] };
  };
  return Object.fromEntries(
    Object.keys(shown)
      .filter(which)
      .map((what) => [what, of(what)]),
  );
}

function flowsOf(
  s: Scenario,
  shown: Shown,
  slopes: Readonly<Record<string, readonly number[]>>,
  found: Estimate,
): Fit['flow'] {
  const flows = banded(shown, slopes, found, (what) => what === 'main' || what.endsWith(' feed'));
  const { bottomFeed, topFeed } = s.plumbing;
  return {
    main: flows.main,
    'bottom feed': bottomFeed && flows['bottom feed'],
    'top feed': topFeed && flows['top feed'],
  };
}

/** The site with the fitted values; what was fitted counts as assumed with the band it has now. */
function fittedSite(s: Scenario, unknowns: readonly Unknown[], found: Estimate): Scenario {
  const site = siteAt(s, unknowns, found.u);
  const now = unknowns.map((unknown, k): Assumption => {
    const { place, value, band } = fittedOf(unknown, found, k);
    const from = s.assumed.find((a) => a.place === place)?.from ?? 'default';
    // The curve in the site has its factor in it already.
    return place === 'pump.curve'
      ? { place, value: 1, band: [band[0] / value, band[1] / value], from }
      : { place, value, band, from };
  });
  const places = now.map(({ place }) => place);
  const able = now.filter(({ place, value }) => withValue(site, place, Number(value)) !== undefined);
  return { ...site, assumed: [...s.assumed.filter(({ place }) => !places.includes(place)), ...able] };
}
