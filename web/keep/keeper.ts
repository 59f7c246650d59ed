import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { demoSites, demoText } from '../sites.ts';
import { type Document, edited, openDocument } from '../state/document.ts';
import type { Remembered } from '../state/remembered.ts';
import type { Session } from '../state/session.ts';
import { addressOf, type Named, namedBy } from './address.ts';
import { lasting, type News } from './news.ts';
import { newId, OpenSite } from './open-site.ts';
import { type Kept, titleOf } from './record.ts';
import { type Screen, ScreenMemory } from './screen.ts';
import { idIn, siteOn } from './shelf.ts';

/** The page has stood still for this long before it is kept, ms; while a hand is at work, it is kept this often. */
const REST = 400;
const LONGEST = 2000;

export interface KeptPage extends ReactiveControllerHost {
  /** What is on the screen; undefined as long as there is nothing. */
  screen(): Screen | undefined;
  /** Another site is to come. */
  clear(): void;
}

/** Which site is open, and that nothing done to it is lost: demos and the sites of links are kept once edited. */
export class Keeper implements ReactiveController {
  news: News = {};
  readonly memory = new ScreenMemory();
  readonly session: Session;
  named: Named = { kind: 'nothing' };
  /** What is on the screen came over a reload, and is to stand as it stood. */
  resuming: Remembered | undefined;
  readonly #page: KeptPage;
  readonly #site = new OpenSite(() => localStorage);
  #opening = 0;
  #rest: ReturnType<typeof setTimeout> | undefined;
  #since: number | undefined;

  constructor(page: KeptPage, session: Session) {
    this.#page = page;
    this.session = session;
    page.addController(this);
  }

