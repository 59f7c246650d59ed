import type { ReactiveController, ReactiveControllerHost } from 'lit';

type Host = ReactiveControllerHost & HTMLElement;

/** How wide an element is laid out: the host, or one found in it. The host is drawn anew when that changes. */
export class Width implements ReactiveController {
  /** Whole px; 0 until it is measured. What is not shown keeps the width it had. */
  px = 0;
  readonly #find: () => Element | null | undefined;
  readonly #watch: ResizeObserver;
  #measured: Element | null | undefined;

  constructor(host: Host, within?: string) {
    this.#find = () => (within ? host.shadowRoot?.querySelector(within) : host);
    this.#watch = new ResizeObserver(([entry]) => {
      const px = Math.floor(entry!.contentRect.width);
      if (px === 0 || px === this.px) return;
      this.px = px;
      host.requestUpdate();
    });
    host.addController(this);
  }

  hostConnected(): void {
    this.hostUpdated();
  }

  /** What is measured may be another element after each drawing. */
  hostUpdated(): void {
    const found = this.#find();
    if (found === this.#measured) return;
    this.#watch.disconnect();
    if (found) this.#watch.observe(found);
    this.#measured = found;
  }

  hostDisconnected(): void {
    this.#watch.disconnect();
    this.#measured = undefined;
  }
}
