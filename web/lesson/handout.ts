import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatFlow, formatPercent } from '../../sim/quantity/index.ts';
import type { Engine } from '../engine/client.ts';
import type { Display } from '../engine/protocol.ts';
import type { SectionDrawing } from '../section/section.ts';
import { inkOnPaper } from '../sheet/ink-on-paper.ts';
import { OverPage, overStyles } from '../sheet/over-page.ts';
import { type Paper, printOn, usualPaper } from '../sheet/paper.ts';
import { kept } from '../state/one-line.ts';
import { shared } from '../views/styles.ts';
import { handoutStyles, unfigured } from './handout-styles.ts';
import { fileAt, type Setting } from './settings.ts';
import { gapWords, head, muck, STEPS, type Step, share, stays } from './steps.ts';
import { type Taught, taughtOf } from './taught.ts';

type Part = 'class' | 'trainer';

const TITLES: Readonly<Record<Part, string>> = { class: 'sheet for the class', trainer: 'sheet for the trainer' };
const PARTS: readonly Part[] = ['class', 'trainer'];
const PAPERS: readonly Paper[] = ['A4', 'Letter'];
/** px the drawing is laid out on before it is made as wide as the paper. */
const LAID = 840;
/** As many lines are ruled under a question. */
const LINES = [1, 2, 3];

/** The lesson on paper: to write on for the class, with all figures and sentences for the trainer. */
@customElement('tb-handout')
export class Handout extends OverPage {
  static override styles = [shared, inkOnPaper, handoutStyles, overStyles];

  /** As each step of the lesson stands, in their order. */
  @property({ attribute: false }) stand: readonly (Taught | undefined)[] = [];

  @state() private parts = PARTS;
  @state() private paper: Paper | undefined;

