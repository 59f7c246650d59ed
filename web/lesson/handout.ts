import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatDuration, formatFlow, formatPercent } from '../../sim/quantity/index.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import type { Engine } from '../engine/client.ts';
import type { Display } from '../engine/protocol.ts';
import { OverPage, overStyles } from '../sheet/over-page.ts';
import { printOn, usualPaper } from '../sheet/paper.ts';
import { demoText } from '../sites.ts';
import { shared } from '../views/styles.ts';
import { STEPS, type Taught, TEACHING_SITE, taughtOf } from './steps.ts';

/** The whole lesson on paper, with the figures of every step. */
@customElement('tb-handout')
export class Handout extends OverPage {
  static override styles = [
    shared,
    css`
      .presses > div {
        gap: 0 24px;
      }
      article {
        box-sizing: border-box;
        max-width: 190mm;
        margin: 0 auto 40px;
        padding: 24px 16px;
        background: #fff;
        color: #000;
        font-size: 14px;
        line-height: 19px;
      }
      h2 {
        font-size: 24px;
        line-height: 30px;
        font-weight: 400;
        margin: 0 0 8px;
      }
      h3 {
        color: #000;
        font-size: 16px;
        margin: 14px 0 2px;
      }
      p {
        max-width: none;
        margin: 0 0 5px;
      }
      .asks {
        font-style: italic;
      }
      section {
        break-inside: avoid;
        color: #000;
      }
      .rows {
        overflow-x: auto;
      }
      table {
        border-collapse: collapse;
        font-variant-numeric: tabular-nums lining-nums;
        width: 100%;
      }
      th,
      td {
        text-align: right;
        font-weight: 400;
        padding: 2px 0 2px 12px;
        border-bottom: 0.8px solid #000;
        vertical-align: bottom;
        white-space: nowrap;
      }
      th:first-child {
        white-space: normal;
        text-align: left;
        padding-left: 0;
      }
      @media print {
        article {
          padding: 0;
          margin: 0;
        }
      }
    `,
    overStyles,
  ];

  /** As each step of the lesson stands, in their order. */
  @property({ attribute: false }) stand: readonly (Taught | undefined)[] = [];

  override connectedCallback(): void {
    super.connectedCallback();
    printOn(usualPaper(this.stand[0]?.scenario.display));
  }

  #row(at: Taught | undefined, title: string, i: number): TemplateResult | typeof nothing {
    if (!at) return nothing;
    const { balance, scenario } = at;
    const flow = (name: string): string => {
      const value = balance.flows[name] ?? 0;
      return value > 1e-9 ? formatFlow(value, scenario.display) : 'shut';
    };
    return html`<tr><th scope="row">${i + 1}. ${title}</th><td>${flow('bottom feed')}</td><td>${flow('top feed')}</td>
      <td>${formatPercent(balance.channeled ?? 0)}</td><td>${formatPercent(balance.lift ?? 0)}</td>
      <td>${balance.contact ? formatDuration(balance.contact.pore) : '–'}</td></tr>`;
  }

  override render(): TemplateResult {
    const sheet = html`<article aria-label="The lesson on channeling">
        <h2>Channeling, a lesson in ${STEPS.length} steps</h2>
        <p>An invented filter, reckoned by the laws the program uses for any other. The figures are for learning from, not for building by: a real filter’s gap is seldom known.</p>
        <div class="rows" tabindex="0" role="region" aria-label="All steps in figures"><table>
          <thead><tr><th scope="col">step</th><th scope="col">from below</th><th scope="col">over the top</th>
            <th scope="col">slips round</th><th scope="col">of the head that lifts</th><th scope="col">time in the pores</th></tr></thead>
          <tbody>${STEPS.map(({ title }, i) => this.#row(this.stand[i], title, i))}</tbody>
        </table></div>
        ${STEPS.map(({ title, says, asks }, i) => {
          const at = this.stand[i];
          return html`<section><h3>${i + 1}. ${title}</h3>
            ${at ? says(at).map((each) => html`<p>${each}</p>`) : nothing}
            ${asks ? html`<p class="asks">${asks}</p>` : nothing}</section>`;
        })}
      </article>`;
    return this.dialog('The lesson on paper', nothing, sheet);
  }
}

/** Has every step of the lesson answered, and lays all of them over the page. */
export async function openHandout(engine: Engine, display: Display | undefined): Promise<void> {
  const file: unknown = JSON.parse(await demoText(TEACHING_SITE));
  const texts = STEPS.map(({ edits }) => JSON.stringify(withValuesAt(file, edits)));
  const given = await engine.give({ want: 'balances', texts, display });
  if (given === 'superseded' || given.kind !== 'balances') return;
  const handout = document.createElement('tb-handout');
  handout.stand = given.of.map((each) => (each ? taughtOf(each.scenario, each.balance) : undefined));
  handout.layOver();
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-handout': Handout;
  }
}
