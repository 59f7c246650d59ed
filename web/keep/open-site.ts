import type { Document } from '../state/document.ts';
import type { Kept } from './record.ts';
import { type Put, put, type Store, siteOn, turn } from './shelf.ts';

export const newId = (): string =>
  [...crypto.getRandomValues(new Uint32Array(2))].map((each) => each.toString(36)).join('');

/** What one tab knows of the site it shows: which writing of it it has seen, and what is not on the shelf yet. */
export class OpenSite {
  /** undefined as long as the site is not kept: a demo, or a link's. */
  id: string | undefined;
  readonly #store: () => Store;
  /** The writing last read or written, and whether it was written here. */
  #seen: string | undefined;
  #mine = false;
  /** The site as it was last on the shelf, or as it was opened. */
  #kept: Document | undefined;

  /** @param store may throw an error: a browser may keep nothing for us */
  constructor(store: () => Store) {
    this.#store = store;
  }

  /** @param kept the writing it was opened from; left out for a demo or a link's */
  opened(doc: Document | undefined, kept?: Pick<Kept, 'id' | 'stamp'>): void {
    this.id = kept?.id;
    this.#seen = kept?.stamp;
    this.#mine = false;
    this.#kept = doc;
  }

  /** The site is to be kept from now on, apart from every other. */
  apart(): string {
    this.opened(undefined, { id: newId(), stamp: '' });
    this.#seen = undefined;
    return this.id as string;
  }

  /** What was deleted in another tab is to be kept again. */
  anew(): void {
    this.#kept = undefined;
  }

  /** Whether something was done to it that is not on the shelf. */
  isAhead(doc: Document): boolean {
    if (this.id !== undefined) return doc !== this.#kept;
    return doc.now.file !== this.#kept?.now.file || doc.past.length > 0;
  }

  /** Puts the site on the shelf, unless another tab has written meanwhile: then nothing is done but to say 'part'. */
  write(doc: Document): Put | 'part' {
    const id = this.id ?? this.apart();
    try {
      const store = this.#store();
      if (turn(this.#seen, siteOn(store, id)) === 'part') return 'part';
      const stamp = newId();
      this.#kept = doc;
      const done = put(store, { id, doc, changed: Date.now(), stamp, ...(this.#seen && { before: this.#seen }) });
      if (done === 'full') return done;
      this.#seen = stamp;
      this.#mine = true;
      return done;
    } catch {
      this.#kept = doc;
      return 'full';
    }
  }

  /**
   * What another tab's writing means for this one: the site is deleted; it goes on elsewhere; or what this tab wrote
   * was written over unseen, and has to be kept apart.
   */
  heard(): 'deleted' | 'elsewhere' | 'part' | undefined {
    if (this.id === undefined) return undefined;
    const standing = siteOn(this.#store(), this.id);
    if (!standing) return 'deleted';
    if (standing.stamp === this.#seen) return undefined;
    return this.#mine && standing.before !== this.#seen ? 'part' : 'elsewhere';
  }
}
