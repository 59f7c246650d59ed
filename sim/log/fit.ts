import { type Estimate, estimate, type Whitened } from '../readings/leastSquares.ts';
import { NINETY } from '../readings/prior.ts';
import { RULER } from '../readings/reading.ts';
import { type Course, courseLevels } from './course.ts';
import type { PondFacts } from './facts.ts';
import { type Shift, worstShift } from './shifts.ts';
import type { Track } from './track.ts';
import { type Shifts, type Unknowns, unknownsOf } from './unknowns.ts';

/** A log, the site it was read on, and the clock at its first line (s after midnight; undefined: not known). */
export interface Watched {
  readonly track: Track;
  readonly facts: PondFacts;
  readonly clock: number | undefined;
}

/** One law of loss laid through a log. */
export interface LawFit {
  readonly law: 'even' | 'hole';
  readonly unknowns: Unknowns;
  readonly estimate: Estimate;
  readonly course: Course;
  readonly shifts: Shifts;
  /** What was found to be beside the law, in the order in which it was found. */
  readonly found: readonly Shift[];
  /** Sum of squares of readings and priors, in standard deviations of a careful reading. */
  readonly squares: number;
  /** Readings that count. */
  readonly read: number;
  /** Readings scatter so much more than a careful ruler. */
  readonly scatter: number;
}

export interface LogFit {
  readonly chosen: LawFit;
  readonly even: LawFit;
  /** undefined where too few readings were taken to ask. */
  readonly hole: LawFit | undefined;
  /** Criterion of the even law less that of the hole. */
  readonly gain: number | undefined;
}

/** Standard deviation of a careful reading, m. */
export const READ_OFF = RULER / NINETY;
const DIFFERENCE = 1e-5;
/** A reading or a leg this many standard deviations beside the others is told, and no longer counts. */
const STRAY = 3.5;
/** Readings below which none is told to be beside the others. */
const FEWEST = 5;
/** A model this much worse by the criterion has considerably less support (Burnham & Anderson 2002, sec. 2.6: 4 to 7). */
const BETTER = 4;

/** The model of a law with its shifts, whitened by the readings' spread. */
export class LogModel implements Whitened {
  readonly unknowns: Unknowns;
  private readonly watched: Watched;
  private readonly counted: readonly number[];
  private readonly sd: number;

  constructor(watched: Watched, unknowns: Unknowns, strays: readonly number[], sd: number) {
    this.watched = watched;
    this.unknowns = unknowns;
    this.sd = sd;
    this.counted = watched.track.readings.map((_, i) => i).filter((i) => !strays.includes(i));
  }

  levels(u: readonly number[]): number[] {
    const { track, facts, clock } = this.watched;
    return courseLevels(track, facts, this.unknowns.course(u), clock);
  }

  misfit(u: readonly number[]): number[] {
    const levels = this.levels(u);
    const { readings } = this.watched.track;
    return this.counted.map((i) => (levels[i] - readings[i].level) / this.sd);
  }

  slopes(u: readonly number[], misfit: readonly number[]): number[][] {
    const columns = u.map((_, k) => {
      const there = this.misfit(u.map((each, i) => (i === k ? each + DIFFERENCE : each)));
      return there.map((each, i) => (each - misfit[i]) / DIFFERENCE);
    });
    return misfit.map((_, i) => columns.map((column) => column[i]));
  }
}

const sum = (x: readonly number[]): number => x.reduce((all, each) => all + each * each, 0);

/** Starts of a hole's depth, as multiples of how far the level fell. */
const DEPTHS = [0.5, 0.8, 1.1, 2, 5];

