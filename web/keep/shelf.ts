/** Where the browser keeps sites: each under a key of its own, so that what becomes of one touches no other. */
import { type Kept, read, written } from './record.ts';

export type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

const SITE = 'tumblebay site ';
const DELETED = 'tumblebay deleted';

const keyOf = (id: string): string => SITE + id;

/** The site whose key it is; undefined for another key. */
export const idIn = (key: string | null): string | undefined =>
  key?.startsWith(SITE) ? key.slice(SITE.length) : undefined;

/** What stands on the shelf and cannot be shown, as it stands there. */
export interface Aside {
  readonly key: string;
  readonly text: string;
}

export interface Stock {
  /** The one last edited first. */
  readonly sites: readonly Kept[];
  readonly newer: readonly Aside[];
  readonly damaged: readonly Aside[];
  /** The last one deleted, as long as it can be brought back. */
  readonly deleted: Kept | undefined;
}

function keysOf(store: Store): string[] {
  return Array.from({ length: store.length }, (_, i) => store.key(i)).filter((key) => key !== null);
}

/** Everything on the shelf. What cannot be read stays where it is: nothing writes over it. */
export function takeStock(store: Store): Stock {
  const sites: Kept[] = [];
  const asides: Record<'newer' | 'damaged', Aside[]> = { newer: [], damaged: [] };
  for (const key of keysOf(store)) {
    const id = idIn(key);
    if (id === undefined) continue;
    const text = store.getItem(key) ?? '';
    const reading = read(text);
    // A text under a key that is not its own was put there by no version of this page.
    if (reading.kind === 'kept' && reading.kept.id === id) sites.push(reading.kept);
    else asides[reading.kind === 'newer' ? 'newer' : 'damaged'].push({ key, text });
  }
  sites.sort((a, b) => b.changed - a.changed);
  return { sites, ...asides, deleted: siteAt(store, DELETED) };
}

function siteAt(store: Store, key: string): Kept | undefined {
  const text = store.getItem(key);
  const reading = text === null ? undefined : read(text);
  return reading?.kind === 'kept' ? reading.kept : undefined;
}

export const siteOn = (store: Store, id: string): Kept | undefined => siteAt(store, keyOf(id));

/** Kept whole; kept without its steps; or not kept, for the shelf is full. */
export type Put = 'whole' | 'short' | 'full';

/** Puts a site on the shelf. Where it is full, what was deleted makes room, then the site's own steps. */
export function put(store: Store, kept: Kept, key = keyOf(kept.id)): Put {
  const set = (text: string): boolean => {
    try {
      store.setItem(key, text);
      return true;
    } catch {
      return false;
    }
  };
  if (set(written(kept))) return 'whole';
  if (key !== DELETED) store.removeItem(DELETED);
  if (key !== DELETED && set(written(kept))) return 'whole';
  return set(written(kept, 0)) ? 'short' : 'full';
}

/** Takes a site off the shelf; it can be brought back until another is, or the room is needed. False: it stays. */
export function take(store: Store, id: string): boolean {
  const kept = siteOn(store, id);
  store.removeItem(keyOf(id));
  if (!kept || put(store, kept, DELETED) !== 'full') return true;
  put(store, kept);
  return false;
}

/** The site last deleted, on the shelf again; undefined where there is none, or no room for it. */
export function bringBack(store: Store): Kept | undefined {
  const kept = siteAt(store, DELETED);
  if (!kept) return undefined;
  store.removeItem(DELETED);
  if (put(store, kept) !== 'full') return kept;
  put(store, kept, DELETED);
  return undefined;
}

/** What a tab may do with its edits of a site, of which it last saw one writing and now finds another. */
export type Turn =
  /** Write them over what stands there, which they were made from. */
  | 'write'
  /** Keep them beside it as a site of their own: another tab has written meanwhile. */
  | 'part';

/**
 * @param seen stamp of the writing the tab has read or written last; undefined where it has done neither
 * @param standing what stands on the shelf; undefined where the site has been deleted, and is then kept again
 */
export function turn(seen: string | undefined, standing: Pick<Kept, 'stamp'> | undefined): Turn {
  return standing === undefined || standing.stamp === seen ? 'write' : 'part';
}
