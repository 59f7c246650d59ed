/** Both handles as a hand sets them: whole degrees, by the pointer on the plane or on a ruler, by keys. */
import { keySteps } from '../state/key-steps.ts';

/** Openings of both valves, 0..1. */
export interface Openings {
  readonly bottom: number;
  readonly top: number;
}

export type Valve = keyof Openings;

const SHUT = 90;
/** A page key's leap, degrees. */
const LEAP = 15;
/** Openings are written so fine into a file; a degree is 0.0111. */
const DIGITS = 4;

/** Degrees a handle is open, 0 shut .. 90 open. */
export const degreesOpen = (opening: number): number => Math.round(SHUT * opening);

export const openingAt = (degrees: number): number =>
  Number((Math.min(SHUT, Math.max(0, Math.round(degrees))) / SHUT).toFixed(DIGITS));

/** An opening to the nearest degree of its handle. */
export const toDegree = (opening: number): number => openingAt(SHUT * opening);

/** Where a key leads from an opening; undefined where it leads nowhere. Right and up open a valve. */
export function keyed(key: string, opening: number): number | undefined {
  const by = key === 'Home' ? -SHUT : key === 'End' ? SHUT : keySteps(key, LEAP);
  return by === undefined ? undefined : openingAt(degreesOpen(opening) + by);
}
