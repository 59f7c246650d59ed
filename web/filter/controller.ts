import { html, nothing, type TemplateResult } from 'lit';
import type { Answered } from '../engine/protocol.ts';
import type { Inside } from '../section/inside.ts';
import type { Shown } from '../state/shown.ts';
import type { Around } from './around.ts';
import type { FilterRoom } from './room.ts';

/** The room of the filter, fetched when the question about it is first asked. */
export class FilterController {
  readonly #around: Around;
  #room: FilterRoom | undefined;
  #fetched = false;

  constructor(around: Around) {
    this.#around = around;
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
    this.#room = new Room(this.#around);
    this.#around.host.requestUpdate();
  }

  /** Below the drawing: the dye, and all settings of the valves. */
  below(run: Answered, record: Shown): TemplateResult | typeof nothing {
    return this.#around.session.about === 'filter' ? (this.#room?.below(run, record) ?? nothing) : nothing;
  }

  /** Opens this case and the one kept side by side; both must have a filter. */
  sidesPress({ scenario }: Answered): TemplateResult | typeof nothing {
    const { session, kept } = this.#around;
    if (session.about !== 'filter' || !this.#room || !scenario.filter || !kept()?.scenario.filter) return nothing;
    return html`<button @click=${() => this.#room?.open()}>side by side</button>`;
  }

  /** What is seen, beside the drawing. */
  view(run: Answered, record: Shown | undefined): TemplateResult | typeof nothing {
    if (this.#around.session.about !== 'filter' || !record) return nothing;
    void this.#fetch();
    return this.#room?.view(run, record) ?? nothing;
  }
}
