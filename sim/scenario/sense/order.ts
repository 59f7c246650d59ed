import type { Tell } from '../fields.ts';

/** Elevations closer than this are the same: a tenth of a micrometer, far under any survey. */
const SAME = 1e-7;

export const meters = (z: number): string => `${Number(z.toFixed(4))} m`;

export type Order = 'above' | 'below' | 'not above' | 'not below';

const HOLDS: Readonly<Record<Order, (a: number, b: number) => boolean>> = {
  above: (a, b) => a > b + SAME,
  below: (a, b) => a < b - SAME,
  'not above': (a, b) => a <= b + SAME,
  'not below': (a, b) => a >= b - SAME,
};

/** An elevation of the file against another. What could not be read is told elsewhere and passes here. */
export type Elevations = (
  place: string,
  z: number | undefined,
  order: Order,
  bound: number | undefined,
  what: string,
) => void;

export const elevationsBy =
  (tell: Tell): Elevations =>
  (place, z, order, bound, what) => {
    if (z === undefined || bound === undefined || HOLDS[order](z, bound)) return;
    tell(place, meters(z), `${order} ${what} (${meters(bound)})`);
  };

type Points = readonly (readonly [number, number])[];

/** The lowest elevation of a crest line. */
export function lowest(crest: Points | undefined): number | undefined {
  return crest?.reduce((low, [, z]) => Math.min(low, z), Infinity);
}

export const floorOfProfile = (profile: Points | undefined): number | undefined => profile?.[0]?.[0];
export const topOfProfile = (profile: Points | undefined): number | undefined => profile?.[profile.length - 1]?.[0];
