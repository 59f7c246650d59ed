/** The plane as it stands on the page: region, lines, words, rulers and the point a hand moves. */
import { type SVGTemplateResult, svg } from 'lit';
import type { Pixel } from '../section/marks.ts';
import type { MapDrawing } from './drawing.ts';
import { type Axis, type Place, type Ruler, type Rulers, stepsOf } from './ruler.ts';
import { pixelAt, type Sheet, type Tick, ticksOf } from './sheet.ts';

/** What a hand does on the sheet. */
export interface Grips {
  readonly down: (event: PointerEvent, on: Axis | 'plane') => void;
  /** A finger that taps the plane sets the point there; one that is drawn over it scrolls the page. */
  readonly tap: (event: PointerEvent) => void;
  readonly move: (event: PointerEvent) => void;
  readonly up: () => void;
  readonly keys: (event: KeyboardEvent, axis: Axis) => void;
}

/** Half of what a finger needs, px. */
const FINGER = 22;
const TICK = 5;
/** The name of the upper scale stands above its figures, px. */
const NAME = 32;
/** What the last figure of the upper scale is longer by, its unit, to the right of its tick, px. */
const UNIT = 46;

/** @param upper ticks of a second scale along the upper edge; none on the plane of valves */
export function planeView(
  { region, lines, words }: MapDrawing,
  sheet: Sheet,
  rulers: Rulers,
  at: Place,
  upper: readonly Tick[],
  grips: Grips,
): SVGTemplateResult {
  const { left, top, across, down, width, height } = sheet;
  const point = pixelAt(sheet, at);
  return svg`<svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" role="group"
    aria-label="Map of settings" @pointermove=${grips.move} @pointerup=${grips.up} @pointercancel=${grips.up}>
    <defs><pattern id="holds" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(30)">
      <circle class="dot" cx="2" cy="2" r="0.8" /></pattern></defs>
    <g aria-hidden="true">
      ${region ? svg`<path class="region" d=${region} fill="url(#holds)" />` : ''}
      ${lines.map(({ d, look }) => svg`<path class="line ${look}" d=${d} />`)}
      <rect class="plane" x=${left} y=${top} width=${across} height=${down}
        @pointerdown=${(event: PointerEvent) => event.pointerType !== 'touch' && grips.down(event, 'plane')}
        @click=${grips.tap} />
      ${words.map(({ text, x, y, italic }) => svg`<text class="seat ${italic ? 'name' : ''}" x=${x} y=${y} text-anchor="middle">${text}</text>`)}
      ${scalesOf(sheet, rulers)}
      ${upper.length > 0 ? upperScale(sheet, upper) : ''}
      <path class="cross" d="M${point[0]} ${top}V${top + down}M${left} ${point[1]}H${left + across}" />
      <circle class="point" cx=${point[0]} cy=${point[1]} r="6" />
      <circle class="grab" cx=${point[0]} cy=${point[1]} r=${FINGER} @touchstart=${held}
        @pointerdown=${(event: PointerEvent) => grips.down(event, 'plane')} />
    </g>
    ${pin(sheet, 'x', rulers.x, point, at[0], grips)}${pin(sheet, 'y', rulers.y, point, at[1], grips)}
  </svg>`;
}

/** A finger on what it drags does not scroll the page, as the style alone does not keep it from doing. */
const held = (event: TouchEvent): void => event.preventDefault();

function scalesOf(sheet: Sheet, rulers: Rulers): SVGTemplateResult[] {
  const { left, top, across, down } = sheet;
  const foot = top + down;
  return [
    ...ticksOf(sheet, 'x').map(({ value, text }) => {
      const [x] = pixelAt(sheet, [value, sheet.y[0]]);
      return svg`<line class="tick" x1=${x} y1=${foot} x2=${x} y2=${foot + TICK} />
        <text x=${x} y=${foot + 36} text-anchor="middle">${text}</text>`;
    }),
    ...ticksOf(sheet, 'y').map(({ value, text }) => {
      const [, y] = pixelAt(sheet, [sheet.x[0], value]);
      return svg`<line class="tick" x1=${left} y1=${y} x2=${left - TICK} y2=${y} />
        <text x=${left - 22} y=${y + 4} text-anchor="end">${text}</text>`;
    }),
    svg`<text class="name" x=${left + across / 2} y=${foot + 56} text-anchor="middle">${rulers.x.says}</text>`,
    svg`<text class="name" x="0" y=${sheet.plane === 'flow' ? top - NAME : 14}>${rulers.y.says}</text>`,
  ];
}

function upperScale(sheet: Sheet, ticks: readonly Tick[]): SVGTemplateResult {
  const { left, top, across } = sheet;
  return svg`${ticks.map(({ value, text }, i) => {
    const [x] = pixelAt(sheet, [value, sheet.y[1]]);
    // The last has its unit behind it, and stays on the sheet.
    const last = i === ticks.length - 1;
    return svg`<line class="tick water" x1=${x} y1=${top} x2=${x} y2=${top - TICK} />
      <text class="water" x=${last ? Math.min(x + UNIT, sheet.width) : x} y=${top - 10} text-anchor=${last ? 'end' : 'middle'}>${text}</text>`;
  })}<text class="name" x=${left + across} y=${top - NAME} text-anchor="end">pump’s flow at this share</text>`;
}

/** A pin on a ruler: dragged along it, moved by keys. */
function pin(
  { left, top, down }: Sheet,
  axis: Axis,
  ruler: Ruler,
  [x, y]: Pixel,
  value: number,
  grips: Grips,
): SVGTemplateResult {
  const across = axis === 'x';
  const [cx, cy] = across ? [x, top + down + 13] : [left - 13, y];
  const shape = across ? `M${x} ${top + down + 1}l-6 11h12Z` : `M${left - 1} ${y}l-11 -6v12Z`;
  return svg`<g role="slider" tabindex="0" aria-label=${ruler.name} aria-orientation=${across ? 'horizontal' : 'vertical'}
    aria-valuemin=${stepsOf(ruler, ruler.from)} aria-valuemax=${stepsOf(ruler, ruler.to)} aria-valuenow=${stepsOf(ruler, value)}
    aria-valuetext=${ruler.words(value)} @touchstart=${held}
    @pointerdown=${(event: PointerEvent) => grips.down(event, axis)} @keydown=${(event: KeyboardEvent) => grips.keys(event, axis)}>
    <path class="pin" d=${shape} />
    <rect class="grab" x=${cx - FINGER} y=${cy - FINGER} width=${2 * FINGER} height=${2 * FINGER} />
  </g>`;
}
