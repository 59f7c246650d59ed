import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Care, CareAnswer, ClogCourse } from '../../sim/clogging/answer.ts';
import type { Display } from '../../sim/quantity/index.ts';
import type { Media, Scenario } from '../../sim/scenario/scenario.ts';
import type { FileEdits } from '../engine/protocol.ts';
import { Asking, type Giving } from '../fill/ask.ts';
import { layerElement } from '../section/elements.ts';
import { isFelt } from '../section/vessel.ts';
import { keySteps } from '../state/key-steps.ts';
import { shared } from '../views/styles.ts';
import { Width } from '../views/width.ts';
import { dyeStyles } from './styles.ts';
import {
  depositEdits,
  depositPlace,
  endOf,
  heldAt,
  nearest,
  settledIn,
  sinceOf,
  standingWords,
  stepOf,
  weeksWords,
} from './weeks-hand.ts';
import { shareAcross, TALL, weeksPlotMarks } from './weeks-plot.ts';
import { weeksTable } from './weeks-table.ts';

const WEEK = 604800;
/** What is supposed of a pond of which nothing is known: a milliliter settles out of each cubic meter. Our default. */
const DEBRIS = 1e-6;
/** What a mat then keeps, 1/m: our default. */
const CAPTURE = 5;
/** Steps of a page key. */
const LEAP = 4;

/** Something was put into the media. */
export interface MuckPut {
  readonly edits: FileEdits;
  readonly label: string;
  /** What one hand puts there is undone together; undefined: by itself. */
  readonly gesture: unknown;
}

/**
 * When the media are to be cleaned, and how split, share, contact time and pump change until then, with a hand that
 * puts what has settled by any week into the file; fires `muck-put`.
 */
@customElement('tb-weeks')
export class Weeks extends LitElement {
  static override styles = [
    shared,
    dyeStyles,
    css`
      .weeks {
        cursor: ew-resize;
        touch-action: pan-y;
        user-select: none;
        width: fit-content;
        max-width: 100%;
        margin-bottom: 8px;
      }
      @media (min-width: 1280px) {
        .drawn {
          display: grid;
          grid-template-columns: minmax(0, 620px) minmax(0, 1fr);
          column-gap: 32px;
        }
        .drawn .said {
          grid-column: 2;
        }
        .drawn .course {
          grid-area: 1 / 1;
        }
      }
      .turn {
        fill: none;
        stroke: var(--ink2);
        stroke-width: calc(0.8px * var(--line));
      }
      .hand-ring {
        fill: var(--paper);
        stroke: var(--ink);
        stroke-width: calc(1.4px * var(--line));
      }
      .hand-words {
        fill: var(--ink);
        font-size: 13px;
      }
      td,
      th:not(:first-child) {
        text-align: right;
        padding-left: 14px;
      }
      th,
      td {
        overflow-wrap: normal;
      }
      td,
      th:first-child {
        white-space: nowrap;
      }
      thead th:last-child {
        min-width: 90px;
      }
      .rows {
        max-width: 620px;
        overflow-x: auto;
      }
    `,
  ];

