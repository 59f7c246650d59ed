import type { CrestPoint, ProfilePoint } from '../scenario.ts';
import type { PartlyFile } from '../schema.ts';
import { floorOf, type Shape, shapeBasin } from '../shapes.ts';
import { floorOfProfile, lowest } from './order.ts';

/** Whatever of a basin could be read. */
export interface BasinRead {
  readonly name: string;
  readonly place: string;
  readonly floor: number | undefined;
  readonly profile: readonly ProfilePoint[] | undefined;
  readonly level: number | 'empty' | undefined;
  readonly leak: { readonly elevation?: number | undefined } | undefined;
}

export type ElementRead = NonNullable<NonNullable<PartlyFile['watercourse']>[number]>;
export type PoolRead = Extract<ElementRead, { kind?: 'pool' | undefined }>;
export type StreamRead = Extract<ElementRead, { kind?: 'stream' | undefined }>;

export const isPool = (element: ElementRead): element is PoolRead => element.kind === 'pool';
export const isStream = (element: ElementRead): element is StreamRead => element.kind === 'stream';

/** The pond's profile, given or made from its shape, where that can be done. */
export function pondProfile(pond: PartlyFile['pond']): readonly ProfilePoint[] | undefined {
  const shape = readShape(pond);
  return pond?.profile ?? (shape && shapeBasin(shape).profile);
}

/** The pond's shape where it makes a basin: all its measures read, and a floor left between its banks. */
export function readShape(pond: PartlyFile['pond']): Shape | undefined {
  const shape = pond?.shape;
  if (shape?.length === undefined || shape.width === undefined || shape.depth === undefined) return undefined;
  if (shape.shelves?.some((shelf) => shelf?.depth === undefined || shelf.width === undefined)) return undefined;
  const whole = shape as Shape;
  const floor = floorOf(whole);
  return floor.length > 0 && floor.width > 0 ? whole : undefined;
}

/** Every basin of the file by its name. A stream's floor is its bed at the lower end, the riser's the suction. */
export function basinsOf(file: PartlyFile): readonly BasinRead[] {
  const { pond, vault, filter, plumbing, pump } = file;
  const basin = (name: string, place: string, parts: Partial<BasinRead> | undefined, floor?: number): BasinRead[] =>
    parts
      ? [
          {
            name,
            place,
            floor: floor ?? floorOfProfile(parts.profile),
            profile: parts.profile,
            level: parts.level,
            leak: parts.leak,
          },
        ]
      : [];
  return [
    ...basin('pond', 'pond', pond && { ...pond, profile: pondProfile(pond) }),
    ...basin('vault', 'vault', vault),
    ...basin('riser', 'plumbing', plumbing, floorOfProfile(plumbing?.profile) ?? pump?.suction),
    ...basin('filter', 'filter', filter),
    ...elementsOf(file).flatMap(([element, place]) => {
      const name = element.name ?? 'nameless basin';
      if (!isStream(element)) return basin(name, place, element);
      return basin(name, place, { level: element.level, leak: element.leak }, element.foot);
    }),
  ];
}

/** The readable parts of the watercourse with their places. */
export function elementsOf(file: PartlyFile): readonly (readonly [ElementRead, string])[] {
  return (file.watercourse ?? []).flatMap((element, i) => (element ? [[element, `watercourse[${i}]`] as const] : []));
}

/** Whether every basin and stone could be read with its name: else a name beside them may be a right one. */
export function namesAreKnown(file: PartlyFile): boolean {
  const unread = (['pond', 'vault', 'plumbing', 'filter', 'watercourse', 'supply'] as const).some(
    (key) => key in file && file[key] === undefined,
  );
  const needed = file.pond !== undefined && file.vault !== undefined && file.plumbing !== undefined;
  const named = (file.watercourse ?? []).every(
    (element) => element?.name !== undefined && (isStream(element) || stonesAreNamed(element)),
  );
  return needed && named && !unread;
}

const stonesAreNamed = ({ stones }: PoolRead): boolean => stones?.every((stone) => stone?.name !== undefined) ?? false;

/** What water must stand above to leave a part of the watercourse: the line that what flows into it may not undercut. */
export function entryLine(file: PartlyFile, i: number): readonly [number | undefined, string] {
  const { watercourse = [], pond } = file;
  if (i >= watercourse.length) {
    const level = typeof pond?.level === 'number' ? pond.level : undefined;
    return [pond?.fillMark ?? level, 'the water of the pond'];
  }
  const element = watercourse[i];
  if (!element) return [undefined, ''];
  if (isPool(element)) return [lowestStone(element), `the lowest stone of ${element.name ?? 'the next pool'}`];
  const { foot, slope, length, name } = element;
  const known = foot !== undefined && slope !== undefined && length !== undefined;
  return [known ? foot + slope * length : undefined, `the upper end of ${name ?? 'the next stream'}`];
}

function lowestStone(pool: PoolRead): number | undefined {
  const lines = (pool.stones ?? []).flatMap((stone) => lowest(stone?.crest as readonly CrestPoint[] | undefined) ?? []);
  return lines.length > 0 ? Math.min(...lines) : undefined;
}
