import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  formatFlow,
  formatHead,
  formatLength,
  formatNumber,
  formatPercent,
  formatSpeed,
} from '../../sim/quantity/index.ts';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import type { Display } from '../engine/protocol.ts';
import { shared } from './styles.ts';

type Row = [words: string, figure: string];

/** What the site settles to while the pump runs: what a ruler and a valve handle would show. */
@customElement('tb-balance')
export class BalanceView extends LitElement {
  static override styles = shared;

  @property({ attribute: false }) balance: BalanceAnswer | undefined;
  @property() display: Display = 'metric';

  #rows({ duty, split, channeled }: BalanceAnswer): Row[] {
    const { display } = this;
    const speed = (pipe: keyof typeof duty.velocity): Row[] =>
      duty.velocity[pipe] === 0 ? [] : [[`speed in the ${pipe}`, formatSpeed(Math.abs(duty.velocity[pipe]), display)]];
    return [
      ['flow at this head', `${formatFlow(duty.flow, display)} at ${formatHead(duty.head, display)}`],
      ...(duty.power > 0 ? [['power', `${formatNumber(duty.power)} W`] as Row] : []),
      ...(split === null ? [] : [['bottom feed’s part of the main', formatPercent(split)] as Row]),
      ...(channeled === null ? [] : [['channeled share, round the mats', formatPercent(channeled)] as Row]),
      ...speed('main'),
      ...speed('bottom feed'),
      ...speed('top feed'),
    ];
  }

  #stones({ stones }: BalanceAnswer): TemplateResult | typeof nothing {
    const names = Object.keys(stones);
    if (names.length === 0) return nothing;
    return html`<table>
      <thead>
        <tr><th>stone</th><th class="figure">share</th><th class="figure">water over it</th></tr>
      </thead>
      <tbody>
        ${names.map((name) => {
          const { share, head } = stones[name]!;
          return html`<tr>
            <th scope="row">${name}</th>
            <td class="figure">${formatPercent(share)}</td>
            <td class="figure">${formatLength(Math.max(0, head), this.display)}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.balance) return nothing;
    return html`<section aria-label="While the pump runs">
      <h3>While the pump runs</h3>
      <table>
        <tbody>
          ${this.#rows(this.balance).map(
            ([words, figure]) => html`<tr><th scope="row">${words}</th><td class="figure">${figure}</td></tr>`,
          )}
        </tbody>
      </table>
      ${this.#stones(this.balance)}
    </section>`;
  }
}
