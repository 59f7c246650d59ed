import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Headline } from '../state/headline.ts';
import { kept } from '../state/one-line.ts';
import { shared } from './styles.ts';
import { verdictSign, verdictStyles, verdictWord } from './verdict.ts';

/** The answer to the question asked, largest on the page: its verdict first, then the margin. */
@customElement('tb-answer')
export class Answer extends LitElement {
  static override styles = [
    shared,
    verdictStyles,
    css`
      .headline {
        margin: 0 0 6px;
        font-size: clamp(21px, 0.9rem + 1.6vw, 26px);
        font-weight: 400;
        line-height: 1.2;
        text-wrap: pretty;
      }
      .headline svg {
        width: 0.8em;
        height: 0.8em;
      }
      .more {
        max-width: 76ch;
        margin: 0;
      }
      .old {
        border-left: 3px solid var(--ink);
        padding-left: 10px;
      }
    `,
  ];

  @property({ attribute: false }) headline: Headline | undefined;
  /** Why the answer is older than what was typed; '' where it isn't. */
  @property() old = '';

  override render(): TemplateResult | typeof nothing {
    if (!this.headline) return nothing;
    const { verdict, says, more } = this.headline;
    return html`<section aria-label="The answer" data-verdict=${verdict}>
      ${this.old ? html`<p class="old" role="alert">${this.old}</p>` : nothing}
      <h2 class="headline">${
        verdict === 'told'
          ? capital(kept(says))
          : html`<span class="verdict ${verdict}">${verdictSign(verdict)} ${capital(verdictWord[verdict])}</span>: ${kept(says)}`
      }</h2>
      <p class="more">${kept(more)}</p>
    </section>`;
  }
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
