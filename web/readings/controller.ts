import { html, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { SiteEdited } from '../fill/fill.ts';
import type { Session } from '../state/session.ts';
import { Fold } from '../views/fold.ts';

/** What a ruler shows, how the valves are set and whether it leaks: folds, each fetched and asked for once it is open. */
export class ReadingsController {
  readonly #session: Session;
  readonly #engine: Engine;
  readonly #readings: Fold;
  readonly #setting: Fold;
  readonly #log: Fold;

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#session = session;
    this.#engine = engine;
    this.#readings = new Fold(host, 'what a ruler shows', () => import('./readings.ts'));
    this.#setting = new Fold(host, 'set the valves', () => import('./setting.ts'));
    this.#log = new Fold(host, 'is it leaking?', () => import('../log/log.ts'));
  }

  view({ scenario, balance }: Answered): TemplateResult {
    const { text, name } = this.#session;
    const { display } = scenario;
    const put = ({ detail: { edits, label } }: CustomEvent<SiteEdited>): void => this.#session.put(edits, label);
    return html`<div class="folds" @site-edited=${put}>
      ${this.#readings.view(
        () => html`<tb-readings .scenario=${scenario} .balance=${balance} .text=${text} .display=${display}
          .engine=${this.#engine}></tb-readings>`,
      )}
      ${this.#setting.view(
        () =>
          html`<tb-setting .scenario=${scenario} .text=${text} .display=${display} .engine=${this.#engine}></tb-setting>`,
      )}
      ${this.#log.view(
        () => html`<tb-log .text=${text} .name=${name} .display=${display} .engine=${this.#engine}></tb-log>`,
      )}
    </div>`;
  }
}
