import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { MapAnswer, OperatingMap, Plane } from '../../sim/map/answer.ts';
import type { Setting } from '../../sim/map/seeker.ts';
import { NOT_MAPPED } from '../../sim/map/words.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Display, Given } from '../engine/protocol.ts';
import { Asking, type Giving } from '../fill/ask.ts';
import { kept } from '../state/one-line.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { shared } from '../views/styles.ts';
import { Width } from '../views/width.ts';
import { drawMap } from './drawing.ts';
import { type Family, familiesOf, firstShown } from './families.ts';
import { flowTicks } from './flow-scale.ts';
import { Hand, type SettingSet } from './hand.ts';
import { planeView } from './plane-view.ts';
import { rulersOf } from './ruler.ts';
import { sheetFor } from './sheet.ts';
import { mapStyles } from './styles.ts';
import { type Told, tableView } from './table-view.ts';
import { underHand } from './under-hand.ts';

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
  @state() private told: Told = 'checks';

  readonly #asking = new Asking(this);
  readonly #width = new Width(this);
  readonly #hand = new Hand(this, (detail: SettingSet) =>
    this.dispatchEvent(new CustomEvent('setting-set', { detail, bubbles: true, composed: true })),
  );

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('plane')) this.#hand.leave();
    if (changed.has('text')) this.#hand.told();
    if (changed.has('text') || changed.has('display') || changed.has('plane')) this.#ask();
  }

  /** The hand's own place holds until the site's balance tells where it stands. */
  protected override updated(): void {
    if (this.map?.ok && !this.#asking.busy) this.#hand.rests(this.map, this.#site);
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

  get #site(): Setting {
    const { plumbing, pump } = this.scenario ?? {};
    const { bottomFeed, topFeed } = plumbing ?? {};
    return { bottom: bottomFeed?.valve ?? 0, top: topFeed?.valve ?? 0, speed: pump?.speed ?? 1 };
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
    const at = this.#hand.place(map, this.#site);
    const drawing = drawMap(
      map,
      families.filter(({ figure }) => shown.has(figure)),
      sheet,
      at,
    );
    const flow = map.plane === 'flow' && families.find(({ figure }) => figure === 'flow');
    const upper = flow ? flowTicks(map, at[1], flow, sheet.across) : [];
    const box = (): DOMRect | undefined => this.renderRoot.querySelector('svg')?.getBoundingClientRect();
    const grips = this.#hand.grips(map, sheet, this.#site, box);
    return html`<div class="presses" role="group" aria-label="Lines drawn"><p class="note">lines of</p>${families.map(
      ({ figure, name }) =>
        html`<button aria-pressed=${shown.has(figure)} @click=${() => this.#toggle(figure, shown)}>${name}</button>`,
    )}</div>
      <div class=${this.#width.px >= SIDE_BY_SIDE ? 'room wide' : 'room'}>
        ${planeView(drawing, sheet, rulersOf(map), at, upper, grips)}
        <div>${this.#words(map)}</div>
      </div>
      ${tableView(map, families, this.told, (told) => {
        this.told = told;
      })}`;
  }

  #words(map: OperatingMap): TemplateResult {
    const { moved } = this.#hand;
    const pending = this.#asking.busy || moved !== undefined;
    const [present, ...others] = this.sentences;
    const first = (moved && underHand(map, moved, this.display ?? 'metric')) ?? present ?? '';
    return html`<div class=${pending ? 'pending' : ''} role="status">${[first, ...others].map((each) => html`<p>${kept(trueFractions(each))}</p>`)}</div>
      ${map.says.map((each) => html`<p class="note">${kept(each)}</p>`)}
      <p class="note">${NOT_MAPPED}</p>`;
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
