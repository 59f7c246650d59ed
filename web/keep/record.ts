/** A site as the browser keeps it: its file, what was done to it, and which writing this is. */
import type { Document } from '../state/document.ts';

export interface Kept {
  readonly id: string;
  readonly doc: Document;
  /** When it was last edited, ms since 1970. */
  readonly changed: number;
  /** Marks this writing of it; no two have the same. */
  readonly stamp: string;
  /** The writing that was edited into this one; left out for the first. */
  readonly before?: string;
}

export type Read =
  | {
      readonly kind: 'kept';
      readonly kept: Kept;
      /** Steps to undo or redo were there but could not be read. */
      readonly lostSteps: boolean;
    }
  /** Written by a later version of this page. */
  | { readonly kind: 'newer' }
  | { readonly kind: 'damaged' };

type Edition = Document['now'];

const VERSION = 1;
/** Most characters of the steps beside the file as it stands. A browser keeps about five million in all. */
const STEPS = 200_000;

const pair = ({ label, file }: Edition): string => JSON.stringify([label, file]);

/** As many texts from the front as fit into so many characters. */
function fitting(texts: readonly string[], most: number): string[] {
  let left = most;
  const end = texts.findIndex((text) => {
    left -= text.length;
    return left < 0;
  });
  return end < 0 ? [...texts] : texts.slice(0, end);
}

/**
 * The text a site is kept as. Of its steps those nearest to the present are kept, first back, then forward.
 *
 * @param most characters the steps may take
 */
export function written({ id, doc, changed, stamp, before }: Kept, most = STEPS): string {
  const past = fitting([...doc.past].reverse().map(pair), most);
  const future = fitting(
    doc.future.map(pair),
    past.reduce((left, text) => left - text.length, most),
  );
  const editions = [...past.reverse(), pair(doc.now), ...future];
  const standing = [...doc.past.slice(doc.past.length - past.length), doc.now, ...doc.future.slice(0, future.length)];
  const saved = standing.findIndex(({ file }) => file === doc.kept);
  const head = JSON.stringify({ version: VERSION, id, name: doc.name, changed, stamp, before, at: past.length, saved });
  return `${head.slice(0, -1)},"editions":[${editions.join(',')}]}`;
}

function editionOf(value: unknown): Edition | undefined {
  if (!Array.isArray(value) || value.length !== 2 || typeof value[0] !== 'string') return undefined;
  const [label, file] = value;
  return typeof file === 'object' && file !== null ? { file, label, gesture: undefined } : undefined;
}

/** Those before the first that could not be read. */
function sound(editions: readonly (Edition | undefined)[]): Edition[] {
  const end = editions.indexOf(undefined);
  return (end < 0 ? editions : editions.slice(0, end)) as Edition[];
}

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';

/** The site of a kept text. A site whose present file can be read is read, whatever became of its steps. */
export function read(text: string): Read {
  let value: Record<string, unknown>;
  try {
    value = JSON.parse(text);
  } catch {
    return { kind: 'damaged' };
  }
  const { version, id, name, changed, stamp, before, at, saved, editions } = value ?? {};
  if (typeof version === 'number' && version > VERSION) return { kind: 'newer' };
  const all = Array.isArray(editions) ? editions.map(editionOf) : [];
  const now = typeof at === 'number' ? all[at] : undefined;
  if (version !== VERSION || !isText(id) || !now) return { kind: 'damaged' };
  const present = at as number;
  const past = sound(all.slice(0, present).reverse()).reverse();
  const future = sound(all.slice(present + 1));
  const kept = typeof saved === 'number' ? all[saved]?.file : undefined;
  return {
    kind: 'kept',
    lostSteps: past.length + 1 + future.length < all.length,
    kept: {
      id,
      doc: { name: isText(name) ? name : id, now, past, future, kept },
      changed: typeof changed === 'number' && Number.isFinite(changed) ? changed : 0,
      stamp: isText(stamp) ? stamp : '',
      ...(isText(before) && { before }),
    },
  };
}

/** What a site is called: by its file's title, or else as the file was. */
export function titleOf({ name, now }: Document): string {
  const title = (now.file as { title?: unknown } | null)?.title;
  return isText(title) ? title : name;
}
