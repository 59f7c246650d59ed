import type { PondFacts } from './facts.ts';
import type { Track } from './track.ts';

const DAY = 86400;
const OMEGA = (2 * Math.PI) / DAY;
/** Hour of the day at which most evaporates, s: early afternoon. Common practice, no source. */
const WARMEST = 14 * 3600;
/** Longest step, s. */
const STEP = 4 * 3600;

/** One state of what is not known of a pond that is watched. */
export interface Course {
  /** Level of the first reading, were it free of error, m. */
  readonly start: number;
  /** Loss of the pond itself at that level, m/s of level. */
  readonly pond: number;
  /** How far the hole lies below that level, m; undefined: the loss hangs on no level. */
  readonly hole: number | undefined;
  /** What the running pump adds, m/s of level. */
  readonly pump: number;
  /** How much higher the pond stands with the pump off, m. */
  readonly rise: number;
  /** Standard normal figure of the evaporation's spread. */
  readonly evaporation: number;
  /** How much more than its mean evaporates at the warmest hour, as a fraction. */
  readonly swing: number;
  /** Factor on the area by which added water is reckoned. */
  readonly area: number;
  /** Share of each leg of unknown switching before the switch, 0..1. */
  readonly shares: readonly number[];
  /** Rise of the level in a leg beside all that, m, by the leg's index. */
  readonly jumps: ReadonlyMap<number, number>;
}

/**
 * Levels that a course comes to at the readings, m.
 *
 * Each step takes evaporation and what hangs on no level first, then the hole exactly: under Torricelli's law the root
 * of the depth over a hole falls linearly with time (√h = √h₀ − k t/2 in a basin of upright walls; Streeter & Wylie,
 * Fluid Mechanics, ch. 8, unsteady orifice flow, from memory), and not below it.
 * @param clock s after midnight at the first line; undefined: the hours are not known, and evaporation is even
 * @param seen is told of every level on the way: seconds after the first line, m as it would be read
 */
export function courseLevels(
  track: Track,
  facts: PondFacts,
  course: Course,
  clock: number | undefined,
  seen: (t: number, level: number) => void = () => {},
): number[] {
  const walk = new Walk(facts, course, clock, seen);
  let level = course.start;
  const out: number[] = [];
  const read = (i: number): void => {
    out[i] = level + (track.readings[i].on ? 0 : course.rise);
  };
  read(0);
  track.legs.forEach((leg, i) => {
    level += (course.area * leg.added) / (facts.area * facts.widening(level));
    level += leg.rain * facts.catches + (course.jumps.get(i) ?? 0);
    if (typeof leg.pump === 'number') {
      const share = Math.min(1, Math.max(0, course.shares[leg.pump]));
      const middle = leg.from + share * (leg.to - leg.from);
      level = walk.along(level, leg.from, middle, leg.turned === 'off');
      level = walk.along(level, middle, leg.to, leg.turned === 'on');
    } else level = walk.along(level, leg.from, leg.to, leg.pump === 'on');
    if (leg.reading !== undefined) read(leg.reading);
  });
  return out;
}

/** How a level falls step by step. */
class Walk {
  private readonly facts: PondFacts;
  private readonly course: Course;
  private readonly clock: number | undefined;
  private readonly seen: (t: number, level: number) => void;

  constructor(facts: PondFacts, course: Course, clock: number | undefined, seen: (t: number, level: number) => void) {
    this.facts = facts;
    this.course = course;
    this.clock = clock;
    this.seen = seen;
  }

  along(from: number, begin: number, end: number, on: boolean): number {
    const steps = Math.max(1, Math.ceil((end - begin) / STEP));
    const rise = on ? 0 : this.course.rise;
    let level = from;
    this.seen(begin, level + rise);
    for (let i = 0; i < steps; i++) {
      const t = begin + (i * (end - begin)) / steps;
      level = this.step(level, t, (end - begin) / steps, on);
      this.seen(t + (end - begin) / steps, level + rise);
    }
    return level;
  }

  private step(from: number, t: number, lasts: number, on: boolean): number {
    const { facts, course } = this;
    const wide = facts.widening(from - course.start);
    const open = on ? facts.open.on : facts.open.off;
    const dry = facts.evaporation(t + lasts / 2, course.evaporation) * open * this.sunny(t, lasts);
    const running = on ? (course.pump + facts.splash) * lasts : 0;
    const even = course.hole === undefined ? course.pond * lasts : 0;
    const level = from - dry - (running + even) / wide;
    return course.hole === undefined ? level : this.holed(level, lasts, wide, on ? 0 : course.rise);
  }

  /** Seconds of mean evaporation that a step is worth: ∫ 1 + a cos ω(t − warmest). */
  private sunny(t: number, lasts: number): number {
    if (this.clock === undefined) return lasts;
    const phase = OMEGA * (this.clock + t - WARMEST);
    return lasts + (this.course.swing / OMEGA) * (Math.sin(phase + OMEGA * lasts) - Math.sin(phase));
  }

  private holed(level: number, lasts: number, wide: number, rise: number): number {
    const { start, pond, hole } = this.course;
    const deep = hole as number;
    const over = level + rise - (start - deep);
    if (over <= 0) return level;
    const root = Math.sqrt(over) - ((pond / wide) * lasts) / (2 * Math.sqrt(deep));
    return level - over + Math.max(0, root) ** 2;
  }
}
