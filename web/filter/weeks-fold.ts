import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Session } from '../state/session.ts';
import { Fold } from '../views/fold.ts';
import type { MuckSupposed } from './weeks.ts';

/** The weeks between cleanings, fetched and asked for once their fold is opened. */
export class WeeksFold {
  readonly #session: Session;
  readonly #engine: Engine;
  readonly #fold: Fold;

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#session = session;
    this.#engine = engine;
    this.#fold = new Fold(host, 'how often to clean it', () => import('./weeks.ts'));
  }

  view({ scenario }: Answered): TemplateResult | typeof nothing {
    if (!scenario.filter) return nothing;
    const put = ({ detail: { edits, label } }: CustomEvent<MuckSupposed>): void => this.#session.put(edits, label);
    return html`<div class="folds" @muck-supposed=${put}>
      ${this.#fold.view(
        () => html`<tb-weeks .scenario=${scenario} .text=${this.#session.text} .display=${scenario.display}
          .engine=${this.#engine}></tb-weeks>`,
      )}
    </div>`;
  }
}
