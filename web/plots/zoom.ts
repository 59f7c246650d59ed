/** Windows that hands choose. */
import { SHORTEST, type Window, withinRun } from './time-axis.ts';

/**
 * A window so many times as long, a moment of it kept where it stands; a moment beside it becomes its middle.
 *
 * @param by over 1: longer
 */
export function zoomed([from, to]: Window, t: number, by: number, span: number): Window {
  const length = Math.min(span, Math.max(SHORTEST, (to - from) * by));
  const share = t >= from && t <= to ? (t - from) / (to - from) : 0.5;
  return withinRun([t - share * length, t + (1 - share) * length], span);
}

/** A window brushed over the bar of all the time; a mere touch moves the present one there. */
export function brushed(a: number, b: number, [from, to]: Window, span: number): Window {
  const [start, end] = [Math.min(a, b), Math.max(a, b)];
  const length = to - from;
  if (end - start < span / 400) return withinRun([start - length / 2, start + length / 2], span);
  return withinRun([start, end], span);
}

/** A window with one end moved; the other gives way where it must. */
export function endMoved([from, to]: Window, end: 'from' | 'to', t: number, span: number): Window {
  if (end === 'from') return withinRun([t, Math.max(to, t + SHORTEST)], span);
  return withinRun([Math.min(from, t - SHORTEST), t], span);
}

/** A wheel's turn as the change of a window's length. */
export const wheelFactor = (delta: number): number => 1.002 ** Math.max(-300, Math.min(300, delta));
