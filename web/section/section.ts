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
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Moment } from '../state/moment.ts';
import { type Flowing, flowingAt, flowScaleOf, type Ground, groundOf, layersOf } from './drawing.ts';
import { sceneOf } from './layout.ts';
import type { Clip, Mark } from './marks.ts';
import { type PartArea, partsOf, saysOf } from './parts.ts';
import { type Scale, scaleOf } from './scale.ts';
import type { Scene } from './scene.ts';
import { settingsAt } from './settings.ts';
import { sectionCss } from './styles.ts';
import { svgText } from './svg-text.ts';

interface Sheet {
  readonly scene: Scene;
  readonly scale: Scale;
  readonly ground: Ground;
  readonly parts: readonly PartArea[];
}

/**
 * The whole water course as one cut. Give it a checked scenario, the answer and the balance if there are any, the moment
 * to show and the width in px; it fires `part-chosen` with the place in the file of the part that was pressed.
 */
@customElement('tb-section')
export class SectionDrawing extends LitElement {
  static override styles = [
    unsafeCSS(sectionCss),
    css`
      :host { display: block; overflow-x: auto; overscroll-behavior-x: contain; }
      svg { display: block; }
      .part { fill: transparent; stroke: none; cursor: pointer; outline: none; pointer-events: all; }
      .part.line { fill: none; stroke: transparent; stroke-width: 14; pointer-events: stroke; }
      .part:focus-visible { stroke: var(--ink, #211f1b); stroke-width: 1.4; stroke-dasharray: 2 2; }
      .part.line:focus-visible { stroke: var(--ink, #211f1b); stroke-width: 2; }
      .part.chosen { stroke: var(--ink, #211f1b); stroke-width: 1; }
      @media (hover: hover) { .part:hover:not(.line) { stroke: var(--ink2, #575146); stroke-width: 0.7; } }
    `,
  ];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) answer: RunAnswer | undefined;
  @property({ attribute: false }) balance: BalanceAnswer | null | undefined;
  @property({ attribute: false }) moment: Moment | undefined;
  /** px the drawing may take across. */
  @property({ type: Number }) width = 984;
  /** Place of the part whose inputs are open. */
  @property() chosen = '';
  /** Place of the part a narrow strip opens on. */
  @property() about = 'pond';
  @state() private sheet: Sheet | undefined;

  #flowScale = 620;
  #layers: SVGTemplateResult[] = [];
  #opened: string | undefined;

  override willUpdate(changed: PropertyValues<this>): void {
    if (!this.scenario) return;
    if (changed.has('scenario') || changed.has('width') || !this.sheet) {
      const scene = sceneOf(this.scenario);
      const scale = scaleOf(scene, this.width);
      this.sheet = { scene, scale, ground: groundOf(scene, scale), parts: partsOf(scene, scale) };
      const { behind, sunk, before, rulers } = this.sheet.ground;
      this.#layers = [behind, sunk, before, rulers].map((marks) => svg`<g>${marks.map(markElement)}</g>`);
    }
    this.#flowScale = flowScaleOf(this.sheet.scene, this.answer, this.balance);
  }

  /** A narrow strip opens on the part the question is about. */
  override updated(): void {
    const sheet = this.sheet;
    const key = `${this.scenario?.title} ${this.width} ${this.about}`;
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
    if (!this.sheet || !this.moment || !this.scenario) return '';
    const { ground, scale } = this.sheet;
    const flowing = this.#flowing(this.sheet, this.moment);
    const marks = layersOf(ground, flowing).flat();
    return svgText(scale, this.scenario.title, [...ground.clips, ...flowing.clips], marks);
  }

  #choose(place: string): void {
    this.dispatchEvent(new CustomEvent('part-chosen', { detail: place, bubbles: true, composed: true }));
  }

  #part(part: PartArea, says: string): SVGTemplateResult {
    const press = (event: KeyboardEvent): void => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      this.#choose(part.place);
    };
    return svg`<path class="part ${part.line ? 'line' : ''} ${part.place === this.chosen ? 'chosen' : ''}" d=${part.d}
      role="button" tabindex="0" aria-label=${says} data-place=${part.place}
      @click=${() => this.#choose(part.place)} @keydown=${press}><title>${says}</title></path>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { sheet, moment, scenario } = this;
    if (!sheet || !moment || !scenario) return nothing;
    const { ground, scale, scene, parts } = sheet;
    const flowing = this.#flowing(sheet, moment);
    const [behind, sunk, before, rulers] = this.#layers;
    const settings = settingsAt(scenario, this.answer?.events ?? [], moment.t);
    const running = { levels: moment.levels, flows: moment.flows, settings, flowScale: this.#flowScale };
    const [width, height] = [Math.ceil(scale.width), Math.ceil(scale.height)];
    // Lines lie over areas, and what is small over what holds it.
    const pressable = [...parts].sort((p, q) => Number(p.line) - Number(q.line));
    return html`<svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" role="group"
      aria-label="${scenario.title}: the water course in section">
      <defs>${[...ground.clips, ...flowing.clips].map(clipElement)}</defs>
      <g aria-hidden="true">
        ${behind}<g>${flowing.water.map(markElement)}</g>${sunk}<g>${flowing.veil.map(markElement)}</g>${before}<g>${flowing.over.map(markElement)}</g>${rulers}
      </g>
      <g>${repeat(
        pressable,
        ({ place }) => place,
        (part) => this.#part(part, saysOf(part, scene, running)),
      )}</g>
    </svg>`;
  }
}

const clipElement = ({ id, d }: Clip): SVGTemplateResult => svg`<clipPath id=${id}><path d=${d}></path></clipPath>`;

function markElement(mark: Mark): SVGTemplateResult {
  if (mark.kind === 'text') {
    return svg`<text class=${mark.look} x=${mark.x} y=${mark.y} text-anchor=${mark.at}>${mark.text}</text>`;
  }
  return svg`<path class=${mark.look} d=${mark.d} clip-path=${mark.clip ? `url(#${mark.clip})` : nothing}
    opacity=${mark.opacity ?? nothing} stroke-width=${mark.stroke ?? nothing}></path>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-section': SectionDrawing;
  }
}
