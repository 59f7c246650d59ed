import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyValues,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
  unsafeCSS,
} from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Moment } from '../state/moment.ts';
import type { closeUpWords as CloseUpWords } from './close-up-words.ts';
import { type Flowing, flowingAt, flowScaleOf, layersOf } from './drawing.ts';
import { clipElement, layerElement } from './elements.ts';
import { Hatching } from './hatching.ts';
import { adoptLooks, type Inside } from './inside.ts';
import type { SceneWords } from './labels/index.ts';
import { type Known, wordsAt, wordsPlaced } from './lettering.ts';
import { type Mark, words } from './marks.ts';
import { type PartArea, saysOf } from './parts.ts';
import { scaleWords } from './rulers.ts';
import type { Running } from './running.ts';
import { settingsAt } from './settings.ts';
import { type Sheet, sheetOf, type View } from './sheet.ts';
import { motionCss, sectionCss } from './styles.ts';
import { svgText } from './svg-text.ts';

/** After a hand has rested so long words find new seats, ms. */
const REST = 160;

/**
 * The whole water course as one cut. Give it a checked scenario, the answer and the balance if there are any, the moment
 * to show and the width in px; it fires `part-chosen` with the place in the file of the part that was pressed.
 */
@customElement('tb-section')
export class SectionDrawing extends LitElement {
  static override styles = [
    unsafeCSS(sectionCss + motionCss),
    css`
      :host { display: block; overflow-x: auto; overscroll-behavior-x: contain; }
      svg { display: block; }
      /* Thousands of dots are painted once, not with each frame of the water over them. */
      .layers > g:first-child { will-change: transform; }
      .part { fill: transparent; stroke: none; outline: none; pointer-events: all; cursor: pointer; }
      .part.line { fill: none; stroke: transparent; stroke-width: 14; pointer-events: stroke; }
      .part:focus-visible { stroke: var(--ink, #211f1b); stroke-width: 2; stroke-dasharray: 2 2; }
      .part.chosen { stroke: var(--ink, #211f1b); stroke-width: 1; }
      .caption { position: sticky; left: 0; margin: 0 16px; color: var(--ink2, #575146); font-size: 12px; line-height: 16px; font-style: italic; }
      svg.alive .dart, svg.alive .dart-pale { display: none; }
      @media (pointer: coarse) { .part.line { stroke-width: 30; } }
    `,
  ];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) answer: RunAnswer | undefined;
  @property({ attribute: false }) balance: BalanceAnswer | null | undefined;
  @property({ attribute: false }) moment: Moment | undefined;
  /** px the drawing may take across. */
  @property({ type: Number }) width = 984;
  /** 'filter': the filter close to, where the site has one. */
  @property() view: View = 'whole';
  /** What runs in a close-up. */
  @property({ attribute: false }) inside: Inside | undefined;
  /** Place of the part whose inputs are open. */
  @property() chosen = '';
  /** Place of the part a narrow strip opens on. */
  @property() about = 'pond';
  /** Whether time is let run: dashes run with the water. */
  @property({ type: Boolean, reflect: true }) moving = false;
  /** Places of parts the question is about: they get their words first. */
  @property({ attribute: false }) asked: readonly string[] | undefined;

  readonly #hatching = new Hatching(this);
  #sheet: Sheet | undefined;
  #flowScale = 620;
  #layers: SVGTemplateResult[] = [];
  #closeUpWords: typeof CloseUpWords | undefined;
  #placed: SceneWords | undefined;
  #settle: ReturnType<typeof setTimeout> | undefined;
  #opened: string | undefined;

  override willUpdate(changed: PropertyValues<this>): void {
    if (!this.scenario) return;
    const look = this.#sheet?.scale.hatched !== this.#hatching.hatched;
    if (look || changed.has('scenario') || changed.has('width') || changed.has('view')) this.#lay(this.scenario);
    if (!this.#sheet) return;
    if (this.#sheet.scale.closeUp && !this.#closeUpWords) void this.#loadCloseUp();
    this.#flowScale = flowScaleOf(this.#sheet.scene, this.#sheet.scale, this.answer, this.balance);
    const anew = changed.has('scenario') || changed.has('answer') || changed.has('balance') || changed.has('asked');
    if (!this.#placed || changed.has('width') || changed.has('view')) this.#letter();
    else if (anew) this.#letterSoon();
  }

  /** Words of the close-up come with the first one that is looked at. */
  async #loadCloseUp(): Promise<void> {
    const { closeUpWords } = await import('./close-up-words.ts');
    this.#closeUpWords = closeUpWords;
    this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#settle);
    this.#settle = undefined;
  }

  #lay(scenario: Scenario): void {
    const before = this.#sheet;
    this.#sheet = sheetOf(scenario, this.width, before, this.view, this.#hatching.hatched);
    const { ground } = this.#sheet;
    if (ground === before?.ground) return;
    const { behind, sunk, before: front, rulers } = ground;
    this.#layers = [behind, sunk, front, rulers].map(layerElement);
  }

  #known(): Known | undefined {
    if (!this.#sheet || !this.answer) return undefined;
    const { scene, scale } = this.#sheet;
    const balance = this.balance ?? undefined;
    return { scene, scale, answer: this.answer, balance, ...(this.asked ? { asked: this.asked } : {}) };
  }

  /** Seats words anew. */
  #letter(): void {
    const known = this.#known();
    this.#placed = known && this.moment && !known.scale.closeUp ? wordsPlaced(known, this.moment) : undefined;
  }

  /** Words keep their seats while a hand is moving and find new ones when it rests. */
  #letterSoon(): void {
    clearTimeout(this.#settle);
    this.#settle = setTimeout(() => {
      this.#settle = undefined;
      this.#letter();
      this.requestUpdate();
    }, REST);
  }

  #words(moment: Moment): Mark[] {
    const sheet = this.#sheet;
    if (sheet?.scale.closeUp && this.scenario) {
      const settings = settingsAt(this.scenario, this.answer?.events ?? [], moment.t);
      return this.#closeUpWords?.(sheet.scene, sheet.scale, moment, settings) ?? [];
    }
    const known = this.#known();
    return known && this.#placed ? wordsAt(known, this.#placed, moment) : [];
  }

  /** A narrow strip opens on the part the question is about. */
  override updated(): void {
    const sheet = this.#sheet;
    const key = `${this.scenario?.title} ${this.width} ${this.about} ${this.view}`;
    if (!sheet || key === this.#opened) return;
    this.#opened = key;
    const part = sheet.parts.find(({ place }) => place === this.about);
    if (part && sheet.scale.width > this.width) this.scrollLeft = part.anchor[0] - this.width / 2;
  }

  #flowing(sheet: Sheet, moment: Moment): Flowing {
    return flowingAt(sheet.scene, sheet.scale, moment, this.answer, this.#flowScale);
  }

  /** The drawing as it stands, as the text of an SVG file. */
  svgText(): string {
    const sheet = this.#sheet;
    if (!sheet || !this.moment || !this.scenario) return '';
    const { ground, scale, scene, parts } = sheet;
    const { title } = this.scenario;
    const flowing = this.#flowing(sheet, this.moment);
    const marks = [...layersOf(ground, flowing).flat(), ...this.#words(this.moment)];
    if (scale.strip) marks.push(words(scale.left + 200, scale.bottom + 29, scaleWords(scale), 'note'));
    const look = getComputedStyle(this);
    const token = (name: string): string => look.getPropertyValue(name).trim();
    const running = this.#running(this.moment, this.scenario);
    const description = `${parts.map((part) => saysOf(part, scene, running)).join('; ')}. ${scaleWords(scale)}.`;
    return svgText(scale, { title, description }, [...ground.clips, ...flowing.clips], marks, token);
  }

  #running({ levels, flows, t }: Moment, scenario: Scenario): Running {
    const settings = settingsAt(scenario, this.answer?.events ?? [], t);
    return { levels, flows, settings, flowScale: this.#flowScale };
  }

  #choose(place: string): void {
    this.dispatchEvent(new CustomEvent('part-chosen', { detail: place, bubbles: true, composed: true }));
  }

  #pressed(event: MouseEvent, parts: readonly PartArea[]): void {
    const root = this.renderRoot as ShadowRoot;
    const hit = root.elementsFromPoint(event.clientX, event.clientY).map((e) => e.getAttribute('data-place'));
    const under = parts.filter(({ place }) => hit.includes(place)).sort((p, q) => p.size - q.size);
    if (under[0]) this.#choose(under[0].place);
  }

  /** What a pointer rests on says all it says to a screen reader, long names whole. */
  readonly #tell = ({ type, target }: PointerEvent): void => {
    this.title = (type === 'pointerover' && (target as Element).getAttribute('aria-label')) || '';
  };

  #part(part: PartArea, says: string): SVGTemplateResult {
    const press = (event: KeyboardEvent): void => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      this.#choose(part.place);
    };
    return svg`<path class="part ${part.line ? 'line' : ''} ${part.place === this.chosen ? 'chosen' : ''}" d=${part.d}
      role="button" tabindex="0" aria-label=${says} data-place=${part.place} @keydown=${press}></path>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { moment, scenario } = this;
    const sheet = this.#sheet;
    if (!sheet || !moment || !scenario) return nothing;
    const { ground, scale, scene, parts } = sheet;
    const flowing = this.#flowing(sheet, moment);
    const [behind, sunk, before, rulers] = this.#layers;
    const running = this.#running(moment, scenario);
    const inside = scale.closeUp ? this.inside : undefined;
    if (inside) adoptLooks(this.renderRoot as ShadowRoot, inside);
    // Whole px at screens of one and a half or two and a quarter dots a px, too: no half row at the edge.
    const [width, height] = [Math.ceil(scale.width), 4 * Math.ceil(scale.height / 4)];
    return html`<svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" class="${scale.hatched ? 'hatched' : ''} ${inside ? 'alive' : ''}" role="group"
      aria-label="${scenario.title}: the water course in section">
      <defs>${[...ground.clips, ...flowing.clips].map(clipElement)}</defs>
      <g class="layers" aria-hidden="true">
        ${behind}${layerElement(flowing.water)}${sunk}${layerElement(flowing.bed)}${layerElement(flowing.veil)}${before}${layerElement(flowing.over)}${inside?.layer(scene, scale, moment) ?? nothing}${rulers}${layerElement(this.#words(moment))}
      </g>
      <g @click=${(event: MouseEvent) => this.#pressed(event, parts)} @pointerover=${this.#tell} @pointerleave=${this.#tell}>${repeat(
        parts,
        ({ place }) => place,
        (part) => this.#part(part, saysOf(part, scene, running)),
      )}</g>
    </svg>${scale.strip ? html`<p class="caption">${scaleWords(scale)}</p>` : nothing}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-section': SectionDrawing;
  }
}
