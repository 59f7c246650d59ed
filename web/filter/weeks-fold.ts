import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Session } from '../state/session.ts';
import type { MuckSupposed } from './weeks.ts';

/** The weeks between cleanings, fetched and asked for once their fold is opened. */
export class WeeksFold {
  readonly #host: ReactiveControllerHost;
  readonly #session: Session;
  readonly #engine: Engine;
  #open = false;

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
  }

  #turn(open: boolean): void {
    if (open) void import('./weeks.ts');
    this.#open = open;
    this.#host.requestUpdate();
  }

  view({ scenario }: Answered): TemplateResult | typeof nothing {
    if (!scenario.filter) return nothing;
    const toggled = (event: Event): void => this.#turn((event.target as HTMLDetailsElement).open);
    const put = ({ detail: { edits, label } }: CustomEvent<MuckSupposed>): void => this.#session.put(edits, label);
    return html`<div class="folds" @muck-supposed=${put}>
      <details class="fold" ?open=${this.#open} @toggle=${toggled}><summary>how often to clean it</summary>${
        this.#open
          ? html`<tb-weeks .scenario=${scenario} .text=${this.#session.text} .display=${scenario.display}
            .engine=${this.#engine}></tb-weeks>`
          : nothing
      }</details>
    </div>`;
  }
}
