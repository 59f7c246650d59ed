import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatDuration, formatLength, formatPercent } from '../../sim/quantity/index.ts';
import { shared } from '../views/styles.ts';
import { explanation, headWords, type Seen } from './explanation.ts';
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
    `,
  ];

  @property({ attribute: false }) seen: Seen | undefined;
  /** Whether the marks are held. */
  @property({ type: Boolean }) stands = false;
  @property({ attribute: false }) stand: ((stands: boolean) => void) | undefined;

  #marksWords(passage: Passage | undefined): TemplateResult | typeof nothing {
    if (!passage || passage.share === undefined) return nothing;
    const press = (): void => this.stand?.(!this.stands);
    return html`<p class="note">Of a hundred marks as many go each way as parts of the bottom feed: dark darts through the media, white lozenges up the gap, ${factorWords(watchedAt(passage))}.</p>
      <button @click=${press}>${this.stands ? 'let the marks run' : 'let the marks stand'}</button>`;
  }

  #figures(passage: Passage | undefined, { scenario: { display } }: Seen): TemplateResult | typeof nothing {
    if (!passage || passage.share === undefined) return nothing;
    const time = (seconds: number | undefined): string =>
      seconds === undefined ? 'none goes there' : formatDuration(seconds);
    const rows = [
      ['goes through the media', formatPercent(1 - passage.share)],
      ['goes round them', formatPercent(passage.share)],
      ['time among the media', time(passage.throughTime)],
      ['time in the gap', time(passage.roundTime)],
      [`head lost; ${formatLength(passage.lift, display)} lifts them`, headWords(passage.head, display)],
      ...passage.layers
        .filter(({ filled }) => filled > 5e-3)
        .map(({ name, filled }) => [`pores of ‘${name}’ filled`, formatPercent(filled)]),
    ];
    return html`<table aria-label="Figures of the moment"><tbody>${rows.map(
      ([name, figure]) => html`<tr><th scope="row">${name}</th><td class="figure">${figure}</td></tr>`,
    )}</tbody></table>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { seen } = this;
    if (!seen) return nothing;
    const passage = passageAt(seen.scenario, seen.moment, seen.porosities);
    return html`<section class="said" aria-label="What is seen"><h3>At the moment drawn</h3>${explanation(seen).map((says) => html`<p>${says}</p>`)}</section>
      ${this.#figures(passage, seen)}
      ${this.#marksWords(passage)}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-filter': FilterPanel;
  }
}
