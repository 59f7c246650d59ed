import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { SiteEdited } from '../fill/fill.ts';
import type { Session } from '../state/session.ts';

/** What a ruler shows and how the valves are set: two folds, each fetched and asked for once it is open. */
export class ReadingsController {
  readonly #host: ReactiveControllerHost;
  readonly #session: Session;
  readonly #engine: Engine;
  #open: ReadonlySet<string> = new Set();

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
  }

  #turn(name: 'readings' | 'setting', open: boolean): void {
    if (open) void (name === 'readings' ? import('./readings.ts') : import('./setting.ts'));
    const now = new Set(this.#open);
    if (open) now.add(name);
    else now.delete(name);
    this.#open = now;
    this.#host.requestUpdate();
  }

  #fold(name: 'readings' | 'setting', summary: string, content: () => TemplateResult): TemplateResult {
    const toggled = (event: Event): void => this.#turn(name, (event.target as HTMLDetailsElement).open);
    return html`<details class="fold" @toggle=${toggled}><summary>${summary}</summary>${
      this.#open.has(name) ? content() : nothing
    }</details>`;
  }

  view({ scenario, balance }: Answered): TemplateResult {
    const { text } = this.#session;
    const { display } = scenario;
    const put = ({ detail: { edits, label } }: CustomEvent<SiteEdited>): void => this.#session.put(edits, label);
    return html`<div class="folds" @site-edited=${put}>
      ${this.#fold(
        'readings',
        'what a ruler shows',
        () => html`<tb-readings .scenario=${scenario} .balance=${balance} .text=${text} .display=${display}
          .engine=${this.#engine}></tb-readings>`,
      )}
      ${this.#fold(
        'setting',
        'set the valves',
        () =>
          html`<tb-setting .scenario=${scenario} .text=${text} .display=${display} .engine=${this.#engine}></tb-setting>`,
      )}
    </div>`;
  }
}