  hostConnected(): void {
    this.#begin();
    addEventListener('pagehide', this.keep);
    addEventListener('storage', this.#heard);
    addEventListener('hashchange', this.#addressed);
    document.addEventListener('visibilitychange', this.keep);
  }

  hostDisconnected(): void {
    removeEventListener('pagehide', this.keep);
    removeEventListener('storage', this.#heard);
    removeEventListener('hashchange', this.#addressed);
    document.removeEventListener('visibilitychange', this.keep);
    clearTimeout(this.#rest);
  }

  hostUpdated(): void {
    // Its address must change while the page stands: a page on its way out is loaded anew under the old one.
    const { doc } = this.session;
    if (doc && this.#site.id === undefined && this.#site.isAhead(doc)) {
      this.keep();
      return;
    }
    const now = performance.now();
    this.#since ??= now;
    clearTimeout(this.#rest);
    this.#rest = setTimeout(this.keep, Math.min(REST, Math.max(0, this.#since + LONGEST - now)));
  }

  tell(news: News): void {
    this.news = { ...this.news, ...news };
    this.#page.requestUpdate();
  }

  get title(): string {
    const { doc, name } = this.session;
    return doc ? titleOf(doc) : name;
  }

  /** What stood here before a reload, else the site of the address, else the first. */
  #begin(): void {
    const { kept, site } = this.memory;
    if (kept) {
      this.resuming = kept;
      this.session.about = kept.about;
      this.session.display = kept.display;
    }
    const isOwn = site && (site.file !== undefined || !demoSites.some(({ name }) => name === site.name));
    const doc = isOwn ? openDocument(site.name, site.opened) : undefined;
    const edits = 'the edits before the page was loaded anew';
    if (doc) {
      this.#openKept(newly(site?.file === undefined ? doc : edited(doc, site.file, edits)));
      this.#keepSite();
    } else void this.#show(namedBy(kept?.address ?? location.hash));
  }

  readonly #addressed = (): void => this.choose(namedBy(location.hash));

  /** Opens a demo, a site kept here, or a link's. */
  choose(named: Named): void {
    this.#leave();
    void this.#show(named);
  }

  /** A site more, which is opened. */
  add(doc: Document): void {
    this.#leave();
    this.#openKept(newly(doc));
    this.#keepSite();
  }

  #leave(): void {
    this.keep();
    this.resuming = undefined;
    this.news = lasting(this.news);
    this.#page.clear();
  }

  async #show(named: Named): Promise<void> {
    const opening = ++this.#opening;
    const kept = named.kind === 'own' ? this.#onShelf(named.id) : undefined;
    if (kept) return this.#openKept(kept);
    if (named.kind === 'own') {
      this.resuming = undefined;
      this.tell({ gone: true });
    }
    if (named.kind === 'link' && (await this.#follow(named, opening))) return;
    const asked = named.kind === 'demo' && demoSites.find(({ name }) => name === named.name);
    const { name, title } = asked || demoSites[0];
    try {
      const text = demoText(name);
      const there = typeof text === 'string' ? text : await text;
      if (opening === this.#opening) this.#open(named.kind === 'nothing' ? named : { kind: 'demo', name }, name, there);
    } catch {
      this.tell({ unfetched: title });
    }
  }

  /** False where the link carries no case that can be shown. */
  async #follow(named: Extract<Named, { kind: 'link' }>, opening: number): Promise<boolean> {
    const { follow } = await import('./link.ts');
    const followed = await follow(named.hash);
    if (opening !== this.#opening) return true;
    if (followed.kind !== 'case') {
      this.tell({ link: followed.kind });
      return false;
    }
    const { about, display, file } = followed.carried;
    this.session.about = about;
    this.session.display = display;
    this.#open(named, 'site', JSON.stringify(file));
    return true;
  }

  #onShelf(id: string): Kept | undefined {
    try {
      return siteOn(localStorage, id);
    } catch {
      return undefined;
    }
  }

  #open(named: Named, name: string, text: string): void {
    this.#stand(named);
    this.session.open(name, text);
    this.#site.opened(this.session.doc);
  }

  #openKept(kept: Kept): void {
    const { id, doc, stamp } = kept;
    this.#open({ kind: 'own', id }, id, JSON.stringify(doc.now.file));
    // The file that is asked about and the one with steps are the same one.
    const { file } = this.session.doc?.now ?? doc.now;
    this.session.doc = { ...doc, now: { ...doc.now, file }, kept: doc.kept === doc.now.file ? file : doc.kept };
    this.#site.opened(stamp === '' ? undefined : this.session.doc, kept);
  }

  #stand(named: Named): void {
    this.named = named;
    if (named.kind !== 'nothing') history.replaceState(null, '', addressOf(named));
  }

  readonly keep = (): void => {
    clearTimeout(this.#rest);
    this.#since = undefined;
    this.#keepSite();
    const { refused } = this.memory;
    const screen = this.#page.screen();
    if (screen) this.memory.keep(screen);
    if (refused !== this.memory.refused) this.#page.requestUpdate();
  };

  #keepSite(): void {
    const { doc } = this.session;
    if (!doc || !this.#site.isAhead(doc)) return;
    const done = this.#site.write(doc);
    if (this.#site.id !== undefined) this.#stand({ kind: 'own', id: this.#site.id });
    if (done === 'part') this.#part();
    else if (done !== this.news.put) this.tell({ put: done });
  }

  /** What was done here becomes a site of its own, for another tab has edited the same one. */
  #part(): void {
    const { doc } = this.session;
    const parted = this.#site.id;
    if (!doc || parted === undefined) return;
    this.#site.apart();
    this.tell({ parted, elsewhere: false });
    const title = `${titleOf(doc)}, from the other tab`;
    this.session.edit({ ...(doc.now.file as object), title }, 'its name apart from the other tab’s');
    this.#keepSite();
  }

  /** Another tab has written, or emptied, what the browser keeps. */
  readonly #heard = ({ key }: StorageEvent): void => {
    this.#page.requestUpdate();
    if (key !== null && idIn(key) !== this.#site.id) return;
    const heard = this.#site.heard();
    if (heard === 'part') this.#part();
    else if (heard) this.tell({ [heard]: true });
  };

  /** The open site was deleted in another tab, and is to be kept all the same. */
  keepAnew(): void {
    this.#site.anew();
    this.keep();
    this.tell({ deleted: undefined });
  }

  /** The open site is gone from the shelf, and is not to be kept again. */
  forget(): void {
    this.#site.opened(this.session.doc);
  }
}

/** A site that has never been on the shelf. */
const newly = (doc: Document): Kept => ({ id: newId(), doc, changed: 0, stamp: '' });
