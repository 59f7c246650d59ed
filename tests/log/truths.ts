/** Ponds whose loss is invented, watched by closed form: no code of the model that reads the log stands behind them. */
import type { Dated } from '../../sim/log/answer.ts';
import { EVAPORATION_OFF, type PondFacts } from '../../sim/log/facts.ts';
import { trackOf } from '../../sim/log/track.ts';
import { type Random, randomStream } from '../../sim/random.ts';
import { NINETY } from '../../sim/readings/prior.ts';
import { RULER } from '../../sim/readings/reading.ts';
import { normal } from '../readings/sites.ts';

export const DAY = 86400;
export const MM_A_DAY = 0.001 / DAY;
const EVAPORATION = 4 * MM_A_DAY;
const RISE = { value: 0.03, off: 0.0075 };

export interface Invented {
  /** m/s of level: what the pond loses, what the running pump adds. */
  readonly pond: number;
  readonly pump: number;
  /** Depth of the hole below the first level, m; the pond's loss is then that at the first level. */
  readonly hole?: number;
}

/** When a level is read, in days, and whether the pump runs then; it is switched at readings of the new state alone. */
export type Schedule = readonly (readonly [day: number, on: boolean])[];

/** Once a day, the pump running. */
export const daily = (days: number): Schedule => Array.from({ length: days + 1 }, (_, i) => [i, true] as const);
/** Days with the pump running, some of its nights and days off, read an hour after each switch. */
export const rested: Schedule = [
  [0, true],
  [1, true],
  [2, true],
  [2 + 1 / 24, false],
  [3, false],
  [4, false],
  [4 + 1 / 24, true],
  [5, true],
  [6, true],
];

const prismatic: Omit<PondFacts, 'evaporation'> = {
  widening: () => 1,
  area: 10,
  evaporationFrom: 'site',
  open: { on: 1, off: 1 },
  splash: 0,
  rise: RISE,
  catches: 1,
  autofill: false,
};

/** A bare number of standard deviations at the ruler. */
const off = (random: Random): number => (normal(random) * RULER) / NINETY;

/**
 * A watched pond of upright walls. What its log can't know (evaporation, its swing over the day, the rise at a stop) is
 * drawn from the spread it is stated with; each reading is off by its own error.
 */
export function watchedPond(truth: Invented, schedule: Schedule, seed: number, dry = false): Dated {
  const random = randomStream(`log ${seed}`);
  const rate = EVAPORATION * (1 + (EVAPORATION_OFF / NINETY) * normal(random));
  const rise = RISE.value + (RISE.off / NINETY) * normal(random);
  const evaporation = dry ? 0 : rate;
  let running = 0;
  const lines = schedule.map(([day, on], i) => {
    const [before, was] = schedule[Math.max(0, i - 1)];
    // Within the hour of a switch nobody knows the moment: the pump stands as it did before for half of it.
    running += (was === on ? Number(on) : 0.5) * (day - before) * DAY;
    const t = day * DAY;
    const level = fallen(truth, t) - evaporation * t - truth.pump * running + (on ? 0 : rise);
    return { line: i + 1, t, level: level + off(random), pump: on ? ('on' as const) : ('off' as const) };
  });
  const track = trackOf({ lines, measured: 'up' });
  if (!track) throw new Error('no track');
  const facts: PondFacts = {
    ...prismatic,
    evaporation: (_, u) => (dry ? 0 : Math.max(0, EVAPORATION * (1 + (EVAPORATION_OFF / NINETY) * u))),
  };
  return { track, facts, clock: undefined, starts: '2031-06-02T08:00' };
}

/** Torricelli: over a hole √h falls linearly with time in a basin of upright walls, and stays at 0. */
function fallen({ pond, hole }: Invented, t: number): number {
  if (hole === undefined) return -pond * t;
  const root = Math.sqrt(hole) - (pond * t) / (2 * Math.sqrt(hole));
  return Math.max(0, root) ** 2 - hole;
}

/** Φ by Abramowitz & Stegun (1964), 26.2.17: within 7.5e-8. */
function below(x: number): number {
  if (x < 0) return 1 - below(-x);
  const t = 1 / (1 + 0.2316419 * x);
  const terms = [0.31938153, -0.356563782, 1.781477937, -1.821255978, 1.330274429];
  const tail = terms.reduce((sum, b, i) => sum + b * t ** (i + 1), 0);
  return 1 - (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * tail;
}

/** Middles of so many equal parts of the standard normal distribution. */
export function middles(parts: number): number[] {
  return Array.from({ length: parts }, (_, k) => {
    let [low, high] = [-6, 6];
    for (let i = 0; i < 40; i++) {
      const mid = (low + high) / 2;
      if (below(mid) < (k + 0.5) / parts) low = mid;
      else high = mid;
    }
    return low;
  });
}
