/** Values of a scenario file by their place, as the reader names it: `watercourse[0].stones[1].crest`. */

/** The keys and indices on the way to a place. */
export function placeKeys(place: string): (string | number)[] {
  const keys = place.matchAll(/\[(\d+)\]|\["([^"]+)"\]|([^.[\]]+)/g);
  return [...keys].map(([, index, quoted, plain]) => (index === undefined ? (quoted ?? plain) : Number(index)));
}

/** What stands at a place of a file; undefined where nothing does. */
export function valueAt(file: unknown, place: string): unknown {
  let part = file;
  for (const key of placeKeys(place)) {
    if (typeof part !== 'object' || part === null || !Object.hasOwn(part, key)) return undefined;
    part = (part as Record<string | number, unknown>)[key];
  }
  return part;
}

/** The file with another value at a place, undefined taking the key away; what lies beside the way is shared. */
export function withValueAt(file: unknown, place: string, value: unknown): unknown {
  return put(file, placeKeys(place), value);
}

/** The file with other values at several places, one after the other. */
export const withValuesAt = (file: unknown, edits: readonly (readonly [place: string, value: unknown])[]): unknown =>
  edits.reduce<unknown>((changed, [place, value]) => withValueAt(changed, place, value), file);

function put(part: unknown, [key, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (key === undefined) return value;
  const list = Array.isArray(part) || (part === undefined && typeof key === 'number');
  const copy = (list ? [...((part as unknown[]) ?? [])] : { ...(part as object) }) as Record<string | number, unknown>;
  const inner = put(Object.hasOwn(copy, key) ? copy[key] : undefined, rest, value);
  if (inner !== undefined) copy[key] = inner;
  else if (Array.isArray(copy)) copy.splice(Number(key), 1);
  else delete copy[key];
  return copy;
}
