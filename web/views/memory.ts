import { html, nothing, type ReactiveController, type TemplateResult } from 'lit';
import { type Recalled, type Remembered, recall, remember } from '../state/remembered.ts';
import { save } from './save.ts';

/** The page has stood still for this long before it is kept, ms. */
const REST = 400;

const store = (): Storage => sessionStorage;

/** Keeps what is on the screen over a reload, and says where that cannot be done. */
export class Memory implements ReactiveController {
  readonly #now: () => Remembered | undefined;
  readonly #changed: () => void;
  readonly #recalled: Recalled = recall(store);
  #damaged = this.#recalled.kind === 'damaged' ? this.#recalled.text : undefined;
  #refused = false;
  #rest: ReturnType<typeof setTimeout> | undefined;

  /** @param now what there is to keep; undefined as long as there is nothing */
  constructor(now: () => Remembered | undefined, changed: () => void) {
    this.#now = now;
    this.#changed = changed;
  }

  /** What stood under this address before the page was loaded anew. */
  get recalled(): Remembered | undefined {
    const { kept } = this.#recalled as { kept?: Remembered };
    return kept?.address === location.hash ? kept : undefined;
  }

  hostConnected(): void {
    addEventListener('pagehide', this.#keep);
    document.addEventListener('visibilitychange', this.#keep);
  }

  hostDisconnected(): void {
    removeEventListener('pagehide', this.#keep);
    document.removeEventListener('visibilitychange', this.#keep);
    clearTimeout(this.#rest);
  }

  hostUpdated(): void {
    clearTimeout(this.#rest);
    this.#rest = setTimeout(this.#keep, REST);
  }

  readonly #keep = (): void => {
    const now = this.#now();
    if (!now) return;
    const refused = !remember(store, now);
    if (refused !== this.#refused) {
      this.#refused = refused;
      this.#changed();
    }
  };

  /** What is not kept, in sentences. */
  view(): TemplateResult | typeof nothing {
    const text = this.#damaged;
    const keep = (): void => {
      save(text ?? '', 'text/plain', 'tumblebay-page.txt');
      this.#damaged = undefined;
      this.#changed();
    };
    return html`${
      text === undefined
        ? nothing
        : html`<p class="caution" role="status">What this browser had kept of the page could not be read, so the page opened anew.
            <button @click=${keep}>save what it had kept</button></p>`
    }${
      this.#refused
        ? html`<p class="caution" role="status">This browser keeps no more: what is on the screen will be gone after a reload. Save the
            site’s file.</p>`
        : nothing
    }`;
  }
}
