import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Display } from '../../sim/quantity/index.ts';
import type { Problem, Scenario } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import type { Answered, Subject } from '../engine/protocol.ts';
import { checkOf } from '../state/headline.ts';
import { shared } from '../views/styles.ts';
import { type Assumed, assumedList } from './assumed.ts';
import { boxEdit, curveEdit, type Edit, pointEdit, pressedEdit, steppedEdit, typedEdit } from './edits.ts';
import { mineStyles } from './mine-styles.ts';
import { newSketch } from './new-sketch.ts';
import { type RowDeeds, rowView } from './row-view.ts';
import { ROWS, type Row, rowAt, rowIn } from './rows.ts';
import { figureText, type Sketching } from './standing.ts';
import { asValue, isSameText } from './units.ts';
import { capital, elsewhere } from './wrong.ts';

/** So many of what is assumed stand in sight, the others behind a press. */
const IN_SIGHT = 6;

/**
 * A site from a tape, a bucket and the pump's box: its numbers in one column, what is assumed in lighter ink and listed
 * below. It changes nothing itself: `sketch-typed` and `sketch-cleared` tell what to put where.
 */
@customElement('tb-mine')
export class Mine extends LitElement {
  static override styles = [shared, ...mineStyles];

  /** The file as it is being edited. */
  @property({ attribute: false }) file: unknown;
  /** The site as it last answered. */
  @property({ attribute: false }) scenario: Scenario | undefined;
  /** The last answer in full. */
  @property({ attribute: false }) full: Answered | undefined;
  /** What is wrong with the file as it stands. */
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property() display: Display = 'metric';
  @property() about: Subject = 'stop';
  /** Places typed here: their texts stay letter by letter. */
  @state() private typed: ReadonlySet<string> = new Set();
  @state() private others = false;

