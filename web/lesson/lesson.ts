import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { kept } from '../state/one-line.ts';
import { shared } from '../views/styles.ts';
import { figuresNow, STEPS } from './steps.ts';
import type { Taught } from './taught.ts';

/** What is done at a press: `step-taken` carries it. */
export type Taking = 'next' | 'back' | 'again';

/**
 * One step of the lesson: what is set, what the water does, what to ask. It changes nothing itself: `step-taken` tells
 * what is wanted, `lesson-left` (true: its site stays open) and `lesson-printed` the rest. On a narrow page its title
 * and its presses stand above the drawing, its sentences below.
 */
@customElement('tb-lesson')
export class Lesson extends LitElement {
  static override styles = [
    shared,
    css`
      :host,
      section {
        display: contents;
      }
      .band {
        order: 1;
        border-top: 1px solid var(--ink);
        padding-top: 6px;
      }
      .words {
        order: 4;
        border-bottom: 1px solid var(--ink);
        padding-bottom: 4px;
      }
      h2 {
        margin: 0;
        font-size: 19px;
        line-height: 24px;
        font-weight: 400;
      }
      h2:focus-visible {
        outline-offset: 4px;
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
        font-size: 15px;
        line-height: 20px;
      }
      .changed {
        border-left: 3px solid var(--ink);
        padding-left: 10px;
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
        cursor: default;
      }
      @media (min-width: 1000px) {
        :host {
          display: block;
        }
        .words {
          padding-top: 4px;
        }
        h2 {
          font-size: 21px;
          line-height: 26px;
        }
      }
    `,
  ];

  @property({ type: Number }) step = 0;
  /** The site stands as the step sets it. */
  @property({ type: Boolean }) on = true;
  /** The site as it last answered; undefined where its filter does not run. */
  @property({ attribute: false }) taught: Taught | undefined;
  /** The lesson has just been begun: its title is read first. */
  @property({ type: Boolean }) begun = false;

  #fire(name: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  #press(taking: Taking, words: string, isOpen: boolean): TemplateResult {
    return html`<button aria-disabled=${!isOpen} @click=${() => isOpen && this.#fire('step-taken', taking)}>${words}</button>`;
  }

  protected override firstUpdated(_: PropertyValues): void {
    if (!this.begun) return;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
    this.#fire('title-read');
  }

  #words(): TemplateResult {
    const { taught, on } = this;
    const step = STEPS[this.step]!;
    if (on && taught)
      return html`${step.says(taught).map((each) => html`<p>${kept(each)}</p>`)}<p class="asks">${step.asks}</p>`;
    return html`<p class="changed">The site has been changed since this step was set; ‘this step again’ puts it back.</p>
      <p>${taught ? kept(figuresNow(taught)) : 'As it stands, no water goes up through the filter.'}</p>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { step, on } = this;
    const at = STEPS[step];
    if (!at) return nothing;
    return html`<section aria-label="Lesson on channeling">
      <div class="band">
        <p class="count">A lesson on channeling, step ${step + 1} of ${STEPS.length}${on ? '' : ', changed since'}</p>
        <h2 tabindex="-1">${at.title}</h2>
        <div class="presses">
          ${this.#press('next', 'next step', STEPS[step + 1] !== undefined)}
          ${this.#press('back', 'a step back', STEPS[step - 1] !== undefined)}
          ${this.#press('again', 'this step again', !on)}
        </div>
      </div>
      <div class="words">
        <div role="status" aria-live="polite">${this.#words()}</div>
        <div class="presses">
          <button @click=${() => this.#fire('lesson-printed')}>print the lesson</button>
          <button @click=${() => this.#fire('lesson-left', false)}>leave the lesson</button>
          <button @click=${() => this.#fire('lesson-left', true)}>leave it, stay on this site</button>
        </div>
      </div>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-lesson': Lesson;
  }
}
