/** Flags: what happened when, on a rail above the plots, each with a leader to its moment. */
import { formatClock, formatDuration } from '../../sim/quantity/index.ts';
import type { LoggedEvent, RunAnswer } from '../../sim/results/answer.ts';
import type { Back } from './back.ts';
import type { Place } from './place.ts';
import { textWidth } from './text-width.ts';
import type { Axis, Window } from './time-axis.ts';
import type { Anchor } from './time-ticks.ts';

export interface Flag {
  readonly t: number;
  /** 'pump off', 'highest'. */
  readonly what: string;
  /** The clock, or how long after the event the opened minutes are about. */
  readonly when: string;
  /** Lower is seated sooner. */
  readonly rank: number;
  /** An event of the log, whose minutes are its own; false for high and low water. */
  readonly own: boolean;
}

export interface SeatedFlag extends Flag {
  /** px of its pole on the rail, which is its left end, its width, and of its moment on the axis. */
  readonly left: number;
  readonly width: number;
  readonly x: number;
}

export const STOPS: readonly string[] = ['pump off', 'power off', 'cut-out', 'pump speed 0'];
const STARTS: readonly string[] = ['pump on', 'power on', 'cut-in'];

/** The event a window was opened for: the last switch of the pump in its first half, else what happened there first. */
export function anchorOf(events: readonly LoggedEvent[], [from, to]: Window): Anchor | undefined {
  const inside = events.filter(({ t }) => t >= from && t <= (from + to) / 2);
  const stop = inside.find(({ what }) => STOPS.includes(what));
  if (stop) return { t: stop.t, word: 'stop' };
  const start = inside.find(({ what }) => STARTS.includes(what));
  if (start) return { t: start.t, word: 'start' };
  return inside[0] && { t: inside[0].t, word: '0' };
}

/** Minutes round an event: one before and twelve after. */
export const minutesRound = (t: number, span: number): Window => [Math.max(0, t - 60), Math.min(span, t + 720)];

/** Events of a run and its own high and low water; in the order of time. */
export function flagsOf(
  { events, levels }: Pick<RunAnswer, 'events' | 'levels'>,
  starts: string,
  window: Window,
  back: Back | undefined,
): Flag[] {
  const anchor = anchorOf(events, window);
  const inWindow = (t: number): boolean => t >= window[0] && t <= window[1];
  const when = (t: number): string =>
    anchor && t > anchor.t && inWindow(t) ? `+${formatDuration(Math.round(t - anchor.t))}` : formatClock(starts, t);
  const flag = (t: number, what: string, rank: number, own = false): Flag => ({ t, what, when: when(t), rank, own });
  const flags = events.map(({ t, what }) =>
    flag(t, what, (inWindow(t) ? 0 : 4) + ([...STOPS, ...STARTS].includes(what) ? 0 : 2), true),
  );
  const { pond } = levels;
  if (pond && pond.max.value > pond.min.value) {
    flags.push(flag(pond.max.t, 'highest', 1));
    if (pond.min.t > 0) flags.push(flag(pond.min.t, 'lowest', 3));
  }
  if (back && back.volume > 0 && inWindow(back.most)) flags.push(flag(back.most, 'nine tenths back', 1));
  return flags.sort((a, b) => a.t - b.t || a.rank - b.rank);
}

/** Sizes of a flag's two texts, px; px between flags, right of the pole, between texts on one line, and of the least press. */
export const FLAG = { what: 13, when: 12, apart: 14, pad: 6, between: 7, least: 44 } as const;

/** px from a flag's pole to its second text where both stand on one line. */
export const whenAt = ({ what }: Flag): number => FLAG.pad + textWidth(what, FLAG.what, true) + FLAG.between;

export function flagWidth(flag: Flag, lines: Place['flagLines']): number {
  const when = textWidth(flag.when, FLAG.when);
  const width = lines === 1 ? whenAt(flag) + when : FLAG.pad + Math.max(textWidth(flag.what, FLAG.what, true), when);
  return Math.max(FLAG.least, width + FLAG.pad / 2);
}

/**
 * Seats flags on one rail in the order of their moments, so that leaders never cross; by rank as many as there is room for.
 *
 * @param place the axis begins at its left, and the rail reaches over its width from 0
 */
export function seatFlags(
  flags: readonly Flag[],
  axis: Axis,
  { left, width, flagLines }: Pick<Place, 'left' | 'width' | 'flagLines'>,
): SeatedFlag[] {
  const order = flags.map((flag, i) => ({ flag, i })).sort((a, b) => a.flag.rank - b.flag.rank || a.i - b.i);
  const chosen = new Set<number>();
  let used = 0;
  for (const { flag, i } of order) {
    const needs = flagWidth(flag, flagLines) + FLAG.apart;
    if (used + needs > width + FLAG.apart) continue;
    used += needs;
    chosen.add(i);
  }
  const seats = flags
    .filter((_, i) => chosen.has(i))
    .map((flag) => ({ ...flag, width: flagWidth(flag, flagLines), x: left + axis.x(flag.t), left: 0 }));
  return pushed(seats, width);
}

/**
 * Each as near to its moment as the others let it: the least sum of squared ways, by pooling neighbors that would meet
 * (isotonic regression; Barlow et al., Statistical Inference under Order Restrictions, 1972).
 */
function pushed(flags: readonly SeatedFlag[], width: number): SeatedFlag[] {
  const before: number[] = [];
  let used = 0;
  for (const flag of flags) {
    before.push(used);
    used += flag.width + FLAG.apart;
  }
  const pools: { sum: number; count: number }[] = [];
  flags.forEach(({ x }, i) => {
    pools.push({ sum: x - before[i]!, count: 1 });
    while (pools.length > 1 && meanOf(pools[pools.length - 2]!) > meanOf(pools[pools.length - 1]!)) {
      const { sum, count } = pools.pop()!;
      const last = pools[pools.length - 1]!;
      pools[pools.length - 1] = { sum: last.sum + sum, count: last.count + count };
    }
  });
  const free = width - (used - FLAG.apart);
  const shifts = pools.flatMap((pool) => Array<number>(pool.count).fill(Math.min(free, Math.max(0, meanOf(pool)))));
  return flags.map((flag, i) => ({ ...flag, left: before[i]! + shifts[i]! }));
}

const meanOf = ({ sum, count }: { sum: number; count: number }): number => sum / count;
