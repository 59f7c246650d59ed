import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Display } from '../engine/protocol.ts';
import { drawStrip, inWords, type Placed, type Subject } from '../plots/strip.ts';
import { valueAt } from '../plots/thin.ts';
import { shared } from './styles.ts';

/** Room for the figures of the value axis left of the drawing, px; above it, and below it for the clock. */
const gutter = { left: 60, top: 6, bottom: 4, clock: 20, right: 14 };

/** One quantity over time, named in words, with what it is at the playhead. */
@customElement('tb-strip')
export class StripView extends LitElement {
  static override styles = [
    shared,
    css`
      .head {
        display: flex;
        flex-wrap: wrap;
        gap: 0 10px;
        justify-content: space-between;
        line-height: 20px;
        padding-right: ${gutter.right}px;
      }
      .name {
        font-style: italic;
      }
      svg {
        display: block;
        overflow: visible;
      }
      text {
        font-size: 12px;
        fill: var(--ink2);
      }
      .clock text {
        text-anchor: middle;
      }
      .values text {
        text-anchor: end;
        dominant-baseline: central;
      }
      .marks text {
        text-anchor: end;
        font-style: italic;
        paint-order: stroke;
        stroke: var(--paper);
        stroke-width: 4px;
      }
      .hair {
        stroke: var(--rule);
        stroke-width: 0.8;
      }
      .frame {
        stroke: var(--ink2);
        stroke-width: 0.8;
      }
      .marks .edge {
        stroke: var(--ink);
        stroke-width: 1;
        stroke-dasharray: 9 3 1.5 3;
      }
      .marks .other {
        stroke: var(--ink2);
        stroke-width: 1;
        stroke-dasharray: 1.5 3;
      }
      .line {
        fill: none;
        stroke: var(--water);
        stroke-width: 1.7;
        stroke-linejoin: round;
      }
      .area {
        fill: var(--wash);
      }
      .playhead {
        stroke: var(--ink);
        stroke-width: 1;
      }
    `,
  ];

  @property({ attribute: false }) subject: Subject | undefined;
  @property({ attribute: false }) window: readonly [number, number] = [0, 1];
  @property({ type: Number }) moment = 0;
  @property({ type: Number }) height = 56;
  @property({ type: Boolean }) clock = false;
  @property() starts = '';
  @property() display: Display = 'metric';
  @state() private width = 0;

  #watch = new ResizeObserver(([entry]) => {
    this.width = Math.floor(entry?.contentRect.width ?? 0);
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch.disconnect();
  }

  override render(): TemplateResult | typeof nothing {
    const { subject, window, height, starts, display } = this;
    const width = this.width - gutter.left - gutter.right;
    if (!subject || width < 40) return nothing;
    const strip = drawStrip(subject, { width, height, window, starts, display });
    const now = inWords(valueAt(subject.times, subject.values, this.moment), subject, display);
    const x = ((this.moment - window[0]) / (window[1] - window[0])) * width;
    const apart = (strip.timeTicks[1]?.at ?? width) - (strip.timeTicks[0]?.at ?? 0);
    const below = this.clock ? gutter.clock : gutter.bottom;
    return html`<div class="head"><span class="name">${subject.name}</span><span class="now">${now}</span></div>
      <svg role="img" aria-label=${strip.says} width=${this.width} height=${height + gutter.top + below}>
        <g transform="translate(${gutter.left} ${gutter.top})">
          ${strip.area ? svg`<path class="area" d=${strip.area} />` : nothing}
          <g class="values">${strip.valueTicks.map((tick, i) => valueTick(tick, width, i === strip.valueTicks.length - 1 ? strip.unit : ''))}</g>
          <g class="clock">${strip.timeTicks.map((tick) => timeTick(tick, height, this.clock, width, apart))}</g>
          <path class="frame" d="M0 0V${height}H${width}" fill="none" />
          <path class="line" d=${strip.line} />
          <g class="marks">${strip.marks.map((mark) => markLine(mark, width))}</g>
          ${x >= 0 && x <= width ? svg`<path class="playhead" d="M${x} 0V${height}" />` : nothing}
        </g>
      </svg>`;
  }
}

function valueTick({ at, label }: Placed, width: number, unit: string) {
  return svg`<path class="hair" d="M0 ${at}H${width}" /><text x="-6" y=${at}>${label}${unit ? ` ${unit}` : ''}</text>`;
}

/** Labels stay inside the drawing; one that would have to move far onto its neighbor is left out. */
function timeTick({ at, label }: Placed, height: number, named: boolean, width: number, apart: number) {
  const inside = Math.max(14, Math.min(width - 10, at));
  const shown = named && (inside === at || apart > 60);
  return svg`<path class="frame" d="M${at} ${height}v4" />${shown ? svg`<text x=${inside} y=${height + 16}>${label}</text>` : nothing}`;
}

function markLine({ at, label }: Placed, width: number) {
  return svg`<path class=${label === 'edge' ? 'edge' : 'other'} d="M0 ${at}H${width}" /><text x=${width - 4} y=${at < 12 ? at + 13 : at - 4}>${label}</text>`;
}
