import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { shared } from '../views/styles.ts';
import { STEPS, taughtOf } from './steps.ts';

/**
 * One step of the lesson: what is set, what the water does, what to ask. It changes nothing itself: `step-taken` tells
 * which step is wanted, `lesson-left` and `lesson-printed` the rest.
 */
@customElement('tb-lesson')
export class Lesson extends LitElement {
  static override styles = [
    shared,
    css`
      section {
        border-top: 1px solid var(--ink);
        border-bottom: 1px solid var(--ink);
        padding: 8px 0 4px;
        margin: 12px 0;
      }
      h2 {
        margin: 2px 0 8px;
        font-size: 21px;
        line-height: 26px;
        font-weight: 400;
      }
      p {
        margin: 0 0 8px;
        max-width: 62ch;
      }
      .count,
      .asks {
        font-style: italic;
        color: var(--ink2);
      }
      .count {
        margin: 0;
      }
      .presses {
        display: flex;
        flex-wrap: wrap;
        gap: 0 20px;
      }
      button {
        min-width: 44px;
      }
      button[aria-disabled='true'] {
        color: var(--ink2);
        text-decoration: none;
      }
    `,
  ];

  @property({ type: Number }) step = 0;
  /** The site as it last answered. */
  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) balance: BalanceAnswer | null = null;

  #fire(name: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  #press(to: number, words: string): TemplateResult {
    const isThere = STEPS[to] !== undefined;
    return html`<button aria-disabled=${!isThere} @click=${() => isThere && this.#fire('step-taken', to)}>${words}</button>`;
  }

  protected override firstUpdated(_: PropertyValues): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  override render(): TemplateResult | typeof nothing {
    const step = STEPS[this.step];
    if (!step || !this.scenario) return nothing;
    const taught = taughtOf(this.scenario, this.balance);
    return html`<section aria-label="Lesson on channeling">
      <p class="count">A lesson on channeling, step ${this.step + 1} of ${STEPS.length}</p>
      <div aria-live="polite">
        <h2 tabindex="-1">${step.title}</h2>
        ${taught ? step.says(taught).map((each) => html`<p>${each}</p>`) : html`<p>No water goes up through the filter as it stands: take the step again, or undo.</p>`}
        ${step.asks ? html`<p class="asks">${step.asks}</p>` : nothing}
      </div>
      <div class="presses">
        ${this.#press(this.step + 1, 'next step')} ${this.#press(this.step - 1, 'a step back')}
        <button @click=${() => this.#fire('step-taken', this.step)}>this step again</button>
        <button @click=${() => this.#fire('lesson-printed')}>print the lesson</button>
        <button @click=${() => this.#fire('lesson-left')}>leave the lesson</button>
      </div>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-lesson': Lesson;
  }
}
