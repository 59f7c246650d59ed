import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Check, Verdict } from '../../sim/results/answer.ts';
import { besides, firstSentence } from './says.ts';
import { shared } from './styles.ts';
import { verdictMark, verdictStyles, verdictWord } from './verdict.ts';

const order: Verdict[] = ['fail', 'tight', 'pass', 'told'];

/** What fails or is tight stands first, then the other cases of the stop, then what holds. */
const rank = ({ name, verdict }: Check): number =>
  name.startsWith('drain-back') ? Math.min(order.indexOf(verdict), 1.5) : order.indexOf(verdict);

/** '1 fails, 2 tight, 9 hold, 4 told'. */
export function countSentence(checks: readonly Check[]): string {
  const counts = order.map((verdict) => ({
    verdict,
    count: checks.filter((check) => check.verdict === verdict).length,
  }));
  const plural: Partial<Record<Verdict, string>> = { pass: 'hold', fail: 'fail' };
  return counts
    .filter(({ count }) => count > 0)
    .map(({ verdict, count }) => `${count} ${(count > 1 && plural[verdict]) || verdictWord[verdict]}`)
    .join(', ');
}

/** Every check but the one asked about: verdict, name and the first sentence; the rest of it opens, and is open where it matters. */
@customElement('tb-checks')
export class Checks extends LitElement {
  static override styles = [
    shared,
    verdictStyles,
    css`
      .check {
        border-top: 0.8px solid var(--rule);
      }
      details > summary {
        display: grid;
        grid-template-columns: 74px 1fr 1ch;
        gap: 0 8px;
        padding: 10px 0;
        color: var(--ink);
        font-style: normal;
      }
      details > summary::before {
        grid-area: 1 / 3;
        color: var(--ink2);
      }
      .name {
        font-style: italic;
        color: var(--ink2);
      }
      .sentence {
        grid-column: 1 / -1;
      }
      .rest {
        padding-bottom: 10px;
      }
    `,
  ];

  @property({ attribute: false }) checks: readonly Check[] = [];
  /** Name of the check that stands as the answer above. */
  @property() asked = '';
  @property() starts = '';

  #item(check: Check): TemplateResult {
    const [sentence, more] = firstSentence(check.says);
    const pressing = check.verdict === 'fail' || check.verdict === 'tight';
    return html`<li class="check">
      <details ?open=${pressing}>
        <summary>
          ${verdictMark(check.verdict)} <span class="name">${check.name}</span>
          <span class="sentence">${sentence}</span>
        </summary>
        <div class="rest">
          <p>${more}</p>
          ${besides(check, this.starts)}
        </div>
      </details>
    </li>`;
  }

  override render(): TemplateResult {
    const others = this.checks.filter(({ name }) => name !== this.asked).toSorted((a, b) => rank(a) - rank(b));
    return html`<section aria-label="Other checks">
      <h3>All checks: ${countSentence(this.checks)}</h3>
      <ul>
        ${repeat(
          others,
          ({ name }) => name,
          (check) => this.#item(check),
        )}
      </ul>
    </section>`;
  }
}
