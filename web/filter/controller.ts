import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Inside } from '../section/inside.ts';
import type { Case } from '../state/case.ts';
import type { Session } from '../state/session.ts';
import type { Shown } from '../state/shown.ts';
import type { Stage } from '../views/stage.ts';
import type { FilterRoom } from './room.ts';

/** The room of the filter, fetched when the question about it is first asked. */
export class FilterController {
  readonly #host: ReactiveControllerHost;
  readonly #session: Session;
  readonly #engine: Engine;
  readonly #stage: Stage;
  #room: FilterRoom | undefined;
  #fetched = false;

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine, stage: Stage) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
    this.#stage = stage;
  }

  /** What runs in the close-up. */
  get inside(): Inside | undefined {
    return this.#room?.inside;
  }

  /** Another site is to come. */
  clear(): void {
    this.#room?.clear();
  }

  async #fetch(): Promise<void> {
    if (this.#fetched) return;
    this.#fetched = true;
    const { FilterRoom: Room } = await import('./room.ts');
    this.#room = new Room({ host: this.#host, session: this.#session, engine: this.#engine, stage: this.#stage });
    this.#host.requestUpdate();
  }

  /** Below the drawing: the dye, and all settings of the valves. */
  below(run: Answered, record: Shown, kept: Case | undefined): TemplateResult | typeof nothing {
    return this.#session.about === 'filter' ? (this.#room?.below(run, record, kept) ?? nothing) : nothing;
  }

  /** Opens this case and the one kept side by side; both must have a filter. */
  sidesPress({ scenario }: Answered, kept: Case | undefined): TemplateResult | typeof nothing {
    if (this.#session.about !== 'filter' || !this.#room || !scenario.filter || !kept?.scenario.filter) return nothing;
    return html`<button @click=${() => this.#room?.open()}>side by side</button>`;
  }

  /** What is seen, beside the drawing. */
  view(run: Answered, record: Shown | undefined): TemplateResult | typeof nothing {
    if (this.#session.about !== 'filter' || !record) return nothing;
    void this.#fetch();
    return this.#room?.view(run, record) ?? nothing;
  }
}
