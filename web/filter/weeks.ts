import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Care, CareAnswer } from '../../sim/clogging/answer.ts';
import { type Display, formatDuration, formatFlow, formatNumber, formatPercent } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { FileEdits } from '../engine/protocol.ts';
import { Asking, type Giving } from '../fill/ask.ts';
import { layerElement } from '../section/elements.ts';
import { isFelt } from '../section/vessel.ts';
import { shared } from '../views/styles.ts';
import { Width } from '../views/width.ts';
import { dyeStyles } from './styles.ts';
import { TALL, weeksPlotMarks } from './weeks-plot.ts';

const WEEK = 604800;
/** Of a course so many moments stand in its table. */
const ROWS = 6;
/** What is supposed of a pond of which nothing is known: a milliliter settles out of each cubic meter. Our default. */
const DEBRIS = 1e-6;
/** What a mat then keeps, 1/m: our default. */
const CAPTURE = 5;

export interface MuckSupposed {
  readonly edits: FileEdits;
  readonly label: string;
}

/**
 * When the media are to be cleaned, and how split, share, contact time and pump change until then; fires
 * `muck-supposed` where the file gives no debris and somebody wants to see some.
 */
@customElement('tb-weeks')
export class Weeks extends LitElement {
  static override styles = [
    shared,
    dyeStyles,
    css`
      td,
      th:not(:first-child) {
        text-align: right;
        padding-left: 14px;
      }
      th,
      td {
        overflow-wrap: normal;
      }
      td,
      th:first-child {
        white-space: nowrap;
      }
      .rows {
        max-width: 620px;
        overflow-x: auto;
      }
    `,
  ];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property() text = '';
  @property() display: Display = 'metric';
  @property({ attribute: false }) engine: Giving | undefined;
  @state() private care: CareAnswer | undefined;
  @state() private trouble = '';
  readonly #asking = new Asking(this);
  readonly #width = new Width(this);

  protected override willUpdate(changed: PropertyValues): void {
    if (!this.engine || !(changed.has('text') || changed.has('display'))) return;
    const { text, display } = this;
    void this.#asking.ask(this.engine, [{ want: 'care', text, display }], (given) => {
      this.trouble = given.kind === 'fault' ? given.message : '';
      if (given.kind === 'care') this.care = given.care;
    });
  }

  #suppose(media: NonNullable<NonNullable<Scenario['filter']>['media']>): void {
    const mats = media.layers.flatMap((layer, i) => (isFelt(layer) && layer.capture === 0 ? [i] : []));
    const edits: FileEdits = [
      ['debris', DEBRIS],
      ...mats.map((i) => [`filter.media.layers[${i}].capture`, CAPTURE] as const),
    ];
    const detail: MuckSupposed = { edits, label: 'fine muck in the water' };
    this.dispatchEvent(new CustomEvent('muck-supposed', { detail, bubbles: true, composed: true }));
  }

  #plot(care: Care): TemplateResult {
    const width = Math.max(240, Math.min(620, this.#width.px));
    return html`<svg width=${width} height=${TALL} viewBox="0 0 ${width} ${TALL}" role="img"
      aria-label="The channeled share, week by week; its figures stand in the table below">${layerElement(weeksPlotMarks(care, width))}</svg>`;
  }

  #table({ course }: Care): TemplateResult {
    const { t, split, channeled, pore, duty, lift } = course;
    const last = t.length - 1;
    const picked = [...new Set(Array.from({ length: ROWS }, (_, i) => Math.round((last * i) / (ROWS - 1))))];
    const stay = (seconds: number): string => (Number.isNaN(seconds) ? 'none goes there' : formatDuration(seconds));
    return html`<div class="rows" tabindex="0" role="region" aria-label="Week by week"><table>
      <thead><tr><th scope="col">weeks</th><th scope="col">slips round</th><th scope="col">from below</th>
        <th scope="col">time in the pores</th><th scope="col">the pump gives</th><th scope="col">of the head that lifts</th></tr></thead>
      <tbody>${picked.map(
        (
          i,
        ) => html`<tr><th scope="row">${formatNumber(t[i] / WEEK, 1)}</th><td>${formatPercent(channeled[i])}</td><td>${formatPercent(split[i])}</td>
          <td>${stay(pore[i])}</td><td>${formatFlow(duty[i], this.display)}</td><td>${formatPercent(lift[i])}</td></tr>`,
      )}</tbody></table></div>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { care, trouble, scenario } = this;
    if (trouble) return html`<p class="wrong" role="alert">${trouble}</p>`;
    if (!care) return html`<p class="note">One moment …</p>`;
    const media = scenario?.filter?.media;
    const isBare = !care.care && media && scenario.debris === 0;
    return html`<section aria-label="The weeks between cleanings">
      <p role="status">${care.says}</p>
      ${isBare ? html`<button @click=${() => this.#suppose(media)}>suppose fine muck: a milliliter settles out of each cubic meter (our default)</button>` : nothing}
      ${care.care && care.course.t.length > 1 ? html`${this.#plot(care)} ${this.#table(care)}` : nothing}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-weeks': Weeks;
  }
}
