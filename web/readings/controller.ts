import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { SiteEdited } from '../fill/fill.ts';
import type { Session } from '../state/session.ts';

type Fold = 'readings' | 'setting' | 'log';

const FETCH: Readonly<Record<Fold, () => Promise<unknown>>> = {
  readings: () => import('./readings.ts'),
  setting: () => import('./setting.ts'),
  log: () => import('../log/log.ts'),
};

/** What a ruler shows, how the valves are set and whether it leaks: folds, each fetched and asked for once it is open. */
export class ReadingsController {
  readonly #host: ReactiveControllerHost;
  readonly #session: Session;
  readonly #engine: Engine;
  #open: ReadonlySet<Fold> = new Set();

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
  }

  #turn(name: Fold, open: boolean): void {
    if (open) void FETCH[name]();
    const now = new Set(this.#open);
    if (open) now.add(name);
    else now.delete(name);
    this.#open = now;
    this.#host.requestUpdate();
  }

  #fold(name: Fold, summary: string, content: () => TemplateResult): TemplateResult {
    const toggled = (event: Event): void => this.#turn(name, (event.target as HTMLDetailsElement).open);
    return html`<details class="fold" @toggle=${toggled}><summary>${summary}</summary>${
      this.#open.has(name) ? content() : nothing
    }</details>`;
  }

  view({ scenario, balance }: Answered): TemplateResult {
    const { text, name } = this.#session;
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
      ${this.#fold(
        'log',
        'is it leaking?',
        () => html`<tb-log .text=${text} .name=${name} .display=${display} .engine=${this.#engine}></tb-log>`,
      )}
    </div>`;
  }
}
