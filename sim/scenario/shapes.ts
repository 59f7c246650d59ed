import type { DisplacedLayer, ProfilePoint } from './scenario.ts';

/** A pond by its plan and a few measurements, m; elevations from the site's datum. */
export interface Shape {
  readonly plan?: 'rectangle' | 'ellipse' | 'freeform' | undefined;
  /** Plan area over length × width, where no plan is named. */
  readonly factor?: number | undefined;
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  /** Elevation of the brim, 0 if left out. */
  readonly brim?: number | undefined;
  /** Run per rise of every bank. */
  readonly slope?: number | undefined;
  /** Flat rings: how far under the brim, how wide. */
  readonly shelves?: readonly { readonly depth: number; readonly width: number }[] | undefined;
  /** Thickness of a gravel layer from the floor up. */
  readonly gravel?: number | undefined;
}

export interface ShapedBasin {
  readonly profile: readonly ProfilePoint[];
  readonly displaced: readonly DisplacedLayer[];
  /** Length × width × depth, m³: what the box would hold. */
  readonly boxVolume: number;
}

/**
 * Plan area over length × width. The freeform figure is common practice, 0.80 to 0.85, no source.
 */
export const PLAN_FACTORS = { rectangle: 1, ellipse: Math.PI / 4, freeform: 0.82 } as const;

/** Pore space of loose washed gravel, common practice (about 0.40). */
const GRAVEL_POROSITY = 0.4;

/** Straight pieces of the profile between two ledges. */
const PIECES = 8;

/**
 * How much the inner points between two ledges lie under the true area, m², so that the stretch holds exactly its
 * volume. The area is a quadratic of the depth with the leading coefficient c = factor · (2 slope)²: each chord over a
 * height h overstates the volume by c h³/6, and each of the n − 1 inner points takes h times this off it. At the ledges
 * the area stays true; the volume up to a point between is good to a fifteenth of what plain chords add over the stretch.
 */
function setIn(factor: number, slope: number, height: number): number {
  const piece = height / PIECES;
  return ((PIECES / (PIECES - 1)) * factor * (2 * slope * piece) ** 2) / 6;
}

/** Less of both dimensions at a depth under the brim, counting the shelves above it and, if `at`, those at it. */
function narrowing(shape: Shape, depth: number, at: boolean): number {
  let less = 2 * (shape.slope ?? 0) * depth;
  for (const shelf of shape.shelves ?? []) {
    if (shelf.depth < depth || (at && shelf.depth === depth)) less += 2 * shelf.width;
  }
  return less;
}

/** Length and width that are left at the floor: 0 or less where the banks meet above it. */
export function floorOf(shape: Shape): { readonly length: number; readonly width: number } {
  const less = narrowing(shape, shape.depth, true);
  return { length: shape.length - less, width: shape.width - less };
}

/** The profile of a shape from the floor to the brim, its gravel, and the volume of the box around it. */
export function shapeBasin(shape: Shape): ShapedBasin {
  const { length, width, depth, brim = 0, slope = 0, gravel = 0 } = shape;
  const factor = shape.factor ?? PLAN_FACTORS[shape.plan ?? 'rectangle'];
  const area = (at: number, below: boolean): number => {
    const less = narrowing(shape, at, below);
    return factor * (length - less) * (width - less);
  };
  const ledges = [...new Set((shape.shelves ?? []).map((shelf) => shelf.depth))].filter((d) => d < depth);
  const edges = [depth, ...ledges.sort((a, b) => b - a), 0];
  const profile: ProfilePoint[] = [];
  for (let i = 0; i + 1 < edges.length; i += 1) {
    const [lower, upper] = [edges[i], edges[i + 1]];
    const less = setIn(factor, slope, lower - upper);
    profile.push([brim - lower, area(lower, false)]);
    for (let piece = 1; piece < PIECES; piece += 1) {
      const at = lower + ((upper - lower) * piece) / PIECES;
      profile.push([brim - at, area(at, false) - less]);
    }
    profile.push([brim - upper, area(upper, true)]);
  }
  const floor = brim - depth;
  return {
    profile,
    displaced: gravel > 0 ? [{ from: floor, to: floor + gravel, fraction: 1 - GRAVEL_POROSITY }] : [],
    boxVolume: length * width * depth,
  };
}
