import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import { expanded } from '../state/graft.ts';
import type { Session } from '../state/session.ts';
import { Fold } from '../views/fold.ts';
import type { MuckPut } from './weeks.ts';
import { asCleaned } from './weeks-hand.ts';

/** The weeks between cleanings, fetched and asked for once their fold is opened. */
export class WeeksFold {
  readonly #session: Session;
  readonly #engine: Engine;
  readonly #fold: Fold;
  /** The file's text as just cleaned, and the file it is of. */
  #clean: { readonly file: unknown; readonly text: string } | undefined;

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#session = session;
    this.#engine = engine;
    this.#fold = new Fold(host, 'how often to clean it', () => import('./weeks.ts'));
  }

  readonly #put = ({ detail: { edits, label, gesture } }: CustomEvent<MuckPut>): void =>
    this.#session.putWhole(edits, label, gesture);

  #textAsCleaned(file: unknown): string {
    if (this.#clean?.file !== file) this.#clean = { file, text: JSON.stringify(asCleaned(file)) };
    return this.#clean?.text ?? '';
  }

  view({ scenario, plain }: Answered): TemplateResult | typeof nothing {
    const { doc } = this.#session;
    if (!scenario.filter || !doc) return nothing;
    const { file } = doc.now;
    return html`<div class="folds" @muck-put=${this.#put}>
      ${this.#fold.view(
        () => html`<tb-weeks .scenario=${scenario} .file=${expanded(doc, plain).now.file}
          .text=${this.#textAsCleaned(file)} .display=${scenario.display} .engine=${this.#engine}></tb-weeks>`,
      )}
    </div>`;
  }
}
