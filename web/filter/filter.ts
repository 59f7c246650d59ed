import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatDuration, formatLength, formatNumber, formatPercent } from '../../sim/quantity/index.ts';
import type { DyeGiven } from '../engine/protocol.ts';
import { layerElement } from '../section/elements.ts';
import { shared } from '../views/styles.ts';
import { dyePlotMarks, TALL } from './dye-plot.ts';
import { playedAt, whereWords } from './dye-words.ts';
import { explanation, type Seen } from './explanation.ts';
import { factorWords, type Passage, passageAt, watchedAt } from './passage.ts';
import { filterStyles } from './styles.ts';

/** What the presses of the panel do. */
export interface FilterDeeds {
  readonly pour: () => void;
  readonly play: () => void;
  readonly clear: () => void;
  readonly stand: (stands: boolean) => void;
  readonly to: (t: number) => void;
}

/** The dye of the page: nothing poured, being computed, or there. */
export interface Dye {
  readonly at: number;
  readonly given: DyeGiven | undefined;
  readonly playing: boolean;
}

/** What is seen in the filter in words and figures, and the dye that is poured into it. */
@customElement('tb-filter')
export class FilterPanel extends LitElement {
  static override styles = [shared, filterStyles];

  @property({ attribute: false }) seen: Seen | undefined;
  @property({ attribute: false }) dye: Dye | undefined;
  @property({ attribute: false }) deeds: FilterDeeds | undefined;
  /** Whether the marks are held. */
  @property({ type: Boolean }) stands = false;
  /** Name of the trial on the screen, where that is no run. */
  @property() trial = '';
  @state() private width = 0;

  readonly #watch = new ResizeObserver(([entry]) => {
    if (entry) this.width = Math.floor(entry.contentRect.width);
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch.disconnect();
  }

  #marksWords(passage: Passage | undefined): TemplateResult | typeof nothing {
    if (!passage || passage.share === undefined) return nothing;
    const press = (): void => this.deeds?.stand(!this.stands);
    return html`<p class="note">Of a hundred marks as many go each way as parts of the bottom feed: dark darts through the media, white lozenges up the gap, ${factorWords(watchedAt(passage))}.
      <button @click=${press}>${this.stands ? 'let the marks run' : 'let the marks stand'}</button></p>`;
  }

  #figures(passage: Passage | undefined, { scenario: { display } }: Seen): TemplateResult | typeof nothing {
    if (!passage || passage.share === undefined) return nothing;
    const time = (seconds: number | undefined): string =>
      seconds === undefined ? 'none goes there' : formatDuration(seconds);
    const rows = [
      ['goes through the media', formatPercent(1 - passage.share)],
      ['goes round them', formatPercent(passage.share)],
      ['time among the media', time(passage.throughTime)],
      ['time in the gap', time(passage.roundTime)],
      [`head lost; ${formatLength(passage.lift, display)} lifts them`, formatLength(passage.head, display)],
    ];
    return html`<table aria-label="Figures of the moment"><tbody>${rows.map(
      ([name, figure]) => html`<tr><th scope="row">${name}</th><td class="figure">${figure}</td></tr>`,
    )}</tbody></table>`;
  }

  #dyeView({ moment }: Seen): TemplateResult {
    const { dye, deeds } = this;
    const heading = html`<h3>Dye from the space under the rack, at the lip</h3>`;
    if (this.trial)
      return html`<section aria-label="Dye">${heading}<p>Dye is poured in the run; what is drawn is a trial.</p></section>`;
    const pour = html`<button class="deed" @click=${() => deeds?.pour()}>${dye ? 'pour dye now' : 'pour dye'}</button>`;
    if (!dye)
      return html`<section aria-label="Dye">${heading}<div class="presses">${pour}</div>
        <p class="note">A pulse under the rack at the moment drawn, to see what comes over the lip when, and by which way.</p></section>`;
    if (!dye.given) return html`<section aria-label="Dye">${heading}<p>Computing …</p></section>`;
    const { test, watch } = dye.given;
    const lasts = watch.poured ? watch.t[watch.t.length - 1] - watch.at : 0;
    const where = watch.poured ? whereWords(watch, moment.t) : watch.says;
    return html`<section aria-label="Dye">${heading}
      ${watch.poured ? html`<p class="where" aria-live=${dye.playing ? 'off' : 'polite'}>${where}</p>` : nothing}
      <div class="presses">
        ${watch.poured ? html`<button class="deed" @click=${() => deeds?.play()}>${dye.playing ? 'hold it' : 'watch it'}</button>` : nothing}
        ${pour}<button @click=${() => deeds?.clear()}>let it go</button>
      </div>
      ${watch.poured ? html`<p class="note">Played ${factorWords(playedAt(lasts))}; the darkest tint is the dye as it was poured.</p>` : nothing}
      ${test.fed ? this.#curve(test, moment.t - dye.at) : html`<p>${test.says}</p>`}
      ${!watch.poured && watch.says !== (test.fed ? '' : test.says) ? html`<p>${watch.says}</p>` : nothing}
      ${watch.poured && watch.says ? html`<p>${watch.says}</p>` : nothing}
    </section>`;
  }

  #curve(test: Extract<DyeGiven['test'], { fed: true }>, now: number): TemplateResult {
    const width = Math.max(240, Math.min(560, this.width || 320));
    const shown = now >= 0 ? now : undefined;
    const says = `Dye at the lip: through the media ${formatPercent(1 - test.channeled)}, round them ${formatPercent(test.channeled)}; a tenth has passed after ${formatDuration(test.t10)}, half after ${formatDuration(test.t50)}, nine tenths after ${formatDuration(test.t90)}.`;
    const to = (t: number) => (): void => this.deeds?.to(test.at + t);
    const tenths = [
      ['a tenth after', test.t10],
      ['half after', test.t50],
      ['nine tenths after', test.t90],
    ] as const;
    return html`<svg class="dye" role="img" width=${width} height=${TALL} viewBox="0 0 ${width} ${TALL}" aria-label=${says}>
        ${layerElement(dyePlotMarks(test, width, shown))}
        <text class="axis" x="0" y="11">% a second</text>
      </svg>
      <div class="tenths">${tenths.map(([name, t]) => html`<span>${name} <button @click=${to(t)} aria-label="${name} ${formatDuration(t)}: look at it">${formatDuration(t)}</button></span>`)}</div>
      <p>${test.says}</p>
      <p class="note">The flows of the moment, held; what comes back by the pond is not in the curve. Spread t90 over t10: ${formatNumber(test.morrill, 1)}.</p>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { seen } = this;
    if (!seen) return nothing;
    const passage = passageAt(seen.scenario, seen.moment, seen.porosities);
    return html`<section class="said" aria-label="What is seen">${explanation(seen).map((says) => html`<p>${says}</p>`)}</section>
      ${this.#figures(passage, seen)}
      ${this.#marksWords(passage)}
      ${seen.scenario.filter ? this.#dyeView(seen) : nothing}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-filter': FilterPanel;
  }
}
