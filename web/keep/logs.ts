/** Where the browser keeps the logs of levels, each beside the site it was typed for. */
import type { Measured } from '../../sim/log/index.ts';
import { namedBy } from './address.ts';
import { idIn, type Store, siteOn } from './shelf.ts';

export interface KeptLog {
  readonly text: string;
  readonly measured: Measured | undefined;
}

export type FoundLog =
  | { readonly kind: 'kept'; readonly log: KeptLog }
  /** What could not be read as it was kept, as it stands there, so that nothing is lost. */
  | { readonly kind: 'damaged'; readonly log: KeptLog };

const KEY = 'tumblebay log ';
const VERSION = 1;
const OWN = 'own ';
/** So much of a link's case tells it from others. */
const LINK = 40;

/** Under what the log of the site of an address is kept. */
export function logKey(hash: string): string {
  const named = namedBy(hash);
  switch (named.kind) {
    case 'own':
      return KEY + OWN + named.id;
    case 'demo':
      return `${KEY}demo ${named.name}`;
    case 'link':
      return `${KEY}link ${named.hash.slice(-LINK)}`;
    case 'nothing':
      return `${KEY}first`;
  }
}

/** The log that is kept for an address; undefined where there is none, or the browser keeps nothing for us. */
export function logOf(store: () => Store, hash: string): FoundLog | undefined {
  let kept: string | null;
  try {
    kept = store().getItem(logKey(hash));
  } catch {
    return undefined;
  }
  if (kept === null) return undefined;
  try {
    const { version, text, measured } = JSON.parse(kept);
    const sound = version === VERSION && typeof text === 'string' && ['up', 'down', undefined].includes(measured);
    if (sound) return { kind: 'kept', log: { text, measured } };
  } catch {}
  return { kind: 'damaged', log: { text: kept, measured: undefined } };
}

/** Keeps a log; false where the browser takes no more. Logs of sites that were deleted make room. */
export function keepLog(store: () => Store, hash: string, log: KeptLog): boolean {
  const key = logKey(hash);
  const put = (): boolean => {
    try {
      if (log.text === '') store().removeItem(key);
      else store().setItem(key, JSON.stringify({ version: VERSION, ...log }));
      return true;
    } catch {
      return false;
    }
  };
  return put() || (dropOrphans(store) && put());
}

/** Whether any log was there without its site, and is gone. */
function dropOrphans(store: () => Store): boolean {
  try {
    const there = store();
    const keys = Array.from({ length: there.length }, (_, i) => there.key(i) ?? '');
    const sites = new Set(keys.map(idIn));
    const orphans = keys.filter(
      (key) => key.startsWith(KEY + OWN) && isGone(there, sites, key.slice((KEY + OWN).length)),
    );
    for (const key of orphans) there.removeItem(key);
    return orphans.length > 0;
  } catch {
    return false;
  }
}

const isGone = (store: Store, sites: ReadonlySet<string | undefined>, id: string): boolean =>
  !sites.has(id) && siteOn(store, id) === undefined;
