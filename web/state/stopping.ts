/** The pump stop that is looked at: where it is in a run or a trial, and from when to when it is played. */
import type { LoggedEvent, Range } from '../../sim/results/answer.ts';

/** Before the stop the water is seen running for this long, s; after it for this long at the least and the most. */
const BEFORE = 60;
const LEAST = 120;
const MOST = 720;

/** By a command, a power cut or the level switch. */
const STOPS = ['pump off', 'power off', 'cut-out', 'pump speed 0'];

export interface Stopping {
  /** Moment of the stop, s. */
  readonly at: number;
  readonly from: number;
  /** The pond's highest level after it, or the last moment worth waiting for. */
  readonly to: number;
  /** The highest level itself. */
  readonly highest: number;
}

/** The first stop of the pump in a log; undefined where it never stops. */
export function firstStop(events: readonly LoggedEvent[]): number | undefined {
  return events.find(({ what }) => STOPS.includes(what))?.t;
}

/** What of a stop is played. */
export function stoppingAt(at: number, pond: Range | undefined, span: number): Stopping {
  const highest = pond && pond.max.t > at ? pond.max.t - at : MOST;
  const to = at + Math.min(MOST, Math.max(LEAST, highest));
  return { at, from: Math.max(0, at - BEFORE), to: Math.min(span, to), highest: Math.min(span, at + highest) };
}

/** Minutes round a stop that are opened on the time axis. */
export function windowOf({ at }: Stopping, span: number): readonly [number, number] {
  return [Math.max(0, at - BEFORE), Math.min(span, at + MOST)];
}
