/** A layer between two elevations (m) of which a fraction (0..1) is not water. */
export interface Displacement {
  readonly from: number;
  readonly to: number;
  readonly fraction: number;
}

/**
 * What a basin holds at a level: pieces between elevations, in each of which the open area is linear in elevation, so
 * that the volume is piecewise quadratic and its inverse a square root. Exact both ways; no iteration.
 * The last piece has no upper end and a constant area.
 */
export interface Storage {
  /** Elevation of each piece's lower end, m, ascending. */
  readonly z: Float64Array;
  /** Open area at the lower end, m². */
  readonly area: Float64Array;
  /** Growth of the area with elevation inside the piece, m²/m. */
  readonly growth: Float64Array;
  /** Volume below the lower end, m³. */
  readonly volume: Float64Array;
  /** The piece found last; a hint for the next search, of no effect on any result. */
  hint: number;
}

/** Smallest area that counts in a slope of level by volume, m²: keeps the slope finite at the tip of a cone. */
const LEAST_AREA = 1e-6;

function planArea(profile: readonly (readonly [number, number])[], z: number, side: 'below' | 'above'): number {
  const last = profile.length - 1;
  if (z > profile[last][0] || (side === 'above' && z === profile[last][0])) return profile[last][1];
  for (let i = last; i > 0; i--) {
    const [z0, a0] = profile[i - 1];
    const [z1, a1] = profile[i];
    if (z1 > z0 && (side === 'above' ? z >= z0 : z > z0)) return a0 + ((z - z0) / (z1 - z0)) * (a1 - a0);
  }
  return profile[0][1];
}

function openFraction(layers: readonly Displacement[], z: number): number {
  let open = 1;
  for (const layer of layers) if (z > layer.from && z < layer.to) open -= layer.fraction;
  return open;
}

/**
 * Builds the storage of a basin.
 *
 * @param profile [elevation m, plan area m²], ascending; two points at one elevation make a ledge
 * @param displaced layers taken up by rock, gravel or media; overlapping fractions add, to less than 1
 */
export function makeStorage(
  profile: readonly (readonly [number, number])[],
  displaced: readonly Displacement[] = [],
): Storage {
  const floor = profile[0][0];
  const cuts = new Set<number>(profile.map(([z]) => z));
  for (const layer of displaced) for (const z of [layer.from, layer.to]) if (z > floor) cuts.add(z);
  const z = Float64Array.from([...cuts].sort((p, q) => p - q));
  const n = z.length;
  const area = new Float64Array(n);
  const growth = new Float64Array(n);
  const volume = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const top = i + 1 < n ? z[i + 1] : z[i] + 1;
    const open = openFraction(displaced, (z[i] + top) / 2);
    area[i] = open * planArea(profile, z[i], 'above');
    const end = open * planArea(profile, top, 'below');
    growth[i] = i + 1 < n ? (end - area[i]) / (top - z[i]) : 0;
    if (i + 1 < n) volume[i + 1] = volume[i] + ((area[i] + end) / 2) * (top - z[i]);
  }
  return { z, area, growth, volume, hint: 0 };
}

/**
 * Level and open area at a volume.
 *
 * @param volume m³; below zero (rounding) the floor's area carries on
 * @param out receives [level m, open area m², growth of the area m²/m]
 */
export function locate(s: Storage, volume: number, out: Float64Array): void {
  let i = s.hint;
  while (i > 0 && volume < s.volume[i]) i--;
  while (i + 1 < s.volume.length && volume >= s.volume[i + 1]) i++;
  s.hint = i;
  const rest = volume - s.volume[i];
  const a = s.area[i];
  const g = s.growth[i];
  const square = a * a + 2 * g * rest;
  const area = square > 0 ? Math.sqrt(square) : 0;
  const sum = a + area;
  out[0] = s.z[i] + (sum > 0 ? (2 * rest) / sum : 0);
  out[1] = Math.max(area, LEAST_AREA);
  out[2] = g;
}

const scratch = new Float64Array(3);

/** Elevation of the water surface at a volume (m³), m. */
export function levelOf(s: Storage, volume: number): number {
  locate(s, volume, scratch);
  return scratch[0];
}

/** Volume below a level (m), m³; 0 at and below the floor. */
export function volumeAt(s: Storage, level: number): number {
  if (level <= s.z[0]) return 0;
  let i = s.z.length - 1;
  while (level < s.z[i]) i--;
  const d = level - s.z[i];
  return s.volume[i] + d * (s.area[i] + 0.5 * s.growth[i] * d);
}

/** Open area of the water surface at a level (m), m²; the floor's area below the floor. */
export function areaAt(s: Storage, level: number): number {
  let i = s.z.length - 1;
  while (i > 0 && level < s.z[i]) i--;
  return s.area[i] + s.growth[i] * Math.max(0, level - s.z[i]);
}
