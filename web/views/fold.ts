import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';

/** Something that is unfolded by a press: what stands in it is fetched, and asked for, once it is open. */
export class Fold {
  readonly #host: ReactiveControllerHost;
  readonly #summary: string;
  readonly #fetch: () => Promise<unknown>;
  #open = false;

  constructor(host: ReactiveControllerHost, summary: string, fetch: () => Promise<unknown>) {
    this.#host = host;
    this.#summary = summary;
    this.#fetch = fetch;
  }

  readonly #toggled = (event: Event): void => {
    this.#open = (event.target as HTMLDetailsElement).open;
    if (this.#open) void this.#fetch();
    this.#host.requestUpdate();
  };

  view(content: () => TemplateResult): TemplateResult {
    return html`<details class="fold" ?open=${this.#open} @toggle=${this.#toggled}><summary>${this.#summary}</summary>${
      this.#open ? content() : nothing
    }</details>`;
  }
}
