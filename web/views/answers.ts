import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatClock } from '../../sim/quantity/index.ts';
import type { Check, Verdict } from '../../sim/results/answer.ts';
import { momentChosen } from './moment.ts';
import { shared } from './styles.ts';
import { verdictMark, verdictWord } from './verdict.ts';

const order: Verdict[] = ['fail', 'tight', 'pass', 'told'];

/** '1 fails, 2 tight, 9 hold, 4 told'. */
export function countSentence(checks: readonly Check[]): string {
  const counts = order.map((verdict) => ({
    verdict,
    count: checks.filter((check) => check.verdict === verdict).length,
  }));
  const word = (verdict: Verdict, count: number): string =>
    verdict === 'pass' && count > 1 ? 'hold' : verdict === 'fail' && count > 1 ? 'fail' : verdictWord[verdict];
  return counts
    .filter(({ count }) => count > 0)
    .map(({ verdict, count }) => `${count} ${word(verdict, count)}`)
    .join(', ');
}

/** The answers as sentences: the first question's large, the others below it, each with its verdict in a word. */
@customElement('tb-answers')
export class Answers extends LitElement {
  static override styles = [
    shared,
    css`
      .verdict {
        display: inline-flex;
        align-items: center;
        gap: 6px;
        white-space: nowrap;
      }
      .verdict svg {
        fill: none;
        stroke: currentColor;
        stroke-width: 2;
        flex: none;
      }
      .verdict.fail {
        color: var(--brick);
      }
      .verdict.told {
        color: var(--ink2);
      }
      .first {
        border-top: 1.5px solid var(--ink);
        padding: 12px 0 16px;
      }
      .first .verdict {
        font-size: 19px;
        line-height: 26px;
      }
      .first .says {
        font-size: clamp(21px, 1.1rem + 1vw, 30px);
        line-height: 1.22;
        margin: 4px 0 8px;
        max-width: 34em;
      }
      .check {
        display: grid;
        grid-template-columns: 74px 1fr;
        gap: 0 12px;
        align-items: start;
        padding: 10px 0;
        border-top: 0.8px solid var(--rule);
      }
      .check p {
        margin: 0 0 2px;
      }
      .name {
        font-style: italic;
        color: var(--ink2);
      }
      .places li {
        padding: 4px 0;
      }
    `,
  ];

  @property({ attribute: false }) checks: readonly Check[] = [];
  @property() starts = '';

  #press({ where, t }: Check): TemplateResult | typeof nothing {
    if (where !== 'run' || t === null) return nothing;
    return html`<button @click=${() => this.dispatchEvent(momentChosen(t))}>
      look at ${formatClock(this.starts, t)}
    </button>`;
  }

  #rest(check: Check): TemplateResult {
    const limit =
      check.limit === null ? 'Nothing to fail; told beside a rule.' : `Limit: ${originWords[check.origin]}.`;
    return html`${check.mend ? html`<p class="mend">${check.mend}</p>` : nothing}
      <p class="note">${limit}</p>
      ${this.#press(check)}
      ${
        check.places.length > 0
          ? html`<details>
            <summary>other places</summary>
            <ul class="places">
              ${check.places.map((place) => html`<li>${verdictMark(place.verdict)} ${place.says}</li>`)}
            </ul>
          </details>`
          : nothing
      }`;
  }

  override render(): TemplateResult | typeof nothing {
    const [first, ...rest] = this.checks;
    if (!first) return nothing;
    const others = rest.toSorted((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict));
    return html`<section class="first" aria-label="The answer">
        ${verdictMark(first.verdict)}
        <p class="says">${first.says}</p>
        ${this.#rest(first)}
      </section>
      <section aria-label="Other checks">
        <h3>All checks: ${countSentence(this.checks)}</h3>
        <ul>
          ${others.map(
            (check) => html`<li class="check">
              ${verdictMark(check.verdict)}
              <div>
                <p><span class="name">${check.name}</span></p>
                <p>${check.says}</p>
                ${this.#rest(check)}
              </div>
            </li>`,
          )}
        </ul>
      </section>`;
  }
}

const originWords: Record<Check['origin'], string> = {
  published: 'published',
  'common practice': 'common practice, no source',
  'our default': 'our default',
  file: 'set in the site’s file',
};
