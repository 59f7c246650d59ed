import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatPercent } from '../../sim/quantity/index.ts';
import type { RunAnswer } from '../../sim/results/answer.ts';
import { vesselScale } from '../section/close-up.ts';
import { sceneOf } from '../section/layout.ts';
import '../section/section.ts';
import { shared } from '../views/styles.ts';
import type { DyeShown } from './dye.ts';
import { curveView } from './dye-curve.ts';
import { dyeRows } from './dye-rows.ts';
import { beyondWords, bothWords } from './dye-words.ts';
import type { Seen } from './explanation.ts';
import type { FilterInside } from './inside.ts';
import { factorWords, passageAt, watchedTogether } from './passage.ts';
import { differencesOf, type Row } from './sides-words.ts';
import { dyeStyles } from './styles.ts';

/** One of the two cases. */
export interface Side {
  readonly seen: Seen;
  readonly answer: RunAnswer;
  readonly inside: FilterInside;
}

/** What else stands on the sheet beside the two drawings, px: words above, figures below, and a dye's curve. */
const WORDS = 330;
const WORDS_DYED = 352;
const LEAST_TALL = 220;
/** Narrower than this the two stand one under the other, px. */
const BESIDE = 800;

/** Two cases of the filter side by side at one scale, for a projector: both drawings alive, and in what they differ. */
@customElement('tb-sides')
export class Sides extends LitElement {
  static override styles = [
    shared,
    dyeStyles,
    css`
      dialog {
        box-sizing: border-box;
        width: 100vw;
        height: 100dvh;
        max-width: none;
        max-height: none;
        margin: 0;
        border: 0;
        padding: 10px 32px 12px;
        color: var(--ink);
        background: var(--paper);
        overflow: auto;
      }
      header { display: flex; align-items: start; flex-wrap: wrap; gap: 0 24px; }
      h2 { flex: 1 1 16em; margin: 4px 0 0; font-size: 26px; line-height: 32px; font-weight: 400; }
      .set { max-width: none; margin: 0 0 4px; }
      .two, .under { display: grid; grid-template-columns: 1fr 1fr; column-gap: 24px; }
      figure { margin: 0; min-width: 0; }
      figcaption { font-size: 19px; line-height: 24px; }
      figcaption i { color: var(--ink2); }
      td, thead th { text-align: right; }
      th, td { padding: 2px 0; }
      td { padding-left: 14px; }
      .under td { white-space: nowrap; }
      thead th:first-child { text-align: left; }
      table { max-width: 900px; margin: 0 auto; }
      @media (max-width: 799px) {
        dialog { padding: 8px 16px; }
        .two, .under { grid-template-columns: 1fr; }
        h2 { font-size: 21px; line-height: 26px; }
      }
    `,
  ];

  @property({ attribute: false }) kept: Side | undefined;
  @property({ attribute: false }) now: Side | undefined;
  /** Dye in both; undefined where one of them is a trial. */
  @property({ attribute: false }) dye: DyeShown | undefined;
  @property({ attribute: false }) close: (() => void) | undefined;
  /** Which of the two keeps the pond cleaner; '' where it is not known. */
  @property() cleaner = '';
  @state() private room = { width: innerWidth, height: innerHeight };

