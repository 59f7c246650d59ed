import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { DyeFigures } from '../../sim/dye/answer.ts';
import { formatDuration } from '../../sim/quantity/index.ts';
import type { DyeGiven } from '../engine/filter-asked.ts';
import { shared } from '../views/styles.ts';
import { Width } from '../views/width.ts';
import { curveView } from './dye-curve.ts';
import { dyeRows } from './dye-rows.ts';
import { keptWords, playedAt, whereWords } from './dye-words.ts';
import { factorWords } from './passage.ts';
import { dyeStyles } from './styles.ts';

/** So long after the pour what held then is told as past, s. */
const LATER = 1;

/** What the presses do. */
export interface DyeDeeds {
  readonly pour: () => void;
  /** Lets it run, or holds it. */
  readonly play: () => void;
  readonly clear: () => void;
  /** Goes to a moment of the run, s. */
  readonly to: (t: number) => void;
}

/** A dye poured at a moment of the run, s; undefined what is being computed. */
export interface Poured {
  readonly at: number;
  readonly given: DyeGiven | undefined;
  readonly playing: boolean;
}

/** What is shown of a dye wherever it is. */
export interface DyeShown {
  readonly deeds: DyeDeeds;
  readonly poured: Poured | undefined;
  /** Why what is shown is missing. */
  readonly trouble: string;
}

/** Dye poured under the rack: the press for it, where it is, and its curve at the lip. */
@customElement('tb-dye')
export class DyePanel extends LitElement {
  static override styles = [shared, dyeStyles];

  @property({ attribute: false }) poured: Poured | undefined;
  @property({ attribute: false }) deeds: DyeDeeds | undefined;
  /** The moment drawn, s of the run. */
  @property({ type: Number }) moment = 0;
  /** Whether a trial stands in the run's place. */
  @property({ type: Boolean }) trial = false;
  /** Why what is shown is missing. */
  @property() trouble = '';
  readonly #width = new Width(this);

  /** On a small screen the drawing is brought into sight, since that is where the dye runs. */
  #seen(deed: (() => void) | undefined): void {
    deed?.();
    const page = this.getRootNode();
    if (page instanceof ShadowRoot) page.querySelector('tb-section')?.scrollIntoView({ block: 'nearest' });
  }

  #presses(): TemplateResult {
    const { poured, deeds } = this;
    const watch = poured?.given?.watch;
    return html`<div class="presses">
      ${watch?.poured ? html`<button class="deed" @click=${() => this.#seen(deeds?.play)}>${poured?.playing ? 'hold the dye' : 'watch the dye'}</button>` : nothing}
      <button class="deed" @click=${() => this.#seen(deeds?.pour)}>${poured ? 'pour dye now' : 'pour dye'}</button>
      ${poured ? html`<button @click=${() => deeds?.clear()}>let the dye go</button>` : nothing}
    </div>`;
  }

  #told({ at, given, playing }: Poured): TemplateResult {
    if (this.trouble) return html`<p role="alert">${this.trouble}</p>`;
    if (!given) return html`<p class="note">Computing …</p>`;
    const { test, watch, kept } = given;
    if (!watch.poured) return html`<p role="status">${watch.says}</p>`;
    const besideIt = kept === undefined ? '' : keptWords(kept);
    const last = watch.t[watch.t.length - 1];
    const said = watch.says || (test.fed ? '' : test.says);
    // What held at the pour need not hold at the moment drawn.
    const standing = said && this.moment > at + LATER ? `As it was poured: ${said}` : said;
    return html`<p class="where" aria-live=${playing ? 'off' : 'polite'}>${whereWords(watch, this.moment)}</p>
      ${standing ? html`<p role="status">${standing}</p>` : nothing}
      ${test.fed ? html`<p>${test.says}</p>` : nothing}
      ${besideIt ? html`<p>${besideIt}</p>` : nothing}
      <p class="note">Played ${factorWords(playedAt(last - at))}. The darkest tint is the dye as it was poured.
        ${test.fed ? 'The curve is of the flows of that moment, held, without what comes back by the pond.' : ''}</p>`;
  }

  #curve({ given, at }: Poured): TemplateResult | typeof nothing {
    if (!given?.test.fed) return nothing;
    const { test, kept } = given;
    const { px } = this.#width;
    const room = px >= 700 ? 0.54 * px : px;
    const width = Math.max(240, Math.min(640, Math.floor(room) || 320));
    const other = kept?.test.fed ? kept.test : undefined;
    const now = this.moment - at;
    return html`<div class="curve">
      ${curveView(test, other, width, now >= 0 && !this.trial ? now : undefined)}
      ${other ? this.#both(other, test, at) : this.#tenths(test, at)}</div>`;
  }

  #tenths({ t10, t50, t90 }: DyeFigures, at: number): TemplateResult {
    const tenths = [
      ['a tenth', t10],
      ['half', t50],
      ['nine tenths', t90],
    ] as const;
    return html`<p class="tenths">past the lip: ${tenths.map(
      ([name, t]) => html`<span>${name} ${this.#press(name, t, at)}</span> `,
    )}</p>`;
  }

  #press(name: string, t: number, at: number): TemplateResult {
    return html`<button @click=${() => this.deeds?.to(at + t)} aria-label="${name} past the lip after ${formatDuration(t)}: look at it">${formatDuration(t)}</button>`;
  }

  #both(kept: DyeFigures, now: DyeFigures, at: number): TemplateResult {
    return html`<table aria-label="The dye in both cases">
      <thead><tr><th scope="col">the dye</th><th scope="col" class="figure">as kept</th><th scope="col" class="figure">now</th></tr></thead>
      <tbody>${dyeRows(kept, now).map(
        ({ name, after, ...row }) =>
          html`<tr><th scope="row">${name}</th><td class="figure">${row.kept}</td>
            <td class="figure">${after === undefined ? row.now : this.#press(name, after, at)}</td></tr>`,
      )}</tbody>
    </table>`;
  }

  override render(): TemplateResult {
    const { poured } = this;
    if (this.trial)
      return html`<section aria-label="Dye"><p class="note">Dye is poured in the run; what is drawn is a trial.</p></section>`;
    return html`<section aria-label="Dye" class=${poured?.given?.test.fed ? 'sides' : ''}>
      <div>${this.#presses()}${
        poured
          ? this.#told(poured)
          : html`<p class="note">A pulse under the rack at the moment drawn, to see what comes over the lip when, and by which way.</p>`
      }</div>
      ${poured ? this.#curve(poured) : nothing}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-dye': DyePanel;
  }
}
