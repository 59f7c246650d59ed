import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { MapAnswer, OperatingMap, Plane } from '../../sim/map/answer.ts';
import { NOT_MAPPED } from '../../sim/map/words.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Display, Given } from '../engine/protocol.ts';
import { Asking, type Giving } from '../fill/ask.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { shared } from '../views/styles.ts';
import { Width } from '../views/width.ts';
import { drawMap } from './drawing.ts';
import { type Family, familiesOf, firstShown } from './families.ts';
import { keyed, type Openings, toDegree, type Valve } from './hand.ts';
import { type Grips, planeView } from './plane-view.ts';
import { placeAt, type Sheet, sheetFor } from './sheet.ts';
import { mapStyles } from './styles.ts';
import { tableOf } from './table.ts';

/** Both valves were set by a hand on the map. */
export interface ValvesSet {
  readonly openings: Openings;
  /** Settings of one gesture are undone together. */
  readonly gesture: unknown;
}

const PLANES: readonly (readonly [Plane, string])[] = [
  ['valves', 'both valves'],
  ['flow', 'pump speed and share'],
];

/** From here up the sentences stand beside the plane, px. */
const SIDE_BY_SIDE = 880;

/** The running balance at all settings of the site, as lines on a plane, with the present point under the hand. */
@customElement('tb-map')
export class MapView extends LitElement {
  static override styles = [shared, mapStyles];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) text = '';
  @property({ attribute: false }) display: Display | undefined;
  @property({ attribute: false }) engine: Giving | undefined;
  @state() private plane: Plane = 'valves';
  @state() private map: MapAnswer | undefined;
  @state() private sentences: readonly string[] = [];
  @state() private failed = '';
  @state() private chosen: ReadonlySet<Family['figure']> | undefined;
  @state() private told: Family['figure'] | 'checks' = 'checks';
  /** Where the hand has the valves, before the site has followed. */
  @state() private moved: Openings | undefined;

  readonly #asking = new Asking(this);
  readonly #width = new Width(this);
  #gesture: object | undefined;
  /** The next text of the site is this hand's doing. */
  #own = false;
  #on: Valve | 'plane' = 'plane';

  protected override willUpdate(changed: PropertyValues): void {
    this.#follow(changed);
    if (changed.has('text') || changed.has('display') || changed.has('plane')) this.#ask();
  }

  /** The hand's own place holds until the site stands there too, or something else was done to it. */
  #follow(changed: PropertyValues): void {
    const { bottomFeed, topFeed } = this.scenario?.plumbing ?? {};
    const there = bottomFeed?.valve === this.moved?.bottom && topFeed?.valve === this.moved?.top;
    const other = changed.has('text') && !this.#own;
    if (changed.has('text')) this.#own = false;
    if (!this.#gesture && (there || other)) this.moved = undefined;
  }

  #ask(): void {
    const { engine, text, display, plane } = this;
    if (!engine || text === '') return;
    void this.#asking.ask(engine, [{ want: 'map', text, display, plane }], (given) => this.#take(given));
  }

  #take(given: Given): void {
    this.failed = given.kind === 'fault' ? given.message : '';
    if (given.kind !== 'map') return;
    this.map = given.map;
    this.sentences = given.sentences;
  }

  get #openings(): Openings {
    const { bottomFeed, topFeed } = this.scenario?.plumbing ?? {};
    return this.moved ?? { bottom: bottomFeed?.valve ?? 0, top: topFeed?.valve ?? 0 };
  }

  #set(openings: Openings, gesture: unknown): void {
    const { bottom, top } = this.#openings;
    if (openings.bottom === bottom && openings.top === top) return;
    this.moved = openings;
    this.#own = true;
    const detail: ValvesSet = { openings, gesture };
    this.dispatchEvent(new CustomEvent('valves-set', { detail, bubbles: true, composed: true }));
  }

  #grips(sheet: Sheet): Grips {
    const set = (event: PointerEvent, gesture: unknown): void => {
      const box = this.renderRoot.querySelector('svg')?.getBoundingClientRect();
      if (!box) return;
      const [x, y] = placeAt(sheet, [event.clientX - box.left, event.clientY - box.top]).map(toDegree) as [
        number,
        number,
      ];
      const { bottom, top } = this.#openings;
      this.#set({ bottom: this.#on === 'top' ? bottom : x, top: this.#on === 'bottom' ? top : y }, gesture);
    };
    const follow = (event: PointerEvent): void => {
      if (this.#gesture) set(event, this.#gesture);
    };
    return {
      down: (event, on) => {
        if (event.button !== 0) return;
        (event.currentTarget as Element).setPointerCapture(event.pointerId);
        this.#gesture = {};
        this.#on = on;
        follow(event);
      },
      move: follow,
      tap: (event) => {
        this.#on = 'plane';
        set(event, undefined);
      },
      up: () => {
        this.#gesture = undefined;
      },
      keys: (event, valve) => {
        const openings = this.#openings;
        const opening = keyed(event.key, openings[valve]);
        if (opening === undefined) return;
        event.preventDefault();
        this.#set({ ...openings, [valve]: opening }, 'keys on the map');
      },
    };
  }

  #toggle(figure: Family['figure'], now: ReadonlySet<Family['figure']>): void {
    const next = new Set(now);
    if (!next.delete(figure)) next.add(figure);
    this.chosen = next;
  }

  #drawn(map: OperatingMap): TemplateResult {
    const families = familiesOf(map, this.display ?? 'metric');
    const shown = this.chosen ?? new Set(firstShown(map, families));
    const sheet = sheetFor(map, this.#width.px);
    const openings = this.#openings;
    const at = map.plane === 'valves' ? ([openings.bottom, openings.top] as const) : ([map.now.x, map.now.y] as const);
    const drawing = drawMap(
      map,
      families.filter(({ figure }) => shown.has(figure)),
      sheet,
      at,
    );
    const grips = map.plane === 'valves' ? this.#grips(sheet) : undefined;
    return html`<div class="presses" role="group" aria-label="Lines drawn"><p class="note">lines of</p>${families.map(
      ({ figure, name }) =>
        html`<button aria-pressed=${shown.has(figure)} @click=${() => this.#toggle(figure, shown)}>${name}</button>`,
    )}</div>
      <div class=${this.#width.px >= SIDE_BY_SIDE ? 'room wide' : 'room'}>
        ${planeView(drawing, sheet, map.plane, at, openings, grips)}
        <div>${this.#words(map)}</div>
      </div>
      ${this.#table(map, families)}`;
  }

  #words(map: OperatingMap): TemplateResult {
    const pending = this.#asking.busy || this.moved !== undefined;
    return html`<div class=${pending ? 'pending' : ''} role="status">${this.sentences.map((each) => html`<p>${trueFractions(each)}</p>`)}</div>
      ${map.says.map((each) => html`<p class="note">${each}</p>`)}
      <p class="note">${NOT_MAPPED}</p>`;
  }

  #table(map: OperatingMap, families: readonly Family[]): TemplateResult {
    const family = families.find(({ figure }) => figure === this.told);
    const { corner, columns, rows } = tableOf(map, family);
    const choose = ({ target }: Event): void => {
      this.told = (target as HTMLSelectElement).value as Family['figure'] | 'checks';
    };
    return html`<details class="fold">
      <summary>the same as a table</summary>
      <select aria-label="what the table tells" @change=${choose}>
        <option value="checks" ?selected=${!family}>the check that fails first</option>
        ${families.map(({ figure, name }) => html`<option value=${figure} ?selected=${figure === family?.figure}>${name}</option>`)}
      </select>
      <div class="rows" tabindex="0" role="group" aria-label="Table of settings"><table>
        <caption class="note">${corner}</caption>
        <thead><tr><td></td>${columns.map((each) => html`<th scope="col">${each}</th>`)}</tr></thead>
        <tbody>${rows.map(({ name, cells }) => html`<tr><th scope="row">${name}</th>${cells.map((each) => html`<td>${each}</td>`)}</tr>`)}</tbody>
      </table></div>
    </details>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { map, failed, plane } = this;
    if (failed) return html`<p role="alert">${failed}</p>`;
    if (!map) return html`<p class="note">Computing …</p>`;
    if (!map.ok) return html`<p>${map.says}</p>`;
    return html`<div class="presses" role="group" aria-label="What is mapped">${PLANES.map(
      ([each, name]) =>
        html`<button aria-pressed=${plane === each} @click=${() => {
          this.plane = each;
        }}>${name}</button>`,
    )}</div>
      ${this.#width.px > 0 ? this.#drawn(map) : nothing}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-map': MapView;
  }
}
