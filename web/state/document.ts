/**
 * The site's file as it is being edited: the values as they were typed, with their units, and every earlier state of
 * them. Nothing here is ever changed in place.
 */
import { parseJson } from '../../sim/scenario/json.ts';

/** One state of the file, and what was done to get there. */
interface Edition {
  readonly file: unknown;
  readonly label: string;
  /** Edits of one gesture (a drag, a held key) are undone together. */
  readonly gesture: unknown;
}

export interface Document {
  /** What the address and a saved file call it. */
  readonly name: string;
  readonly now: Edition;
  readonly past: readonly Edition[];
  readonly future: readonly Edition[];
  /** The file as it was last opened or saved. */
  readonly kept: unknown;
}

/** A document of a file's text; undefined where the text is no strict JSON (what is wrong with it the reader tells). */
export function openDocument(name: string, text: string): Document | undefined {
  const json = parseJson(text);
  if (!json.ok) return undefined;
  const file = json.value;
  return { name, now: { file, label: 'opened', gesture: undefined }, past: [], future: [], kept: file };
}

/**
 * The document with another file in it; the same document where nothing changes.
 *
 * @param label what was done, as 'undo' names it
 * @param gesture edits with the same one, other than undefined, become one step
 */
export function edited(doc: Document, file: unknown, label: string, gesture?: unknown): Document {
  if (file === doc.now.file) return doc;
  const going = gesture !== undefined && doc.now.gesture === gesture && doc.past.length > 0;
  const past = going ? doc.past : [...doc.past, doc.now];
  return { ...doc, now: { file, label, gesture }, past, future: [] };
}

/** One step back; the same document where there is none. */
export function undone(doc: Document): Document {
  const before = doc.past.at(-1);
  if (before === undefined) return doc;
  return { ...doc, now: before, past: doc.past.slice(0, -1), future: [doc.now, ...doc.future] };
}

/** One undone step done again; the same document where there is none. */
export function redone(doc: Document): Document {
  const [next, ...future] = doc.future;
  if (next === undefined) return doc;
  return { ...doc, now: next, past: [...doc.past, doc.now], future };
}

/** What one step back would undo, and one forward do again; undefined where there is none. */
export const undoLabel = (doc: Document): string | undefined => (doc.past.length > 0 ? doc.now.label : undefined);
export const redoLabel = (doc: Document): string | undefined => doc.future[0]?.label;

/** Whether something would be lost if the page were closed. */
export const isDirty = (doc: Document): boolean => doc.now.file !== doc.kept;

export const saved = (doc: Document): Document => ({ ...doc, kept: doc.now.file });

/** The text a file of it is saved as. */
export const textOf = (doc: Document): string => `${JSON.stringify(doc.now.file, null, 2)}\n`;
