import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import { valueAt } from '../../sim/studies/place.ts';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import { expanded } from '../state/graft.ts';
import type { Session } from '../state/session.ts';
import { Fold } from '../views/fold.ts';
import type { SettingSet } from './hand.ts';

const SPEED = 'pump.speed';

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

  /** Pump and valves at once; steps of one gesture are undone together. */
  #set({ plane, setting, gesture }: SettingSet): void {
    const { doc, shown } = this.#session;
    if (!doc || !shown) return;
    const plain = expanded(doc, shown.plain).now.file;
    // A file that says nothing of a speed means full speed, and goes on saying nothing.
    const driven = setting.speed !== 1 || valueAt(plain, SPEED) !== undefined;
    const edits = [
      ...(plane === 'flow' && driven ? [[SPEED, setting.speed] as const] : []),
      ['plumbing.bottomFeed.valve', setting.bottom] as const,
      ['plumbing.topFeed.valve', setting.top] as const,
    ];
    const label = plane === 'flow' ? 'pump and valves moved' : 'both valves moved';
    this.#session.putWhole(edits, label, gesture);
  }

  view({ scenario }: Answered): TemplateResult | typeof nothing {
    if (this.#session.about !== 'filter') return nothing;
    const { text } = this.#session;
    return html`<div class="folds" @setting-set=${(event: CustomEvent<SettingSet>) => this.#set(event.detail)}>
      ${this.#fold.view(
        () =>
          html`<tb-map .scenario=${scenario} .text=${text} .display=${scenario.display} .engine=${this.#engine}></tb-map>`,
      )}
    </div>`;
  }
}