  @property({ attribute: false }) scenario: Scenario | undefined;
  /** The whole file as it is being edited: what has settled in it by now. */
  @property({ attribute: false }) file: unknown;
  /** The file's text as just cleaned, on which alone it depends how long a cleaning lasts. */
  @property() text = '';
  @property() display: Display = 'metric';
  @property({ attribute: false }) engine: Giving | undefined;
  @state() private care: CareAnswer | undefined;
  @state() private trouble = '';
  /** Where a hand has just put the media, until the file has it. */
  @state() private at: number | undefined;
  readonly #asking = new Asking(this);
  readonly #width = new Width(this);
  #gesture: object | undefined;

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('file')) this.at = undefined;
    if (!this.engine || !(changed.has('text') || changed.has('display'))) return;
    const { text, display } = this;
    void this.#asking.ask(this.engine, [{ want: 'care', text, display }], (given) => {
      this.trouble = given.kind === 'fault' ? given.message : '';
      if (given.kind === 'care') this.care = given.care;
    });
  }

  #put(edits: FileEdits, label: string, gesture?: unknown): void {
    const detail: MuckPut = { edits, label, gesture };
    this.dispatchEvent(new CustomEvent('muck-put', { detail, bubbles: true, composed: true }));
  }

  #suppose({ layers }: Media): void {
    const mats = layers.flatMap((layer, i) => (isFelt(layer) && layer.capture === 0 ? [i] : []));
    const caught = mats.map((i) => [`filter.media.layers[${i}].capture`, CAPTURE] as const);
    this.#put([['debris', DEBRIS], ...caught], 'fine muck in the water');
  }

  /** Puts what has settled by a time into the file. */
  #moveTo(time: number, gesture: unknown): void {
    const { care, scenario, display } = this;
    const media = scenario?.filter?.media;
    if (!care?.care || !media) return;
    const to = nearest(care.course, time);
    if (to === this.at || (this.at === undefined && to === this.#since(care.course))) return;
    this.at = to;
    const names = media.layers.map(({ name }) => name);
    const label = to === 0 ? 'media as just cleaned' : `media ${weeksWords(to)} uncleaned`;
    this.#put(depositEdits(names, heldAt(care.course, to), display), label, gesture);
  }

  #since(course: ClogCourse): number | null {
    return this.at ?? sinceOf(course, settledIn(this.file));
  }

  #clean({ layers }: Media): void {
    this.#put(
      layers.map((_, i) => [depositPlace(i), undefined]),
      'media as just cleaned',
    );
  }

  #down(event: PointerEvent): void {
    if (event.button !== 0) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.#gesture = {};
    this.#drag(event);
  }

  #drag(event: PointerEvent): void {
    if (!this.#gesture || !this.care?.care) return;
    const { left, width } = (event.currentTarget as Element).getBoundingClientRect();
    this.#moveTo(shareAcross(event.clientX - left, width) * endOf(this.care.course), this.#gesture);
  }

  readonly #letGo = (): void => {
    this.#gesture = undefined;
  };

  #keys(event: KeyboardEvent, course: ClogCourse): void {
    const steps = keySteps(event.key, LEAP);
    const from = this.#since(course) ?? endOf(course);
    const held = 'keys on the weeks';
    if (steps !== undefined) this.#moveTo(from + steps * stepOf(course), held);
    else if (event.key === 'Home') this.#moveTo(0, held);
    else if (event.key === 'End') this.#moveTo(endOf(course), held);
    else return;
    event.preventDefault();
  }

  #plot(care: Care): TemplateResult {
    const width = Math.max(240, Math.min(620, this.#width.px));
    const { course } = care;
    const since = this.#since(course);
    const weeks = (time: number): string => (time / WEEK).toFixed(2);
    return html`<div class="weeks" role="slider" tabindex="0" aria-label="weeks since a cleaning" aria-valuemin="0"
      aria-valuemax=${weeks(nearest(course, endOf(course)))} aria-valuenow=${weeks(since ?? endOf(course))}
      aria-valuetext=${standingWords(course, since)}
      @pointerdown=${this.#down} @pointermove=${this.#drag} @pointerup=${this.#letGo} @pointercancel=${this.#letGo}
      @keydown=${(event: KeyboardEvent) => this.#keys(event, course)}><svg width=${width} height=${TALL}
      viewBox="0 0 ${width} ${TALL}" aria-hidden="true">${layerElement(weeksPlotMarks({ ...care, since }, width))}</svg></div>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { care, trouble, scenario } = this;
    if (trouble) return html`<p class="wrong" role="alert">${trouble}</p>`;
    if (!care) return html`<p class="note">One moment …</p>`;
    const media = scenario?.filter?.media;
    const isBare = !care.care && media && scenario.debris === 0;
    const isSettled = media && settledIn(this.file) > 0;
    const drawn = care.care && care.course.t.length > 1 ? care : undefined;
    return html`<section class=${drawn ? 'drawn' : ''} aria-label="The weeks between cleanings">
      <div class="said"><p role="status">${care.says}</p>
        ${isBare ? html`<button @click=${() => this.#suppose(media)}>suppose fine muck: a milliliter settles out of each cubic meter (our default)</button>` : nothing}</div>
      <div class="course">${drawn ? this.#plot(drawn) : nothing}
        ${isSettled ? html`<button @click=${() => this.#clean(media)}>as just cleaned</button>` : nothing}
        ${drawn ? weeksTable(drawn.course, this.display) : nothing}</div>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-weeks': Weeks;
  }
}
