/** What is on the screen beside the site itself, kept by the browser so that a reload brings it back. */
import type { Display, Subject } from '../engine/protocol.ts';

export interface Remembered {
  /** The address's part from '#' on, under which it stood. */
  readonly address: string;
  readonly about: Subject;
  /** Left out: as the file has it. */
  readonly display?: Display;
  /** Seconds from the start of the run, or of the trial. */
  readonly moment: number;
  readonly window: readonly [number, number];
  /** Name of the check whose trial stood in place of the run. */
  readonly trial?: string;
}

/** A site as the first version kept it with the screen: its file as it was opened, and as it was edited since. */
export interface OldSite {
  readonly name: string;
  readonly opened: string;
  readonly file?: unknown;
}

export type Recalled =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'kept'; readonly kept: Remembered; readonly site?: OldSite }
  /** What could not be read, so that it is not lost. */
  | { readonly kind: 'damaged'; readonly text: string };

type Store = Pick<Storage, 'getItem' | 'setItem'>;

const KEY = 'tumblebay page';
const VERSION = 2;

const SUBJECTS: readonly unknown[] = ['stop', 'filling', 'filter'] satisfies Subject[];
const DISPLAYS: readonly unknown[] = ['metric', 'us', undefined];

const isText = (value: unknown): value is string => typeof value === 'string';
const isFigure = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** The kept page of a text; undefined where it is none of this version or the one before. */
function keptIn(text: string): Pick<Extract<Recalled, { kind: 'kept' }>, 'kept' | 'site'> | undefined {
  try {
    const { version, name, opened, file, ...kept } = JSON.parse(text);
    const { address, about, display, moment, window, trial } = kept;
    const sound =
      (version === VERSION || (version === 1 && isText(name) && isText(opened))) &&
      isText(address) &&
      (trial === undefined || isText(trial)) &&
      SUBJECTS.includes(about) &&
      DISPLAYS.includes(display) &&
      Array.isArray(window) &&
      window.length === 2 &&
      [moment, ...window].every(isFigure);
    if (!sound) return undefined;
    return version === 1 ? { kept, site: { name, opened, ...(file !== undefined && { file }) } } : { kept };
  } catch {
    return undefined;
  }
}

/** What a store has of the page. Never throws: a browser may keep nothing for us, or refuse to say. */
export function recall(store: () => Store): Recalled {
  let text: string | null;
  try {
    text = store().getItem(KEY);
  } catch {
    return { kind: 'nothing' };
  }
  if (text === null) return { kind: 'nothing' };
  const kept = keptIn(text);
  return kept ? { kind: 'kept', ...kept } : { kind: 'damaged', text };
}

/** Keeps the page; false where the store takes no more. */
export function remember(store: () => Store, kept: Remembered): boolean {
  try {
    store().setItem(KEY, JSON.stringify({ version: VERSION, ...kept }));
    return true;
  } catch {
    return false;
  }
}
