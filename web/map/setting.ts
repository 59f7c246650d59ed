/** Which setting of pump and valves a place of a map is, read between the map's own points. Pure. */
import type { MapPoint, OperatingMap } from '../../sim/map/answer.ts';
import type { Setting } from '../../sim/map/seeker.ts';
import { type Axis, type Place, type Ruler, rulersOf, stepsOf, valueAt } from './ruler.ts';

export interface PlaceSet {
  readonly place: Place;
  readonly setting: Setting;
}

/** Openings are written so fine into a file. */
const DIGITS = 4;
/** A valve that is not shut is open by so much at the least, −. */
const LEAST = 0.01;

/**
 * The setting of a place, or of the nearest that has one; undefined where none has.
 *
 * @param along the ruler on which the nearest is sought; undefined: anywhere on the plane
 */
export function setAt(map: OperatingMap, place: Place, along?: Axis): PlaceSet | undefined {
  const [x, y] = place;
  if (map.plane === 'valves') return { place, setting: { bottom: x, top: y, speed: map.now.speed } };
  const setting = settingBetween(map, place);
  if (setting) return { place, setting };
  for (const near of byDistance(map, place, along)) {
    const found = settingBetween(map, near);
    if (found) return { place: near, setting: found };
  }
  return undefined;
}

/** All places a hand may set, the nearest first, as they lie on the plane. */
function byDistance(map: OperatingMap, [x, y]: Place, along: Axis | undefined): Place[] {
  const rulers = rulersOf(map);
  const xs = along === 'y' ? [x] : valuesOf(rulers.x);
  const ys = along === 'x' ? [y] : valuesOf(rulers.y);
  const [wide, high] = [rulers.x.to - rulers.x.from, rulers.y.to - rulers.y.from];
  const far = (at: Place): number => Math.hypot((at[0] - x) / wide, (at[1] - y) / high);
  return xs.flatMap((a) => ys.map((b): Place => [a, b])).sort((a, b) => far(a) - far(b));
}

const valuesOf = (ruler: Ruler): number[] =>
  Array.from({ length: stepsOf(ruler, ruler.to) - stepsOf(ruler, ruler.from) + 1 }, (_, i) =>
    valueAt(ruler, stepsOf(ruler, ruler.from) + i),
  );

/**
 * In the plane of flow one valve is always open, so that both openings are one number: by how much the top one is wider.
 * It is nearly straight in the speed and in the logarithm of bottom over top feed; that is endless where a valve is
 * shut, and goes on to there as it went before.
 */
function settingBetween({ x, y, points }: OperatingMap, [speed, share]: Place): Setting | undefined {
  if (share <= 0 || share >= 1) return both(share <= 0 ? 1 : -1, speed);
  const rows = y.flatMap((value, j) => (value > 0 && value < 1 ? [j] : []));
  if (rows.length < 2) return undefined;
  const above = rows.findIndex((j) => y[j] >= share);
  const upper = Math.max(1, above < 0 ? rows.length - 1 : above);
  const [low, high] = [rows[upper - 1], rows[upper]];
  const widerIn = (j: number): number | undefined => wider(x, points.slice(j * x.length, (j + 1) * x.length), speed);
  const [from, to] = [widerIn(low), widerIn(high)];
  if (from === undefined || to === undefined) return undefined;
  const part = (odds(share) - odds(y[low])) / (odds(y[high]) - odds(y[low]));
  const most = 1 - LEAST;
  return both(Math.min(most, Math.max(-most, from + part * (to - from))), speed);
}

const odds = (share: number): number => Math.log(share / (1 - share));

/** By how much the top valve is wider than the bottom one at a speed, in a row of the map; undefined beside blank points. */
function wider(x: readonly number[], row: readonly MapPoint[], speed: number): number | undefined {
  const next = x.findIndex((value) => value >= speed - 1e-9);
  if (next < 0) return undefined;
  const last = Math.abs(x[next] - speed) < 1e-9 ? next : next - 1;
  const at = ({ bottom, top }: MapPoint): number => (bottom === null || top === null ? Number.NaN : top - bottom);
  const [a, b] = [at(row[last]), at(row[next])];
  const value = last === next ? a : a + ((b - a) * (speed - x[last])) / (x[next] - x[last]);
  return Number.isNaN(value) ? undefined : value;
}

const both = (more: number, speed: number): Setting => ({
  bottom: Number((more > 0 ? 1 - more : 1).toFixed(DIGITS)),
  top: Number((more < 0 ? 1 + more : 1).toFixed(DIGITS)),
  speed,
});
