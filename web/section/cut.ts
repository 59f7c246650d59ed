import type { ProfilePoint } from '../../sim/scenario/scenario.ts';

/** A point of the cut, m: station along the water's way and elevation. */
export type Spot = readonly [x: number, z: number];

/**
 * A basin cut along the water's way. Its width at an elevation is the side of the square of equal plan area, √A(z),
 * so that ledges, shelves and sloping banks show as they are; `share` of the narrowing lies on the left bank.
 */
export interface Cut {
  readonly left: number;
  /** Greatest width, m. */
  readonly width: number;
  readonly share: number;
  /** [elevation, width] from the floor up, fine enough to be joined by straight lines; two at one elevation: a ledge. */
  readonly widths: readonly (readonly [z: number, w: number])[];
}

/** Pieces in which a stretch of the profile is drawn: the root of a straight line is a curve. */
const PIECES = 6;

/** Widths of a profile, √A from the floor up. */
export function widthsOf(profile: readonly ProfilePoint[]): [z: number, w: number][] {
  const widths: [number, number][] = [];
  profile.forEach(([z, area], i) => {
    const before = profile[i - 1];
    if (before && z > before[0] && area !== before[1]) {
      for (let piece = 1; piece < PIECES; piece++) {
        const share = piece / PIECES;
        const a = before[1] + share * (area - before[1]);
        widths.push([before[0] + share * (z - before[0]), Math.sqrt(Math.max(0, a))]);
      }
    }
    widths.push([z, Math.sqrt(Math.max(0, area))]);
  });
  return widths;
}

export function greatestWidth(profile: readonly ProfilePoint[]): number {
  return Math.sqrt(Math.max(...profile.map(([, area]) => area)));
}

export function makeCut(profile: readonly ProfilePoint[], left: number, share: number): Cut {
  return { left, width: greatestWidth(profile), share, widths: widthsOf(profile) };
}

export const floorOf = (cut: Cut): number => cut.widths[0][0];

/** Width at an elevation, m; at a ledge the one above it, below the floor that of the floor. */
export function widthAt(cut: Cut, z: number): number {
  const { widths } = cut;
  const above = widths.findIndex(([level]) => level > z);
  if (above < 0) return widths[widths.length - 1][1];
  if (above === 0) return widths[0][1];
  const [z0, w0] = widths[above - 1];
  const [z1, w1] = widths[above];
  return w0 + ((w1 - w0) * (z - z0)) / (z1 - z0);
}

const leftOf = (cut: Cut, w: number): number => cut.left + cut.share * (cut.width - w);
const rightOf = (cut: Cut, w: number): number => cut.left + cut.width - (1 - cut.share) * (cut.width - w);

export const leftAt = (cut: Cut, z: number): number => leftOf(cut, widthAt(cut, z));
export const rightAt = (cut: Cut, z: number): number => rightOf(cut, widthAt(cut, z));

function sideBelow(cut: Cut, top: number, x: (cut: Cut, w: number) => number): Spot[] {
  const side = cut.widths.filter(([z]) => z < top).map(([z, w]): Spot => [x(cut, w), z]);
  side.push([x(cut, widthAt(cut, top)), top]);
  return side;
}

/** The left bank from an elevation down to the floor. */
export const leftBank = (cut: Cut, top: number): Spot[] => sideBelow(cut, top, leftOf).reverse();
/** The right bank from the floor up to an elevation. */
export const rightBank = (cut: Cut, top: number): Spot[] => sideBelow(cut, top, rightOf);