function lawFit(watched: Watched, law: LawFit['law'], shifts: Shifts, sd: number): Omit<LawFit, 'found' | 'scatter'> {
  const levels = watched.track.readings.map(({ level }) => level);
  const fell = Math.max(0.01, Math.max(...levels) - Math.min(...levels));
  const guess = law === 'hole' ? 1.5 * fell : undefined;
  const unknowns = unknownsOf(watched.track, watched.facts, shifts, guess, watched.clock !== undefined);
  const model = new LogModel(watched, unknowns, shifts.strays, sd);
  const zero = Array<number>(unknowns.count).fill(0);
  const starts = law === 'even' ? [zero] : DEPTHS.map((depth) => unknowns.from(zero, depth * fell));
  const all = starts.map((from) => estimate(model, unknowns.count, from));
  const cost = ({ residuals, u }: Estimate): number => sum(residuals) + sum(u);
  const best = all.reduce((a, b) => (cost(b) < cost(a) ? b : a));
  const { residuals } = best;
  return {
    law,
    unknowns,
    estimate: best,
    course: unknowns.course(best.u),
    shifts,
    squares: cost(best),
    read: residuals.length,
  };
}

/** A law laid through a log; readings and jumps beside it are found one by one, the worst first. */
function fitLaw(watched: Watched, law: LawFit['law'], scatter = 1): LawFit {
  const { readings, legs } = watched.track;
  const known = legs.flatMap(({ unknown }, i) => (unknown ? [i] : []));
  let shifts: Shifts = { jumps: known, strays: [] };
  const found: Shift[] = [];
  const most = readings.length < FEWEST ? 0 : Math.floor((readings.length - 1) / 3);
  for (;;) {
    const fit = lawFit(watched, law, shifts, scatter * READ_OFF);
    const worst = found.length < most ? worstShift(watched.track, fit.estimate, shifts) : undefined;
    if (worst === undefined || Math.abs(worst.distance) < STRAY) return { ...fit, found, scatter };
    found.push(worst);
    shifts =
      worst.kind === 'jump'
        ? { ...shifts, jumps: [...shifts.jumps, worst.at] }
        : { ...shifts, strays: [...shifts.strays, worst.at] };
  }
}

/** Upper 5 % point of χ² with ν degrees of freedom, by Wilson & Hilferty (1931), PNAS 17, 684–688. */
export const chiSquare95 = (nu: number): number => nu * (1 - 2 / (9 * nu) + NINETY * Math.sqrt(2 / (9 * nu))) ** 3;

const freedom = ({ read, unknowns }: LawFit): number => read - unknowns.free;

/** How much more than a careful ruler's the readings scatter: 1 where that may be chance, one time in twenty. */
function scatterOf(fit: LawFit): number {
  const nu = freedom(fit);
  if (nu < 1 || fit.squares <= chiSquare95(nu)) return 1;
  return Math.sqrt(fit.squares / nu);
}

/**
 * Akaike's criterion with its correction for few readings, the squares taken by the scatter of the richer law
 * (QAICc; Burnham & Anderson 2002, Model Selection and Multimodel Inference, secs. 2.4 and 2.5).
 */
function criterion({ squares, unknowns, found, read }: LawFit, scatter: number): number {
  const strays = found.filter(({ kind }) => kind === 'stray').length;
  const k = unknowns.free + strays + Number(scatter > 1);
  const n = read + strays;
  // A shift was the worst of many that were looked at: it costs what it had to exceed to be told, not 2.
  const sought = found.length * (STRAY ** 2 - 2);
  return squares / scatter ** 2 + sought + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}

/**
 * What a log says by weighted least squares, with what is known of evaporation and site: a loss that hangs on no level,
 * or a hole at an elevation, which is chosen only where the criterion tells the two apart.
 */
export function fitLog(watched: Watched): LogFit {
  const even = fitLaw(watched, 'even');
  const asked = even.read - even.unknowns.free - 1 >= 3;
  const hole = asked ? fitLaw(watched, 'hole') : undefined;
  const scatter = scatterOf(hole ?? even);
  const gain = hole && criterion(even, scatter) - criterion(hole, scatter);
  const chosen = hole && gain !== undefined && gain >= BETTER && hole.course.pond > 0 ? hole : even;
  const own = scatterOf(chosen);
  return { chosen: own > 1 ? fitLaw(watched, chosen.law, own) : chosen, even, hole, gain };
}
