/** Keeps what is on the screen beside the site: for this tab, and for whoever opens the page next. */
import { type OldSite, type Recalled, type Remembered, recall, remember } from '../state/remembered.ts';

export type Screen = Omit<Remembered, 'address'>;

/** This tab's own comes first: another tab may show another site. */
const stores = [(): Storage => sessionStorage, (): Storage => localStorage];

export class ScreenMemory {
  /** The browser takes no more. */
  refused = false;
  /** What was kept and could not be read. */
  damaged: string | undefined;
  readonly #recalled: Recalled;

  constructor() {
    const found = stores.map(recall);
    this.damaged = found.find((each) => each.kind === 'damaged')?.text;
    const [own, last] = found;
    const isHere = (each: Recalled): boolean => each.kind === 'kept' && standsAt(each.kept.address);
    this.#recalled = isHere(own) ? own : isHere(last) ? last : { kind: 'nothing' };
  }

  /** What stood under this address before the page was loaded anew. */
  get kept(): Remembered | undefined {
    return this.#recalled.kind === 'kept' ? this.#recalled.kept : undefined;
  }

  /** The site that the first version kept along with it. */
  get site(): OldSite | undefined {
    return this.#recalled.kind === 'kept' ? this.#recalled.site : undefined;
  }

  keep(screen: Screen): void {
    const now = { ...screen, address: location.hash };
    this.refused = !stores.map((store) => remember(store, now)).every(Boolean);
  }
}

/** An address that names nothing is answered by what stood on the screen last. */
const standsAt = (address: string): boolean => location.hash === '' || location.hash === address;
