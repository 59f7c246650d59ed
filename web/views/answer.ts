import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Check } from '../../sim/results/answer.ts';
import { besides, firstSentence } from './says.ts';
import { shared } from './styles.ts';
import { verdictMark, verdictStyles } from './verdict.ts';

/** The answer to the question asked first, its sentence large. */
@customElement('tb-answer')
export class Answer extends LitElement {
  static override styles = [
    shared,
    verdictStyles,
    css`
      section {
        border-top: 1.5px solid var(--ink);
        padding-top: 12px;
      }
      .verdict {
        font-size: 19px;
        line-height: 26px;
      }
      .sentence {
        font-size: clamp(20px, 1.05rem + 1vw, 30px);
        line-height: 1.22;
        margin: 4px 0 8px;
        max-width: 34em;
      }
    `,
  ];

  @property({ attribute: false }) check: Check | undefined;
  @property() starts = '';

  override render(): TemplateResult | typeof nothing {
    const { check } = this;
    if (!check) return nothing;
    const [sentence, more] = firstSentence(check.says);
    return html`<section aria-label="The answer">
      ${verdictMark(check.verdict)}
      <div class="says">
        <p class="sentence">${sentence}</p>
        <p>${more}</p>
      </div>
      ${besides(check, this.starts)}
    </section>`;
  }
}
