import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Display } from '../../engine/protocol.ts';
import type { Choice, Dial, DialSet, Option } from '../../state/dials.ts';
import './dial.ts';
import { shared } from '../styles.ts';
import { dialStyles } from './dial-styles.ts';
import type { Turns } from './dial-turns.ts';

/** An option of a choice was pressed. */
export interface Chosen {
  readonly choice: Choice;
  readonly option: Option;
}

/** What decides the question asked, and what else does at one press. */
@customElement('tb-dials')
export class Dials extends LitElement {
  static override styles = [shared, dialStyles];

  @property({ attribute: false }) dials: DialSet = { shown: [], more: [] };
  /** By the dial's name; null: no answer turns on these dials. */
  @property({ attribute: false }) turns: ReadonlyMap<string, Turns> | null = null;
  /** What is wrong with a dial's value, by its name. */
  @property({ attribute: false }) wrong: ReadonlyMap<string, string> = new Map();
  @property() display: Display = 'metric';
  @state() private open = false;

  #choice(choice: Choice): TemplateResult {
    const { name, options, note } = choice;
    const wrong = this.wrong.get(name) ?? '';
    return html`<div class="choice" role="group" aria-label=${name}>
      <span class="name" aria-hidden="true">${name}</span>
      ${options.map((option) => {
        const detail: Chosen = { choice, option };
        return html`<button aria-pressed=${option.chosen} @click=${() =>
          option.chosen ||
          this.dispatchEvent(
            new CustomEvent('choice-made', { detail, bubbles: true, composed: true }),
          )}>${option.word}</button>`;
      })}
      ${wrong || note ? html`<p class=${wrong ? 'wrong' : 'about'} role=${wrong ? 'alert' : nothing}>${wrong || note}</p>` : nothing}
    </div>`;
  }

  #dial(dial: Dial): TemplateResult {
    if (dial.kind === 'choice') return this.#choice(dial);
    const turns = this.turns?.get(dial.name);
    return html`<tb-dial .ruler=${dial} .failing=${this.turns === null ? null : turns?.failing}
      ?data-old=${turns?.isOld ?? false} .wrong=${this.wrong.get(dial.name) ?? ''} .display=${this.display}></tb-dial>`;
  }

  #list(dials: readonly Dial[]): unknown {
    return repeat(
      dials,
      ({ name }) => name,
      (dial) => this.#dial(dial),
    );
  }

  override render(): TemplateResult {
    const { shown, more } = this.dials;
    return html`<section aria-label="What decides it">
      <h3>What decides it</h3>
      ${this.#list(shown)}
      ${
        more.length > 0
          ? html`<details class="more" ?open=${this.open} @toggle=${(event: Event) => {
              this.open = (event.target as HTMLDetailsElement).open;
              this.dispatchEvent(new CustomEvent('more-opened', { detail: this.open, bubbles: true, composed: true }));
            }}>
            <summary>what else decides it</summary>
            ${this.open ? this.#list(more) : nothing}
          </details>`
          : nothing
      }
    </section>`;
  }
}
