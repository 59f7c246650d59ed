import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatPercent } from '../../sim/quantity/index.ts';
import type { RunAnswer } from '../../sim/results/answer.ts';
import { vesselScale } from '../section/close-up.ts';
import { sceneOf } from '../section/layout.ts';
import '../section/section.ts';
import { shared } from '../views/styles.ts';
import type { Seen } from './explanation.ts';
import type { FilterInside } from './inside.ts';
import { factorWords, passageAt, watchedTogether } from './passage.ts';
import { differencesOf } from './sides-words.ts';

/** One of the two cases. */
export interface Side {
  readonly seen: Seen;
  readonly answer: RunAnswer;
  readonly inside: FilterInside;
}

/** What else stands on the sheet beside the two drawings, px: words above, figures below. */
const WORDS = 330;
const LEAST_TALL = 220;
/** Narrower than this the two stand one under the other, px. */
const BESIDE = 800;

/** Two cases of the filter side by side at one scale, for a projector: both drawings alive, and in what they differ. */
@customElement('tb-sides')
export class Sides extends LitElement {
  static override styles = [
    shared,
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
      header { display: flex; align-items: start; gap: 24px; }
      h2 { flex: 1; margin: 4px 0 0; font-size: 26px; line-height: 32px; font-weight: 400; }
      .set { max-width: none; margin: 0 0 4px; }
      .two { display: grid; grid-template-columns: 1fr 1fr; column-gap: 24px; }
      figure { margin: 0; min-width: 0; }
      figcaption { font-size: 19px; line-height: 24px; }
      figcaption i { color: var(--ink2); }
      td, thead th { text-align: right; }
      th, td { padding: 2px 0; }
      thead th:first-child { text-align: left; }
      table { max-width: 900px; margin: 0 auto; }
      @media (max-width: 799px) {
        dialog { padding: 8px 16px; }
        .two { grid-template-columns: 1fr; }
        h2 { font-size: 21px; line-height: 26px; }
      }
    `,
  ];

  @property({ attribute: false }) kept: Side | undefined;
  @property({ attribute: false }) now: Side | undefined;
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
    const says = share === undefined ? 'no water goes up' : `${formatPercent(share)} goes round`;
    // What is pressed in the drawing belongs to the page behind: here it is a picture.
    return html`<figure aria-label="${name}: ${says}">
      <figcaption><i>${name}:</i> ${says}</figcaption>
      <tb-section inert .scenario=${seen.scenario} .answer=${answer} .moment=${seen.moment} .width=${width} .view=${{ vessel: a }}
        .inside=${inside}></tb-section>
    </figure>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { kept, now, room } = this;
    if (!kept || !now) return nothing;
    const isBeside = room.width >= BESIDE;
    const width = Math.floor(isBeside ? (room.width - 64 - 24 - 16) / 2 : room.width - 48);
    const tall = Math.max(LEAST_TALL, room.height - WORDS);
    const scales = [kept, now].map(({ seen }) => vesselScale(sceneOf(seen.scenario), width, tall) ?? Infinity);
    const a = Math.min(...scales);
    const factor = watchedTogether([kept, now].map(({ seen: s }) => passageAt(s.scenario, s.moment, s.porosities)));
    for (const side of [kept, now]) side.inside.factor = factor;
    const { lead, set, rows } = differencesOf(kept.seen, now.seen);
    return html`<dialog aria-label="Two cases side by side" @close=${() => this.close?.()}>
      <header><h2>${lead}</h2><button @click=${this.#back}>back to the page</button></header>
      <p class="set">${set}${this.cleaner ? ` ${this.cleaner}` : ''}</p>
      <div class="two">${this.#drawing('as kept', kept, width, a)}${this.#drawing('now', now, width, a)}</div>
      <table aria-label="Both cases in figures">
        <thead><tr><th scope="col">both at one scale, their marks ${factorWords(factor)}</th><th scope="col">as kept</th><th scope="col">now</th></tr></thead>
        <tbody>${rows.map((row) => html`<tr><th scope="row">${row.name}</th><td>${row.kept}</td><td>${row.now}</td></tr>`)}</tbody>
      </table>
    </dialog>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-sides': Sides;
  }
}
