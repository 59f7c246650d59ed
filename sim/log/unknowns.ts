import { NINETY } from '../readings/prior.ts';
import type { Course } from './course.ts';
import type { PondFacts } from './facts.ts';
import type { Track } from './track.ts';

const DAY = 86400;
/** So wide that nothing leans on them: spreads of what the log alone tells, m and m/s. */
const LEVEL = 0.3;
const RATE = 0.3 / DAY;
const JUMP = 0.5;
/** By how much evaporation swings about its mean over the day, and its 90 % band: common practice, no source. */
const SWING = { value: 0.4, off: 0.4 };
/** How far the area by which added water is reckoned may be off: our default. */
const AREA_OFF = 0.1;
/** Standard deviation of a share that may be anything between 0 and 1. */
const EVEN = Math.sqrt(1 / 12);
/** Spread of the logarithm of a hole's depth. */
const HOLE = 1.5;

/** Which unknowns a fit has, and where each stands among its figures. */
export interface Unknowns {
  readonly count: number;
  /** Those of which nothing is known beforehand: what an information criterion counts. */
  readonly free: number;
  readonly at: Readonly<Record<'start' | 'pond' | 'pump' | 'rise' | 'evaporation' | 'swing' | 'area' | 'hole', number>>;
  /** Slope of a loss by its figure, m/s. */
  readonly rate: number;
  course(u: readonly number[]): Course;
  /** The figures with the hole at a depth below the first reading, m. */
  from(u: readonly number[], depth: number): number[];
}

/** What a fit lets loose beside losses: readings left out, and legs in which the level jumped. */
export interface Shifts {
  readonly jumps: readonly number[];
  readonly strays: readonly number[];
}

/** Whether a track has time with the pump on, and off. */
export function pumpTimes({ legs }: Track): { on: boolean; off: boolean } {
  const has = (state: 'on' | 'off'): boolean =>
    legs.some(({ pump, from, to }) => to > from && (pump === state || typeof pump === 'number'));
  return { on: has('on'), off: has('off') };
}

/** @param hole a first guess of its depth below the first reading, m; undefined: the loss hangs on no level */
export function unknownsOf(
  track: Track,
  facts: PondFacts,
  { jumps }: Shifts,
  hole: number | undefined,
  timed: boolean,
): Unknowns {
  const times = pumpTimes(track);
  const states = new Set(track.readings.map(({ on }) => on));
  let count = 0;
  const place = (there: boolean): number => (there ? count++ : -1);
  const at = {
    start: place(true),
    pond: place(true),
    pump: place(times.on && times.off),
    hole: place(hole !== undefined),
    rise: place(states.size > 1),
    evaporation: place(true),
    swing: place(timed),
    area: place(track.legs.some(({ added }) => added > 0)),
  };
  const shares = count;
  count += track.switches;
  const firstJump = count;
  count += jumps.length;
  const rise = facts.rise ?? { value: 0, off: LEVEL };
  const figure = (u: readonly number[], k: number): number => (k < 0 ? 0 : u[k]);
  return {
    count,
    free:
      2 + Number(at.pump >= 0) + Number(at.hole >= 0) + jumps.length + Number(at.rise >= 0 && facts.rise === undefined),
    at,
    rate: RATE,
    from: (u, depth) => u.map((each, k) => (k === at.hole ? Math.log(depth / (hole ?? depth)) / HOLE : each)),
    course: (u) => ({
      start: LEVEL * figure(u, at.start),
      pond: RATE * figure(u, at.pond),
      pump: RATE * figure(u, at.pump),
      hole: hole === undefined ? undefined : hole * Math.exp(HOLE * figure(u, at.hole)),
      rise: at.rise < 0 ? 0 : rise.value + (rise.off / NINETY) * figure(u, at.rise),
      evaporation: figure(u, at.evaporation),
      swing: SWING.value + (SWING.off / NINETY) * figure(u, at.swing),
      area: 1 + (AREA_OFF / NINETY) * figure(u, at.area),
      shares: Array.from({ length: track.switches }, (_, k) => 0.5 + EVEN * u[shares + k]),
      jumps: new Map(jumps.map((leg, k) => [leg, JUMP * u[firstJump + k]])),
    }),
  };
}

/** Slope of a hole's depth by its figure. */
export const holeSlope = (depth: number): number => HOLE * depth;
