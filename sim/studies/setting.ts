/** What one hand can set on a site: a figure of its file, the height of a whole crest, a float, a pool's surface. */
import { type DimensionName, parseQuantity } from '../quantity/index.ts';
import { valueAt, withValueAt } from './place.ts';

export type Setting =
  /** One figure of the file. */
  | { readonly kind: 'figure'; readonly place: string; readonly dimension: DimensionName }
  /** A crest, set by its lowest point; all its points move with it. */
  | { readonly kind: 'crest'; readonly place: string }
  /** A float valve, set by the level at which it shuts; the level of its full flow moves with it. */
  | { readonly kind: 'float'; readonly place: string }
  /** A profile, set by the area at its top; the areas below change in proportion. */
  | { readonly kind: 'areas'; readonly place: string }
  /** What has settled in one layer; what the others caught by then goes along. */
  | { readonly kind: 'muck'; readonly place: string; readonly along: readonly Caught[] };

/** Another layer: its settled volume for each of the one that is set, and the most it has room for, m³. */
export interface Caught {
  readonly place: string;
  readonly per: number;
  readonly most: number;
}

/**
 * Writes an SI figure into a file, where `before` stood.
 *
 * @param along the figure is not the one that is set, and only goes along with it
 */
export type Writer = (value: number, before: unknown, dimension: DimensionName, along: boolean) => unknown;

/** A bare number: SI. */
export const plainly: Writer = (value) => value;

export function dimensionOf(setting: Setting): DimensionName {
  if (setting.kind === 'figure') return setting.dimension;
  if (setting.kind === 'muck') return 'volume';
  return setting.kind === 'areas' ? 'area' : 'length';
}

/** SI value of what stands in a file; undefined where it is no quantity of that dimension. */
export function figureOf(value: unknown, dimension: DimensionName): number | undefined {
  if (typeof value === 'number') return value;
  if (typeof value !== 'string') return undefined;
  const parsed = parseQuantity(value, dimension);
  return parsed.ok ? parsed.value : undefined;
}

/** No figure of a site is beyond this in its SI unit. */
const BEYOND = 1e5;

export const isSensible = (figure: number | undefined): figure is number =>
  figure !== undefined && Math.abs(figure) <= BEYOND;

/** The figures of a file a setting moves together: their places, the one it is named by first. */
function placesOf(file: unknown, setting: Setting): string[] {
  if (setting.kind === 'figure' || setting.kind === 'muck') return [setting.place];
  if (setting.kind === 'float') return [`${setting.place}.set`, `${setting.place}.low`];
  const points = valueAt(file, setting.place);
  if (!Array.isArray(points)) return [];
  const places = points.map((_, i) => `${setting.place}[${i}][1]`);
  if (setting.kind === 'areas') return places.reverse();
  // One that cannot be read was being set: it stays the one the crest is named by until it is mended.
  const height = (place: string): number => {
    const z = figureOf(valueAt(file, place), 'length');
    return isSensible(z) ? z : Number.NEGATIVE_INFINITY;
  };
  return places.sort((a, b) => height(a) - height(b));
}

/** The place of the figure a setting is named by; undefined where the file has none. */
export const placeOf = (file: unknown, setting: Setting): string | undefined => placesOf(file, setting)[0];

/** Whether all figures that move with a setting can be read, and none is beyond any site. */
export function isReadable(file: unknown, setting: Setting): boolean {
  const dimension = dimensionOf(setting);
  const places = placesOf(file, setting);
  return places.length > 0 && places.every((place) => isSensible(figureOf(valueAt(file, place), dimension)));
}

/** How a setting stands in a file, SI; undefined where the file says nothing of it. */
export function settingIn(file: unknown, setting: Setting): number | undefined {
  const place = placeOf(file, setting);
  return place === undefined ? undefined : figureOf(valueAt(file, place), dimensionOf(setting));
}

/** The file with a setting moved to an SI value, what belongs to it moving along. */
export function withSetting(file: unknown, setting: Setting, value: number, write: Writer = plainly): unknown {
  const [first, ...others] = placesOf(file, setting);
  if (first === undefined) return file;
  const dimension = dimensionOf(setting);
  const before = figureOf(valueAt(file, first), dimension);
  let moved = withValueAt(file, first, write(value, valueAt(file, first), dimension, false));
  const now = figureOf(valueAt(moved, first), dimension) ?? value;
  if (setting.kind === 'muck') return withMuckAlong(moved, setting.along, now, write);
  for (const place of others) {
    const old = valueAt(file, place);
    const figure = figureOf(old, dimension);
    if (figure === undefined || before === undefined || now === before) continue;
    const along = setting.kind === 'areas' ? (before > 0 ? (figure * now) / before : figure) : figure + now - before;
    moved = withValueAt(moved, place, write(along, old, dimension, true));
  }
  return moved;
}

/** The file with as much in the other layers as they caught meanwhile. */
function withMuckAlong(file: unknown, along: readonly Caught[], now: number, write: Writer): unknown {
  return along.reduce((moved, { place, per, most }) => {
    const held = Math.min(most, per * now);
    return withValueAt(moved, place, write(held, valueAt(file, place), 'volume', true));
  }, file);
}
