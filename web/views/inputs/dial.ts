import { html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Stretch } from '../../../sim/studies/aim.ts';
import type { Display } from '../../engine/protocol.ts';
import type { Ruler } from '../../state/dials.ts';
import { keySteps } from '../../state/key-steps.ts';
import { toFile } from '../../state/typed.ts';
import { shared } from '../styles.ts';
import { typing } from '../typing.ts';
import { dialStyles } from './dial-styles.ts';
import { turnWords } from './turn-words.ts';

/** A dial was turned, by hand or by a typed text. */
export interface Turned {
  readonly ruler: Ruler;
  readonly to: number | string;
  /** Turns of one gesture are undone together; undefined: by itself. */
  readonly gesture: unknown;
}

/** Steps of a page key. */
const LEAP = 10;

/** One figure as a ruler with a pointer: dragged, stepped, by keys, or typed, with the stretches on which the site fails. */
@customElement('tb-dial')
export class DialView extends LitElement {
  static override styles = [shared, dialStyles];

  @property({ attribute: false }) ruler: Ruler | undefined;
  /** undefined while they are not known; null where no answer turns on it. */
  @property({ attribute: false }) failing: readonly Stretch[] | undefined | null;
  /** What is wrong with the value as typed. */
  @property() wrong = '';
  @property() display: Display = 'metric';
  @state() private gesture: object | undefined;
  /** The hand is beyond an end of the ruler. */
  @state() private beyond = false;

  #turn(to: number | string, gesture: unknown): void {
    if (!this.ruler || to === this.ruler.value) return;
    const detail: Turned = { ruler: this.ruler, to, gesture };
    this.dispatchEvent(new CustomEvent('dial-turned', { detail, bubbles: true, composed: true }));
  }

  #turnNear(to: number, gesture: unknown): void {
    const { ruler } = this;
    if (!ruler) return;
    const stepped = Math.round(to / ruler.step) * ruler.step;
    this.#turn(Math.min(ruler.high, Math.max(ruler.low, stepped)), gesture);
  }

  #step(steps: number, gesture: unknown): void {
    const { ruler } = this;
    if (ruler) this.#turnNear((Math.round(ruler.value / ruler.step) + steps) * ruler.step, gesture);
  }

  #type(event: Event): void {
    const input = event.target as HTMLInputElement;
    const { ruler } = this;
    if (!ruler) return;
    // The same figure in other words is no change, and the field goes back to how it stands.
    if (toFile(input.value, ruler.text) === toFile(ruler.text, ruler.text)) input.value = ruler.text;
    else this.#turn(input.value, undefined);
  }

  #drag(event: PointerEvent): void {
    const { ruler } = this;
    if (!ruler || !this.gesture) return;
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const share = (event.clientX - box.left) / box.width;
    this.beyond = share < 0 || share > 1;
    this.#turnNear(ruler.low + Math.min(1, Math.max(0, share)) * (ruler.high - ruler.low), this.gesture);
  }

  #letGo(): void {
    this.gesture = undefined;
    this.beyond = false;
  }

  #down(event: PointerEvent): void {
    if (event.button !== 0) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.gesture = {};
    this.#drag(event);
  }

  #keys(event: KeyboardEvent): void {
    const { ruler } = this;
    const steps = keySteps(event.key, LEAP);
    const held = `keys on ${ruler?.name}`;
    if (steps !== undefined) this.#step(steps, held);
    else if (event.key === 'Home' && ruler) this.#turn(ruler.low, held);
    else if (event.key === 'End' && ruler) this.#turn(ruler.high, held);
    else return;
    event.preventDefault();
  }

  #scale({ low, high, value }: Ruler): SVGTemplateResult {
    const at = (x: number): string => `${(100 * (x - low)) / (high - low)}%`;
    const ticks = Array.from({ length: 11 }, (_, i) => low + ((high - low) * i) / 10);
    return svg`<svg width="100%" height="44" aria-hidden="true">
      <defs><pattern id="no" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M0 0V5" /></pattern></defs>
      ${(this.failing ?? []).map(([from, to]) => svg`<svg x=${at(from)} width=${widthOf(from, to, low, high)} y="18" height="8"><rect width="100%" height="8" fill="url(#no)" /></svg>`)}
      ${(this.failing ?? []).flatMap((stretch) => stretch.filter((x) => x > low && x < high).map((x) => svg`<line class="turn" x1=${at(x)} y1="10" x2=${at(x)} y2="28" />`))}
      <line class="rule" x1="0" y1="18" x2="100%" y2="18" />
      ${ticks.map((x, i) => svg`<line class="rule" x1=${at(x)} y1="18" x2=${at(x)} y2=${i % 5 === 0 ? 24 : 21} />`)}
      <svg x=${at(value)} y="6" overflow="visible"><path class="pointer" d="M0 11L-7 -1H7Z" /></svg>
    </svg>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { ruler, failing, wrong } = this;
    if (!ruler) return nothing;
    const words = failing === null ? '' : turnWords(ruler, failing, this.display);
    const about = this.beyond ? ['the ruler ends here; a figure typed may go further'] : [ruler.note, words];
    return html`<div class="dial">
      <div class="head">
        <label for="value">${ruler.name}</label>
        <input id="value" type="text" autocomplete="off" spellcheck="false" .value=${typing(ruler.text)}
          aria-invalid=${wrong !== ''} aria-describedby="about"
          @change=${this.#type} />
        <button class="step" aria-label="${ruler.name}: one step less" @click=${() => this.#step(-1, undefined)}>−</button>
        <button class="step" aria-label="${ruler.name}: one step more" @click=${() => this.#step(1, undefined)}>+</button>
      </div>
      <div class="ruler" role="slider" tabindex="0" aria-label=${ruler.name} aria-valuemin=${ruler.low}
        aria-valuemax=${ruler.high} aria-valuenow=${ruler.value} aria-valuetext=${ruler.text} aria-describedby="about"
        @pointerdown=${this.#down} @pointermove=${this.#drag}
        @pointerup=${this.#letGo} @pointercancel=${this.#letGo}
        @keydown=${this.#keys}>${this.#scale(ruler)}</div>
      <p id="about" class=${wrong ? 'wrong' : 'about'} role=${wrong ? 'alert' : nothing}>${wrong || about.filter(Boolean).join('; ')}</p>
    </div>`;
  }
}

const widthOf = (from: number, to: number, low: number, high: number): string =>
  `${(100 * (to - from)) / (high - low)}%`;
