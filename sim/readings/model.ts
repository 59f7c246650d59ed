import { balance } from '../balance.ts';
import { lowestOf } from '../results/checks/variants.ts';
import { RunFailure } from '../results/failure.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { firstStart } from '../trials/firstStart.ts';
import { settledFall } from './fall.ts';
import type { Estimate, Whitened } from './leastSquares.ts';
import { NINETY } from './prior.ts';
import type { Observation } from './reading.ts';
import { siteAt, type Unknown } from './unknowns.ts';

/** What the running balance of a site shows: heads by `head NAME` in m, the flows of `main`, `bottom feed` and `top feed` in m³/s. */
export type Shown = Readonly<Record<string, number>>;

export function shownBy(s: Scenario): Shown {
  const { levels, flows, stones } = balance(s);
  const heads = Object.entries(stones).map(([name, { head }]) => [`head ${name}`, head] as const);
  const lip: Record<string, number> = s.filter
    ? { 'head lip': Math.max(0, levels.filter - lowestOf(s.filter.lip.crest)) }
    : {};
  return {
    ...lip,
    ...Object.fromEntries(heads),
    main: flows.main,
    'bottom feed': flows['bottom feed'] ?? 0,
    'top feed': flows['top feed'] ?? 0,
  };
}

/** Fall of the pond as the trial of a first start has it, m. */
function trialFall(s: Scenario): number {
  const trial = firstStart(s);
  return trial ? trial.start - trial.lowestPond.value : 0;
}

/** Step of the differences, in prior standard deviations. */
const STEP = 0.02;

/** A site's answer to readings by its unknowns, and the slopes of all that it shows. */
export class SiteModel implements Whitened {
  readonly unknowns: readonly Unknown[];
  private readonly site: Scenario;
  private readonly observations: readonly Observation[];
  private readonly withFall: boolean;
  /** Trial's fall less the settled one: what a march adds to a balance. */
  private marchAdds = 0;

  constructor(site: Scenario, unknowns: readonly Unknown[], observations: readonly Observation[]) {
    this.site = site;
    this.unknowns = unknowns;
    this.observations = observations;
    this.withFall = observations.some(({ what }) => what === 'fall');
  }

  /** What the site shows at u; with the fall where that was read, or is asked for. */
  shown(u: readonly number[], withFall = this.withFall): Shown {
    const site = siteAt(this.site, this.unknowns, u);
    return withFall ? { ...shownBy(site), fall: settledFall(site) + this.marchAdds } : shownBy(site);
  }

  /** Lays the fall onto the trial of a first start at u; returns by how much that moved it, m. */
  layFall(u: readonly number[]): number {
    if (!this.withFall) return 0;
    const site = siteAt(this.site, this.unknowns, u);
    const before = this.marchAdds;
    this.marchAdds = trialFall(site) - settledFall(site);
    return Math.abs(this.marchAdds - before);
  }

  misfit(u: readonly number[]): number[] {
    try {
      return this.whitened(u);
    } catch (error) {
      if (!(error instanceof RunFailure) || u.every((each) => each === 0)) throw error;
      // A site without a balance fits nothing: the step that led there is too long.
      return this.observations.map(() => Number.POSITIVE_INFINITY);
    }
  }

  private whitened(u: readonly number[]): number[] {
    const shown = this.shown(u);
    return this.observations.map(({ what, value, error }) => ((shown[what] - value) * NINETY) / error);
  }

  slopes(u: readonly number[], misfit: readonly number[]): number[][] {
    const columns = this.unknowns.map((_, k) => {
      const ahead = this.whitened(stepped(u, k));
      return ahead.map((each, i) => (each - misfit[i]) / STEP);
    });
    return misfit.map((_, i) => columns.map((column) => column[i]));
  }

  /** Slopes of everything the site shows by its unknowns, the fall among it where it has a mark. */
  allSlopes(u: readonly number[]): { shown: Shown; slopes: Readonly<Record<string, readonly number[]>> } {
    const withFall = this.site.pond.fillMark !== undefined;
    const shown = this.shown(u, withFall);
    const ahead = this.unknowns.map((_, k) => this.shown(stepped(u, k), withFall));
    const slopes = Object.keys(shown).map((what) => [what, ahead.map((each) => (each[what] - shown[what]) / STEP)]);
    return { shown, slopes: Object.fromEntries(slopes) };
  }
}

function stepped(u: readonly number[], k: number): number[] {
  return u.map((each, i) => (i === k ? each + STEP : each));
}

/** An unknown that moves no reading by this share of its standard deviation over all its own spread is left as it is. */
export const MOVES_NOTHING = 0.02;

/** The unknowns that some row of slopes depends on. */
export function moving(unknowns: readonly Unknown[], slopes: Estimate['slopes']): Unknown[] {
  return unknowns.filter((_, k) => slopes.some((row) => Math.abs(row[k]) > MOVES_NOTHING));
}
