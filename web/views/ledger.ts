import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatEnergy, formatVolume } from '../../sim/quantity/index.ts';
import type { Ledger, LedgerIn, LedgerOut } from '../../sim/results/answer.ts';
import type { Display } from '../engine/protocol.ts';
import { shared } from './styles.ts';

const ways: Record<keyof LedgerIn | keyof LedgerOut, string> = {
  hose: 'came by hose',
  rain: 'rained into it',
  runoff: 'ran in from the ground about',
  autofill: 'came by the autofill',
  evaporation: 'evaporated',
  splash: 'splashed away at the falls',
  rim: 'went over the pond’s edge',
  overflow: 'went down the overflow pipe',
  filterRim: 'went over the filter’s rim',
  edges: 'went over edges of pools and streams',
  leak: 'leaked',
  pumpedOut: 'was pumped out',
};

/** A millilitre: less than that is nothing to tell. */
const least = 1e-6;

/** Where the water went, in words and in the units of the page. */
@customElement('tb-ledger')
export class LedgerView extends LitElement {
  static override styles = shared;

  @property({ attribute: false }) ledger: Ledger | undefined;
  @property({ type: Number }) energy = 0;
  @property() display: Display = 'metric';

  #rows(side: LedgerIn | LedgerOut): TemplateResult[] {
    return Object.entries(side)
      .filter(([, volume]) => volume >= least)
      .map(([way, volume]) => this.#row(ways[way as keyof typeof ways], volume));
  }

  #row(words: string, volume: number): TemplateResult {
    return html`<tr><th scope="row">${words}</th><td class="figure">${formatVolume(volume, this.display)}</td></tr>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { ledger } = this;
    if (!ledger) return nothing;
    const moved = [...this.#rows(ledger.in), ...this.#rows(ledger.out)];
    return html`<section aria-label="Where the water went">
      <h3>Where the water went</h3>
      <table>
        <tbody>
          ${this.#row('stood in it at the start', ledger.stored.start)}
          ${moved.length > 0 ? moved : html`<tr><th scope="row">nothing came in and nothing was lost</th><td></td></tr>`}
          ${this.#row('stands in it at the end', ledger.stored.end)}
          ${this.#row('went up the main line, round and round', ledger.pumped)}
        </tbody>
      </table>
      <p class="note">
        The account closes to ${closureWords(ledger.closure)} of the water moved.
        ${this.energy > 0 ? html`The pump drew ${formatEnergy(this.energy)}.` : nothing}
      </p>
    </section>`;
  }
}

/** '3 parts in 10 000 000 000 000' says less to people than the power it is. */
function closureWords(closure: number): TemplateResult {
  if (closure === 0) return html`the last digit`;
  const [mantissa, exponent] = closure.toExponential(0).split('e');
  return html`${mantissa} × 10<sup>${exponent!.replace('-', '−').replace('+', '')}</sup>`;
}