  readonly #resized = (): void => {
    this.room = { width: innerWidth, height: innerHeight };
  };

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('resize', this.#resized);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('resize', this.#resized);
  }

  override firstUpdated(): void {
    this.renderRoot.querySelector('dialog')?.showModal();
  }

  /** Closed as by Escape, so that the focus goes back to where it was. */
  readonly #back = (): void => this.renderRoot.querySelector('dialog')?.close();

  #drawing(name: string, { seen, answer, inside }: Side, width: number, a: number): TemplateResult {
    const passage = passageAt(seen.scenario, seen.moment, seen.porosities);
    const share = passage?.share;
    const goes = share === undefined ? 'no water goes up' : `${formatPercent(share)} goes round`;
    const says = inside.watch ? `${goes}; ${beyondWords(inside.watch, seen.moment.t)}` : goes;
    // What is pressed in the drawing belongs to the page behind: here it is a picture.
    return html`<figure aria-label="${name}: ${goes}">
      <figcaption><i>${name}:</i> ${says}</figcaption>
      <tb-section inert .scenario=${seen.scenario} .answer=${answer} .moment=${seen.moment} .width=${width} .view=${{ vessel: a }}
        .inside=${inside}></tb-section>
    </figure>`;
  }

  /** One press pours into both; the same ones as on the page behind let it run and take it away. */
  #presses(): TemplateResult | typeof nothing {
    const { dye } = this;
    if (!dye) return nothing;
    const { poured, deeds } = dye;
    return html`${poured?.given?.watch.poured ? html`<button @click=${deeds.play}>${poured.playing ? 'hold the dye' : 'watch the dye'}</button>` : nothing}
      <button @click=${deeds.pour}>pour dye in both</button>
      ${poured ? html`<button @click=${deeds.clear}>let the dye go</button>` : nothing}`;
  }

  /** Why there is no curve of both, or none yet. */
  #dyeWords({ poured, trouble }: DyeShown): string {
    if (!poured) return '';
    if (trouble !== '') return trouble;
    return bothWords(poured.given);
  }

  #figures(width: number, factor: number, rows: readonly Row[]): TemplateResult {
    const { dye, now } = this;
    const head = `both at one scale, their marks ${factorWords(factor)}`;
    const given = dye?.poured?.given;
    const table = tableOf('Both cases in figures', head, rows);
    if (!dye?.poured || !given?.test.fed || given.kept === undefined) return table;
    const since = (now?.seen.moment.t ?? 0) - dye.poured.at;
    const kept = given.kept?.test.fed ? given.kept.test : undefined;
    // Where the case kept has no dye to be told, the present one's curve stands alone.
    return html`<div class="under">
      ${curveView(given.test, kept, width, since >= 0 ? since : undefined)}
      ${kept ? tableOf('The dye in both cases', head, dyeRows(kept, given.test)) : table}
    </div>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { kept, now, room, dye } = this;
    if (!kept || !now) return nothing;
    const isBeside = room.width >= BESIDE;
    const width = Math.floor(isBeside ? (room.width - 64 - 24 - 16) / 2 : room.width - 48);
    const tall = Math.max(LEAST_TALL, room.height - (dye?.poured ? WORDS_DYED : WORDS));
    const scales = [kept, now].map(({ seen }) => vesselScale(sceneOf(seen.scenario), width, tall) ?? Infinity);
    const a = Math.min(...scales);
    const factor = watchedTogether([kept, now].map(({ seen: s }) => passageAt(s.scenario, s.moment, s.porosities)));
    for (const side of [kept, now]) side.inside.factor = factor;
    const { lead, set, rows } = differencesOf(kept.seen, now.seen);
    const said = dye ? this.#dyeWords(dye) : '';
    return html`<dialog aria-label="Two cases side by side" @close=${() => this.close?.()}>
      <header><h2>${lead}</h2>${this.#presses()}<button @click=${this.#back}>back to the page</button></header>
      <p class="set">${set}${this.cleaner ? ` ${this.cleaner}` : ''}</p>
      <p class="set" role="status" ?hidden=${said === ''}>${said}</p>
      <div class="two">${this.#drawing('as kept', kept, width, a)}${this.#drawing('now', now, width, a)}</div>
      ${this.#figures(width, factor, rows)}
    </dialog>`;
  }
}

const tableOf = (label: string, head: string, rows: readonly Row[]): TemplateResult => html`<table aria-label=${label}>
  <thead><tr><th scope="col">${head}</th><th scope="col">as kept</th><th scope="col">now</th></tr></thead>
  <tbody>${rows.map((row) => html`<tr><th scope="row">${row.name}</th><td>${row.kept}</td><td>${row.now}</td></tr>`)}</tbody>
</table>`;

declare global {
  interface HTMLElementTagNameMap {
    'tb-sides': Sides;
  }
}
