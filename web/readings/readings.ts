import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Display, FileEdits, Given, ReadBackGiven } from '../engine/protocol.ts';
import { Asking, type Giving } from '../fill/ask.ts';
import { Blanks, row, taken } from '../fill/blanks.ts';
import { USUAL_BUCKET } from '../fill/edits.ts';
import { blankStyles } from '../fill/styles.ts';
import { shownFigure, typedFigure } from '../fill/typed-figure.ts';
import { shared } from '../views/styles.ts';
import { resultView } from './result-view.ts';
import { type ReadingRow, readingRows, readingsOf, type Typed, usualError } from './rows.ts';
import { readingStyles } from './styles.ts';
import { PUT_IN } from './words.ts';

/** What a ruler, a watch and a bucket show, typed in, and what follows: the real flow, pump, crests and valves. */
@customElement('tb-readings')
export class Readings extends LitElement {
  static override styles = [shared, blankStyles, readingStyles];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) balance: BalanceAnswer | null = null;
  @property({ attribute: false }) text = '';
  @property({ attribute: false }) display: Display | undefined;
  @property({ attribute: false }) engine: Giving | undefined;
  @state() private typed: ReadonlyMap<string, Typed> = new Map();
  @state() private given: ReadBackGiven | undefined;
  @state() private failed = '';
  /** They stand in the site already. */
  @state() private done = false;

  readonly #blanks = new Blanks(this);
  readonly #asking = new Asking(this);
  /** Rows of the readings asked for last. */
  #of: readonly string[] = [];
  /** Values read from this very text are in it already, and are not fitted once more. */
  #put = false;

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('text') && this.#put) this.#put = false;
    else if (changed.has('text') || changed.has('display') || changed.has('typed')) this.#ask();
  }

  get #shown(): Display {
    return this.display ?? this.scenario?.display ?? 'metric';
  }

  #rows(): ReadingRow[] {
    return this.scenario ? readingRows(this.scenario, this.balance) : [];
  }

  #ask(): void {
    const { engine, text, display } = this;
    const { readings, of } = readingsOf(this.#rows(), this.typed, USUAL_BUCKET[this.#shown]);
    this.#of = of;
    this.done = false;
    if (!engine || readings.length === 0) {
      this.given = undefined;
      return;
    }
    void this.#asking.ask(engine, [{ want: 'read back', text, display, readings }], (given) => this.#take(given));
  }

  #take(given: Given): void {
    this.failed = given.kind === 'fault' ? given.message : '';
    if (given.kind === 'read back') this.given = given;
  }

  #type(what: string, key: keyof Typed, value: number | undefined): void {
    const own = { ...this.typed.get(what), [key]: value };
    this.typed = new Map(this.typed).set(what, own);
  }

  #blank(each: ReadingRow, key: keyof Typed, label: string): TemplateResult {
    const display = this.#shown;
    const dimension = key === 'volume' ? 'volume' : each.kind === 'bucket' ? 'time' : 'length';
    const usual = key === 'error' ? usualError(each) : key === 'volume' ? USUAL_BUCKET[display] : undefined;
    const value = this.typed.get(each.what)?.[key] ?? usual;
    return this.#blanks.field({
      key: `${each.what} ${key}`,
      label: `${each.words}: ${label}`,
      stands: value === undefined ? '' : shownFigure(value, dimension, display),
      wide: key === 'error' ? 5 : 7,
      take: (text) =>
        taken(
          typedFigure(text, dimension, display),
          (to) => this.#type(each.what, key, to),
          (to) => (to > 0 ? undefined : 'A reading of nothing tells nothing: leave it out.'),
        ),
    });
  }

  #row(each: ReadingRow): TemplateResult {
    const keys = ['value', 'volume', 'error'].map((key) => `${each.what} ${key}`);
    const problem = this.given?.result.ok === false ? this.given.result.problems : [];
    const wrong = problem.filter(({ reading }) => this.#of[reading] === each.what);
    const display = this.#shown;
    const figures =
      each.kind === 'bucket'
        ? html`${this.#blank(each, 'volume', 'bucket')} in ${this.#blank(each, 'value', 'seconds')} ± ${this.#blank(each, 'error', 'may be off by')}`
        : html`${this.#blank(each, 'value', 'reading')} ± ${this.#blank(each, 'error', 'may be off by')}`;
    return row(
      each.words,
      figures,
      html`${this.#blanks.says(...keys)}
        ${wrong.map(({ says }) => html`<p class="wrong" role="alert">${says}</p>`)}
        ${each.drawn === undefined ? nothing : html`<p class="about">as drawn ${shownFigure(each.drawn, 'length', display)}</p>`}`,
    );
  }

  #putIn(edits: FileEdits): void {
    this.#put = true;
    this.done = true;
    const detail = { edits, label: 'what the ruler showed' };
    this.dispatchEvent(new CustomEvent('site-edited', { detail, bubbles: true, composed: true }));
  }

  #result(): TemplateResult | typeof nothing {
    const result = this.given?.result;
    if (this.failed) return html`<p class="wrong" role="alert">${this.failed}</p>`;
    if (result === undefined) return this.#asking.busy ? html`<p class="note">Computing …</p>` : nothing;
    if (!result.ok)
      return html`${result.problems.filter(({ reading }) => reading < 0).map(({ says }) => html`<p class="wrong" role="alert">${says}</p>`)}`;
    return html`<div class=${this.#asking.busy ? 'pending' : ''}>${resultView(result, this.#shown, () => this.#putIn(result.edits))}</div>
      <p class="note" role="status">${this.done ? PUT_IN : ''}</p>`;
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.scenario) return nothing;
    return html`<p class="note">With the pump running and the water at rest: hold the ruler on the lowest point of the crest, a hand’s breadth behind it.</p>
      ${this.#rows().map((each) => this.#row(each))}
      ${this.#result()}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-readings': Readings;
  }
}