  get #display(): Display {
    return this.stand[0]?.scenario.display ?? 'metric';
  }

  protected override updated(): void {
    printOn(this.paper ?? usualPaper(this.#display));
    void this.#leaveFiguresOut();
  }

  async #leaveFiguresOut(): Promise<void> {
    const section = this.renderRoot.querySelector<SectionDrawing>('tb-section');
    await section?.updateComplete;
    const root = section?.shadowRoot;
    const { styleSheet } = unfigured;
    if (root && styleSheet && !root.adoptedStyleSheets.includes(styleSheet)) root.adoptedStyleSheets.push(styleSheet);
  }

  #drawing(): TemplateResult | typeof nothing {
    const first = this.stand[0];
    if (!first) return nothing;
    const { scenario, balance } = first;
    const moment = { t: 0, levels: balance.levels, flows: balance.flows };
    return html`<figure inert aria-hidden="true">
      <tb-section .scenario=${scenario} .balance=${balance} .moment=${moment} .width=${LAID} view="filter"></tb-section>
    </figure>`;
  }

  #blanks(): TemplateResult {
    const us = this.#display === 'us';
    const blank = (name: string, unit: string): TemplateResult =>
      html`<li>${name} <span class="blank"></span>${unit && `\u00a0${unit}`}</li>`;
    return html`<ul class="blanks">${blank('from below', us ? 'gph' : 'L/min')}${blank('slips round', '%')}${blank('head', us ? 'in' : 'mm')}${blank('time in the pores', '')}</ul>`;
  }

  #class(): TemplateResult {
    return html`<article class="class" aria-label=${capital(TITLES.class)}>
      <h2>Channeling: what the water does inside a filter</h2>
      <p>Name <span class="blank name"></span> Date <span class="blank"></span></p>
      <p>An invented filter, in the section below as the first step sets it. Of a hundred marks, the dark ones go through the media and the white ones round them. Answer each question before the next step is shown, then read the figures off the screen.</p>
      ${this.#drawing()}
      ${STEPS.map(({ sets, asks }, i) => {
        const at = this.stand[i];
        return html`<section><h3>Step ${i + 1}</h3>
          ${at ? html`<p>${kept(settingWords(sets, at))}</p>` : nothing}
          ${this.#blanks()}
          <p class="asks">${asks}</p>
          ${LINES.map(() => html`<div class="line"></div>`)}</section>`;
      })}
    </article>`;
  }

  #trainer(): TemplateResult {
    const columns = ['from below', 'over the top', 'slips round', 'head', 'of what lifts', 'time in the pores'];
    return html`<article class="trainer" aria-label=${capital(TITLES.trainer)}>
      <h2>Channeling, a lesson in ${STEPS.length} steps: for the trainer</h2>
      <p>An invented filter, reckoned by the laws the program uses for any other. The figures are for learning from, not for building by: a real filter’s gap is seldom known.</p>
      <table role="table" aria-label="All steps in figures">
        <thead role="rowgroup"><tr role="row"><th scope="col" role="columnheader">step</th>${columns.map((each) => html`<th scope="col" role="columnheader">${each}</th>`)}</tr></thead>
        <tbody role="rowgroup">${STEPS.map(({ title }, i) => row(i, title, this.stand[i], columns))}</tbody>
      </table>
      ${STEPS.map((step, i) => this.#told(step, i))}
    </article>`;
  }

  #told({ title, sets, says, asks }: Step, i: number): TemplateResult {
    const at = this.stand[i];
    return html`<section><h3>${i + 1}. ${title}</h3>
      ${at ? html`<p>${kept(settingWords(sets, at))}</p>${says(at).map((each) => html`<p>${kept(each)}</p>`)}` : nothing}
      <p class="asks">To ask: ${asks}</p></section>`;
  }

  #presses(): TemplateResult {
    const paper = this.paper ?? usualPaper(this.#display);
    const press = (words: string, isOn: boolean, deed: () => void): TemplateResult =>
      html`<button aria-pressed=${isOn} @click=${deed}>${words}</button>`;
    const show = (parts: readonly Part[]) => () => {
      this.parts = parts;
    };
    return html`<div role="group" aria-label="What is printed">
        ${press('both', this.parts === PARTS, show(PARTS))}
        ${PARTS.map((each) => press(TITLES[each], this.parts !== PARTS && this.parts.includes(each), show([each])))}
      </div>
      <div role="group" aria-label="Paper">${PAPERS.map((each) =>
        press(each, each === paper, () => {
          this.paper = each;
        }),
      )}</div>`;
  }

  override render(): TemplateResult {
    const sheets = html`${this.parts.map((part) => (part === 'class' ? this.#class() : this.#trainer()))}`;
    return this.dialog('The lesson on paper', this.#presses(), sheets);
  }
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const openingWords = (opening: number): string =>
  opening === 0 ? 'shut' : opening === 1 ? 'open' : opening === 0.5 ? 'half open' : `${formatPercent(opening)} open`;

/** How a step sets the site, for who sets it by hand. */
function settingWords({ bottom, top }: Setting, at: Taught): string {
  const clean = at.media.layers[0].deposit > 0 ? `${muck(at)} of fine muck in the fine mat` : 'the fine mat clean';
  return `Bottom valve ${openingWords(bottom)}, top valve ${openingWords(top)}; gap ${gapWords(at)}; ${clean}.`;
}

function row(
  i: number,
  title: string,
  at: Taught | undefined,
  columns: readonly string[],
): TemplateResult | typeof nothing {
  if (!at) return nothing;
  const { balance, scenario } = at;
  const flow = (name: string): string => {
    const value = balance.flows[name] ?? 0;
    return value > 1e-9 ? formatFlow(value, scenario.display) : 'shut';
  };
  const figures = [
    flow('bottom feed'),
    flow('top feed'),
    share(at),
    head(at),
    formatPercent(balance.lift ?? 0),
    stays(at),
  ];
  return html`<tr role="row"><th scope="row" role="rowheader">${i + 1}. ${title}</th>
    ${figures.map((figure, k) => html`<td role="cell" data-label=${columns[k]}>${kept(figure)}</td>`)}</tr>`;
}

/** Has every step of the lesson answered, and lays all of them over the page. */
export async function openHandout(engine: Engine, base: unknown, display: Display | undefined): Promise<void> {
  const texts = STEPS.map(({ sets }) => JSON.stringify(fileAt(base, sets, base)));
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
