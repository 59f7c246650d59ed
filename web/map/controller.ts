import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import { withValuesAt } from '../../sim/studies/place.ts';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import { expanded, grafted } from '../state/graft.ts';
import type { Session } from '../state/session.ts';
import { Fold } from '../views/fold.ts';
import type { ValvesSet } from './map.ts';

/** The map of all settings: fetched when it is first opened, in the question about the filter. */
export class MapController {
  readonly #session: Session;
  readonly #engine: Engine;
  readonly #fold: Fold;

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#session = session;
    this.#engine = engine;
    this.#fold = new Fold(host, 'see all valve settings', () => import('./map.ts'));
  }

  /** Both valves at once; steps of one gesture are undone together. */
  #set({ openings, gesture }: ValvesSet): void {
    const { doc, shown } = this.#session;
    if (!doc || !shown) return;
    const plain = expanded(doc, shown.plain).now.file;
    const edits = [
      ['plumbing.bottomFeed.valve', openings.bottom],
      ['plumbing.topFeed.valve', openings.top],
    ] as const;
    this.#session.edit(grafted(doc.now.file, shown.plain, withValuesAt(plain, edits)), 'both valves moved', gesture);
  }

  view({ scenario }: Answered): TemplateResult | typeof nothing {
    if (this.#session.about !== 'filter') return nothing;
    const { text } = this.#session;
    return html`<div class="folds" @valves-set=${(event: CustomEvent<ValvesSet>) => this.#set(event.detail)}>
      ${this.#fold.view(
        () =>
          html`<tb-map .scenario=${scenario} .text=${text} .display=${scenario.display} .engine=${this.#engine}></tb-map>`,
      )}
    </div>`;
  }
}
