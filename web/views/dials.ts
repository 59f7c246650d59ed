import { html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Stretch } from '../../sim/studies/aim.ts';
import type { Display } from '../engine/protocol.ts';
import type { Choice, Dial } from '../state/dials.ts';
import './dial.ts';
import { dialStyles } from './dial-styles.ts';
import { shared } from './styles.ts';

/** What decides the question asked. */
@customElement('tb-dials')
export class Dials extends LitElement {
  static override styles = [shared, dialStyles];

  @property({ attribute: false }) dials: readonly Dial[] = [];
  /** Failing stretches by the dial's name; null: no answer turns on these dials. */
  @property({ attribute: false }) failing: ReadonlyMap<string, readonly Stretch[]> | null = null;
  /** What is wrong with a dial's value, by its name. */
  @property({ attribute: false }) wrong: ReadonlyMap<string, string> = new Map();
  @property() display: Display = 'metric';

  #choice({ name, options }: Choice): TemplateResult {
    return html`<div class="choice" role="group" aria-label=${name}>
      <span class="name" aria-hidden="true">${name}</span>
      ${options.map(
        (option) => html`<button aria-pressed=${option.chosen}
          @click=${() =>
            this.dispatchEvent(
              new CustomEvent('choice-made', { detail: { name, ...option }, bubbles: true, composed: true }),
            )}>${option.word}</button>`,
      )}
    </div>`;
  }

  override render(): TemplateResult {
    return html`<section aria-label="What decides it">
      <h3>What decides it</h3>
      ${repeat(
        this.dials,
        ({ name }) => name,
        (dial) =>
          dial.kind === 'choice'
            ? this.#choice(dial)
            : html`<tb-dial .ruler=${dial} .failing=${this.failing === null ? null : this.failing.get(dial.name)}
                .wrong=${this.wrong.get(dial.name) ?? ''} .display=${this.display}></tb-dial>`,
      )}
    </section>`;
  }
}