  get #site(): Sketching {
    const { file, scenario, display, typed } = this;
    return { file, scenario, display, typed };
  }

  #fire(name: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  #edit(edit: Edit | undefined): void {
    if (edit) this.#fire('value' in edit ? 'sketch-typed' : 'sketch-cleared', edit);
  }

  #mark(place: string, typed: boolean): void {
    const places = new Set(this.typed);
    if (typed) places.add(place);
    else places.delete(place);
    this.typed = places;
  }

  readonly #deeds: RowDeeds = {
    type: (row, figure, field) => {
      const site = this.#site;
      const place = `${row.place}${figure.at}`;
      const shown = figureText(site, row, figure);
      const text = field.value;
      const raw = valueAt(this.file, place);
      const isSame =
        isSameText(text, shown) || (raw !== undefined && asValue(text, figure.units[this.display]) === raw);
      const untouched = text.trim() === '' && valueAt(this.file, row.place) === undefined;
      if (isSame && raw !== undefined) this.#mark(place, true);
      if (isSame || untouched) field.value = shown;
      else {
        this.#mark(place, text.trim() !== '');
        this.#edit(typedEdit(site, row, figure, text));
      }
    },
    step: (row, figure, by) => {
      this.#mark(`${row.place}${figure.at}`, false);
      this.#edit(steppedEdit(this.#site, row, figure, by));
    },
    press: (row, word, says) => {
      if (valueAt(this.file, row.place) !== word) this.#edit(pressedEdit(row, word, says));
    },
    clear: (row) => {
      if (valueAt(this.file, row.place) !== undefined)
        this.#edit({ place: row.place, label: `${row.name} taken back` });
    },
    next: (event) => this.#next(event),
    pump: (row, deed) => {
      const site = this.#site;
      if (deed === 'curve') this.#edit(curveEdit(site, row));
      else if (deed === 'box') this.#edit(boxEdit(site, row));
      else this.#edit(pointEdit(site, row, deed === 'more'));
    },
  };

  /** Enter takes a text and goes on to the next field; on a word that is pressed already it goes on too. */
  #next(event: KeyboardEvent): void {
    const here = event.target as HTMLElement;
    if (event.key !== 'Enter' || here.getAttribute('aria-pressed') === 'false') return;
    const fields = [
      ...this.renderRoot.querySelectorAll<HTMLElement>('.row input, .row .choices [aria-pressed="true"]'),
    ];
    const next = fields.filter((each) => each.offsetParent !== null)[fields.indexOf(here) + 1];
    event.preventDefault();
    if (next) next.focus();
    else here.blur();
  }

  async #goTo(place: string): Promise<void> {
    const row = rowAt(place);
    if (!row) {
      this.#fire('part-chosen', place);
      return;
    }
    this.others ||= !row.number.first;
    await this.updateComplete;
    const there = this.renderRoot.querySelector(`[data-place="${place}"]`);
    there?.querySelector<HTMLElement>('input, [aria-pressed="true"]')?.focus();
    there?.scrollIntoView({ block: 'center' });
  }

  #rows(rows: readonly Row[], most: string | undefined): TemplateResult {
    const site = this.#site;
    return html`<div class="rows">${repeat(
      rows,
      ({ place }) => place,
      (row) => rowView(rowIn(row, this.file), { site, problems: this.problems, most: row.place === most }, this.#deeds),
    )}</div>`;
  }

  #parts(most: string | undefined): TemplateResult[] {
    const first = ROWS.filter(({ number }) => number.first);
    const parts = [...new Set(first.map(({ part }) => part))];
    return parts.map(
      (part) =>
        html`<h3>${part}</h3>${this.#rows(
          first.filter((row) => row.part === part),
          most,
        )}`,
    );
  }

  #item({ place, name, value, band, origin, moves }: Assumed): TemplateResult {
    const [first, ...more] = moves;
    const others = more.length > 0 ? `, and of ${more.length} more,` : '';
    const most = first ? `; the answer of ‘${first}’${others} rests on it most` : '';
    return html`<li><button @click=${() => void this.#goTo(place)}>${name}</button>
      <p>${value}${band ? `, ${band}` : ''} <i>${origin}${most}</i></p></li>`;
  }

  #assumed(list: readonly Assumed[]): TemplateResult | typeof nothing {
    if (list.length === 0) return nothing;
    const more = list.slice(IN_SIGHT);
    return html`<section aria-label="What is assumed">
      <h3>What is assumed, what moves the answer most first</h3>
      <ol class="list">${list.slice(0, IN_SIGHT).map((each) => this.#item(each))}</ol>
      ${
        more.length > 0
          ? html`<details><summary>${more.length} more</summary><ol class="list">${more.map((each) => this.#item(each))}</ol></details>`
          : nothing
      }
    </section>`;
  }

  #elsewhere(): TemplateResult[] {
    return elsewhere(ROWS, this.problems).map(
      ({ place, found, wanted }) =>
        html`<p class="wrong" role="alert"><i>${place}</i>: ${capital(found)}; it takes ${wanted}.</p>`,
    );
  }

  #begin(): TemplateResult {
    return html`<p>This site has no sketch. One of your own begins with a pond and a pump for an example; the site you see stays as it is.</p>
      <button @click=${() => this.#fire('mine-begun', newSketch(this.display))}>begin a pond of my own</button>`;
  }

  #sketch(): TemplateResult {
    const asked = checkOf[this.about];
    const checks = [...(this.full?.answer.checks ?? [])].sort(
      (a, b) => Number(b.name === asked) - Number(a.name === asked),
    );
    const list = assumedList(this.#site, checks);
    const [top] = list;
    const most = top && top.moves.length > 0 ? top : undefined;
    return html`<p class="note">What a tape, a bucket and the pump’s box tell. What you leave out is assumed, in lighter ink.</p>
      ${most ? html`<button class="next" @click=${() => void this.#goTo(most.place)}>Measure next: ${most.name}</button>` : nothing}
      ${this.#elsewhere()}
      ${this.#parts(most?.place)}
      <details class="others" ?open=${this.others} @toggle=${(event: Event) => {
        this.others = (event.target as HTMLDetailsElement).open;
      }}>
        <summary>what few people measure</summary>
        ${this.#rows(
          ROWS.filter(({ number }) => !number.first),
          most?.place,
        )}
      </details>
      ${this.#assumed(list)}`;
  }

  protected override firstUpdated(_: PropertyValues): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  override render(): TemplateResult {
    return html`<section aria-label="Make it mine">
      <div class="title"><h2 tabindex="-1">Make it mine</h2><button @click=${() => this.#fire('mine-closed')}>close</button></div>
      ${valueAt(this.file, 'sketch') === undefined ? this.#begin() : this.#sketch()}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-mine': Mine;
  }
}
