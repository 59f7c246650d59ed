import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatDuration, formatPercent } from '../../sim/quantity/index.ts';
import type { DyeGiven } from '../engine/filter-asked.ts';
import { layerElement } from '../section/elements.ts';
import { shared } from '../views/styles.ts';
import { Width } from '../views/width.ts';
import { dyePlotMarks, TALL } from './dye-plot.ts';
import { playedAt, whereWords } from './dye-words.ts';
import { factorWords } from './passage.ts';
import { dyeStyles } from './styles.ts';

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

  #presses(): TemplateResult {
    const { poured, deeds } = this;
    const watch = poured?.given?.watch;
    return html`<div class="presses">
      ${watch?.poured ? html`<button class="deed" @click=${() => deeds?.play()}>${poured?.playing ? 'hold the dye' : 'watch the dye'}</button>` : nothing}
      <button class="deed" @click=${() => deeds?.pour()}>${poured ? 'pour dye now' : 'pour dye'}</button>
      ${poured ? html`<button @click=${() => deeds?.clear()}>let the dye go</button>` : nothing}
    </div>`;
  }

  #told({ at, given, playing }: Poured): TemplateResult {
    if (this.trouble) return html`<p role="alert">${this.trouble}</p>`;
    if (!given) return html`<p class="note">Computing …</p>`;
    const { test, watch } = given;
    if (!watch.poured) return html`<p role="status">${watch.says}</p>`;
    const last = watch.t[watch.t.length - 1];
    return html`<p class="where" aria-live=${playing ? 'off' : 'polite'}>${whereWords(watch, this.moment)}</p>
      ${watch.says || !test.fed ? html`<p role="status">${watch.says || (test.fed ? '' : test.says)}</p>` : nothing}
      ${test.fed ? html`<p>${test.says}</p>` : nothing}
      <p class="note">Played ${factorWords(playedAt(last - at))}. The darkest tint is the dye as it was poured.
        ${test.fed ? 'The curve is of the flows of that moment, held, without what comes back by the pond.' : ''}</p>`;
  }

  #curve({ given, at }: Poured): TemplateResult | typeof nothing {
    if (!given?.test.fed) return nothing;
    const { test } = given;
    const { px } = this.#width;
    const room = px >= 700 ? 0.54 * px : px;
    const width = Math.max(240, Math.min(640, Math.floor(room) || 320));
    const says = `Dye at the lip: ${formatPercent(1 - test.channeled)} through the media, ${formatPercent(test.channeled)} round them; a tenth has passed after ${formatDuration(test.t10)}, half after ${formatDuration(test.t50)}, nine tenths after ${formatDuration(test.t90)}.`;
    const tenths = [
      ['a tenth', test.t10],
      ['half', test.t50],
      ['nine tenths', test.t90],
    ] as const;
    const now = this.moment - at;
    return html`<div class="curve">
      <svg role="img" width=${width} height=${TALL} viewBox="0 0 ${width} ${TALL}" aria-label=${says}>
        ${layerElement(dyePlotMarks(test, width, now >= 0 && !this.trial ? now : undefined))}
      </svg>
      <p class="tenths">past the lip: ${tenths.map(
        ([name, t]) =>
          html`<span>${name} <button @click=${() => this.deeds?.to(at + t)} aria-label="${name} past the lip after ${formatDuration(t)}: look at it">${formatDuration(t)}</button></span> `,
      )}</p></div>`;
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
