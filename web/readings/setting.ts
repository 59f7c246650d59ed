import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatFlow, formatPercent } from '../../sim/quantity/index.ts';
import type { Wish } from '../../sim/readings/index.ts';
import { whatWords } from '../../sim/readings/reading.ts';
import type { ValveSetting } from '../../sim/readings/setTo.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Display, FileEdits, Given, SetToGiven } from '../engine/protocol.ts';
import { Asking, type Giving } from '../fill/ask.ts';
import { Blanks, row, taken } from '../fill/blanks.ts';
import { blankStyles } from '../fill/styles.ts';
import { shownFigure, typedFigure } from '../fill/typed-figure.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { shared } from '../views/styles.ts';
import { handleView } from './handle-view.ts';
import { rodRows, rodText } from './rods.ts';
import { readingStyles } from './styles.ts';
import { crestNames, typedShare } from './wish.ts';
import { PUT_IN } from './words.ts';

const RULER_OFF: Readonly<Record<Display, string>> = { metric: '2 mm', us: 'a sixteenth of an inch (2 mm)' };

/** What is wanted of the water, the two handles that do it, and what a ruler must show while they are turned. */
@customElement('tb-setting')
export class ValveSettingView extends LitElement {
  static override styles = [shared, blankStyles, readingStyles];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) text = '';
  @property({ attribute: false }) display: Display | undefined;
  @property({ attribute: false }) engine: Giving | undefined;
  @state() private wish: Wish = { share: 0.5 };
  /** The benchmark's elevation and what the rod reads on it, m. */
  @state() private benchmark = 0;
  @state() private reading: number | undefined;
  @state() private given: SetToGiven | undefined;
  @state() private failed = '';
  /** They stand in the site already. */
  @state() private done = false;

  readonly #blanks = new Blanks(this);
  readonly #asking = new Asking(this);

  /** The next text of the site has them in it. */
  #put = false;

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('wish') || (changed.has('text') && !this.#put)) this.done = false;
    if (changed.has('text')) this.#put = false;
    if (changed.has('text') || changed.has('display') || changed.has('wish')) this.#ask();
  }

  get #shown(): Display {
    return this.display ?? this.scenario?.display ?? 'metric';
  }

  #ask(): void {
    const { engine, text, display, wish } = this;
    if (!engine || text === '') return;
    void this.#asking.ask(engine, [{ want: 'set to', text, display, wish }], (given) => this.#take(given));
  }

  #take(given: Given): void {
    this.failed = given.kind === 'fault' ? given.message : '';
    if (given.kind === 'set to') this.given = given;
  }

  #share(): TemplateResult {
    const { share } = this.wish;
    return this.#blanks.field({
      key: 'share',
      label: 'share of the water through the bottom feed',
      stands: share === undefined ? '' : formatPercent(share),
      wide: 7,
      take: (text) =>
        taken(typedShare(text), (value) => {
          this.wish = { ...this.wish, share: value };
        }),
    });
  }

  #head(): TemplateResult {
    const display = this.#shown;
    const { head } = this.wish;
    return this.#blanks.field({
      key: 'head',
      label: 'water over the stone',
      stands: head === undefined ? '' : shownFigure(head, 'length', display),
      wide: 8,
      take: (text) =>
        taken(typedFigure(text, 'length', display), (value) => {
          this.wish = { ...this.wish, head: value };
        }),
    });
  }

  #wishes(s: Scenario): TemplateResult {
    const crests = crestNames(s);
    const over = this.wish.over ?? crests[0]?.name;
    const both = s.plumbing.bottomFeed && s.plumbing.topFeed;
    return html`${
      both
        ? row('through the filter', html`about ${this.#share()}, the rest over the top`, this.#blanks.says('share'))
        : nothing
    }
    ${row(
      'and so much water',
      html`${this.#head()} <select aria-label="stone the ruler is held on" @change=${({ target }: Event) => {
        this.wish = { ...this.wish, over: (target as HTMLSelectElement).value };
      }}>${crests.map(({ name, words }) => html`<option value=${name} ?selected=${name === over}>${words}</option>`)}</select>`,
      html`${this.#blanks.says('head')}${this.wish.head === undefined ? html`<p class="about">left open: as much as the pump gives with that share</p>` : nothing}`,
    )}`;
  }

  #putIn(edits: FileEdits): void {
    this.#put = true;
    this.done = true;
    const detail = { edits, label: 'valves set by the ruler' };
    this.dispatchEvent(new CustomEvent('site-edited', { detail, bubbles: true, composed: true }));
  }

  #result(s: Scenario): TemplateResult | typeof nothing {
    if (this.failed) return html`<p class="wrong" role="alert">${this.failed}</p>`;
    if (!this.given) return html`<p class="note">Computing …</p>`;
    const { result, edits } = this.given;
    if (!result.ok) return html`<p class="wrong" role="alert">${trueFractions(result.says)}</p>`;
    const { valves, reached, says, turns, bucket } = result;
    return html`<section aria-label="How the valves are set" class=${this.#asking.busy ? 'pending' : ''}>
      <p class=${reached ? '' : 'wrong'} role=${reached ? nothing : 'alert'}>${trueFractions(says)}</p>
      <div class="handles">
        ${valves.bottom ? handleView('bottom feed', valves.bottom) : nothing}${valves.top ? handleView('top feed', valves.top) : nothing}
      </div>
      <p>${this.#doesWords(s, result)}</p>
      <h3>By the ruler</h3>
      <p class="note">A valve’s table is good to a factor of two: the handles come near, the ruler decides.</p>
      <ol>${turns.map((turn) => html`<li>${trueFractions(turn.says)}</li>`)}</ol>
      ${bucket ? html`<p>${trueFractions(bucket.says)}</p>` : nothing}
      ${this.#bandWords(result)}
      <button class="deed" @click=${() => this.#putIn(edits)}>put these into the site</button>
      <p class="note" role="status">${this.done ? PUT_IN : ''}</p>
    </section>`;
  }

  #doesWords({ display }: Scenario, { main, share, over, heads, valves }: ValveSetting): string {
    const shared = valves.bottom && valves.top ? `, ${formatPercent(share)} of it by the bottom feed` : '';
    return `The pump then lifts ${formatFlow(main, display)}${shared}; ${whatWords(`head ${over}`)} is ${shownFigure(heads[over] ?? 0, 'length', display)}.`;
  }

  #bandWords({ shareBand }: ValveSetting): TemplateResult | typeof nothing {
    if (!shareBand) return nothing;
    const [low, high] = shareBand;
    return html`<p class="note">With a ruler that may be off by ${RULER_OFF[this.#shown]} the share can lie between ${formatPercent(low)} and ${formatPercent(high)}: the bucket tells it better.</p>`;
  }

  #rods(s: Scenario): TemplateResult {
    const display = this.#shown;
    const blank = (key: 'benchmark' | 'reading', label: string, value: number | undefined): TemplateResult =>
      this.#blanks.field({
        key,
        label,
        stands: value === undefined ? '' : rodText(value, display),
        wide: 10,
        take: (text) =>
          taken(typedFigure(text, 'length', display, display === 'us' ? undefined : 'm'), (to) => {
            if (key === 'benchmark') this.benchmark = to ?? 0;
            else this.reading = to;
          }),
      });
    const rows = rodRows(s, { benchmark: this.benchmark, reading: this.reading ?? 0 });
    const known = this.reading !== undefined;
    return html`<section aria-label="Heights by the rod">
      <h3>Heights by the rod</h3>
      ${row('benchmark lies at', blank('benchmark', 'elevation of the benchmark', this.benchmark), this.#blanks.says('benchmark'))}
      ${row('rod on it reads', blank('reading', 'rod reading on the benchmark', this.reading), this.#blanks.says('reading'))}
      <table aria-label="Rod readings">
        <thead><tr><th scope="col">point</th><th scope="col" class="figure">lies at</th><th scope="col" class="figure">rod reads</th></tr></thead>
        <tbody>${rows.map(
          ({ name, elevation, rod }) =>
            html`<tr><th scope="row">${name}</th><td class="figure">${elevation}</td><td class="figure">${known ? rod : '–'}</td></tr>`,
        )}</tbody>
      </table>
      <p class="note">A bigger reading is lower. Crests stand by their lowest point.</p>
    </section>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { scenario } = this;
    if (!scenario) return nothing;
    const s = this.display ? { ...scenario, display: this.display } : scenario;
    const { bottomFeed, topFeed } = s.plumbing;
    return html`${bottomFeed || topFeed ? html`${this.#wishes(s)} ${this.#result(s)}` : html`<p class="note">This site has no valve to set.</p>`}
      ${this.#rods(s)}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-setting': ValveSettingView;
  }
}
