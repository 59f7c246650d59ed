/** What turning a dial, or typing into it, does to the file. */
import { valueAt, withValueAt, withValuesAt } from '../../sim/studies/place.ts';
import {
  dimensionOf,
  figureOf,
  isReadable,
  isSensible,
  placeOf,
  type Setting,
  withSetting,
} from '../../sim/studies/setting.ts';
import type { Edits, Ruler } from './dials-kinds.ts';
import type { Document } from './document.ts';
import { asTyped, shownAs, toFile } from './typed.ts';

/** The file with its last good text where a setting's can't be read: a crest that is mended keeps its shape. */
function mended({ now, past }: Document, setting: Setting): unknown {
  if (isReadable(now.file, setting)) return now.file;
  const good = past.findLast(({ file }) => isReadable(file, setting));
  return good ? withValueAt(now.file, setting.place, valueAt(good.file, setting.place)) : now.file;
}

/** The file with a dial moved to an SI value. */
export const moved = (doc: Document, { setting, manner }: Ruler, to: number): unknown =>
  withSetting(mended(doc, setting), setting, to, asTyped(manner));

export interface Typed {
  readonly file: unknown;
  readonly place: string;
  /** What stands in the file now: a text that can't be read goes in as it is, for the reader to refuse. */
  readonly value: unknown;
}

/** The file with a text typed into a dial; a bare number takes the unit the dial shows. */
export function typedInto(doc: Document, { setting, manner, text }: Ruler, typed: string): Typed | undefined {
  const file = mended(doc, setting);
  const place = placeOf(file, setting);
  if (place === undefined) return undefined;
  const dimension = dimensionOf(setting);
  const figures = toFile(typed, shownAs(valueAt(file, place), dimension, manner) || text);
  // What no site has stays as it was typed.
  const value = typeof figures === 'number' && !isSensible(figures) ? typed : figures;
  const figure = figureOf(value, dimension);
  if (!isSensible(figure)) return { file: withValueAt(file, place, value), place, value };
  const write = asTyped(manner);
  const verbatim: typeof write = (to, before, of, along) => (along ? write(to, before, of, along) : value);
  return { file: withSetting(file, setting, figure, verbatim), place, value };
}

/** The file after a choice. */
export const chosen = (file: unknown, edits: Edits): unknown => withValuesAt(file, edits);
