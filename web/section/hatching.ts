import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Whether depths are told by lines in place of tints: in the stark look, and where the reader's own colors leave no
 * tints. Asks its host for a new drawing when that changes.
 */
export class Hatching implements ReactiveController {
  hatched = false;
  readonly #host: ReactiveControllerHost;
  readonly #forced = matchMedia('(forced-colors: active)');
  readonly #look = new MutationObserver(() => this.#see());

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#look.observe(document.documentElement, { attributeFilter: ['data-look'] });
    this.#forced.addEventListener('change', this.#see);
    this.#see();
  }

  hostDisconnected(): void {
    this.#look.disconnect();
    this.#forced.removeEventListener('change', this.#see);
  }

  readonly #see = (): void => {
    const now = this.#forced.matches || document.documentElement.dataset['look'] === 'stark';
    if (now === this.hatched) return;
    this.hatched = now;
    this.#host.requestUpdate();
  };
}
