import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { kept as onOneLine } from '../state/one-line.ts';
import { shared } from '../views/styles.ts';
import { explanation, type Seen } from './explanation.ts';
import { figureRows } from './figures.ts';
import { factorWords, type Passage, passageAt, watchedAt } from './passage.ts';

/** What is seen in the filter at the moment drawn, in words and figures. */
@customElement('tb-filter')
export class FilterPanel extends LitElement {
  static override styles = [
    shared,
    css`
      section {
        margin: 0 0 8px;
      }
      .said p {
        margin: 0 0 6px;
      }
      .note {
        margin: 8px 0 0;
      }
      thead td {
        border: 0;
      }
      thead th,
      .figure {
        text-align: right;
        padding-left: 12px;
        white-space: nowrap;
      }
      .kept {
        color: var(--ink2);
      }
    `,
  ];

  @property({ attribute: false }) seen: Seen | undefined;
  /** The case kept, as it is seen then. */
  @property({ attribute: false }) kept: Seen | undefined;
  /** Whether the marks are held. */
  @property({ type: Boolean }) stands = false;
  @property({ attribute: false }) stand: ((stands: boolean) => void) | undefined;

  #marksWords(passage: Passage | undefined): TemplateResult | typeof nothing {
    if (!passage || passage.share === undefined) return nothing;
    const press = (): void => this.stand?.(!this.stands);
    return html`<p class="note">Of a hundred marks as many go each way as parts of the bottom feed: dark darts through the media, white lozenges up the gap, ${factorWords(watchedAt(passage))}.</p>
      <button @click=${press}>${this.stands ? 'let the marks run' : 'let the marks stand'}</button>`;
  }

  #figures(seen: Seen): TemplateResult | typeof nothing {
    const rows = figureRows(seen, this.kept);
    if (rows.length === 0) return nothing;
    const { kept } = this;
    const heads = html`<thead><tr><td></td><th scope="col">as kept</th><th scope="col">now</th></tr></thead>`;
    return html`<table aria-label="Figures of the moment">${kept ? heads : nothing}<tbody>${rows.map(
      ({ name, now, kept: other }) =>
        html`<tr><th scope="row">${name}</th>${
          kept ? html`<td class="figure kept">${other}</td>` : nothing
        }<td class="figure">${now}</td></tr>`,
    )}</tbody></table>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { seen } = this;
    if (!seen) return nothing;
    const passage = passageAt(seen.scenario, seen.moment, seen.porosities);
    return html`<section class="said" aria-label="What is seen"><h3>At the moment drawn</h3>${explanation(seen).map((says) => html`<p>${onOneLine(says)}</p>`)}</section>
      ${this.#figures(seen)}
      ${this.#marksWords(passage)}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-filter': FilterPanel;
  }
}
