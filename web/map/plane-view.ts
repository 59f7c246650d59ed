/** The plane as it stands on the page: region, lines, words, rulers and the point a hand moves. */
import { type SVGTemplateResult, svg } from 'lit';
import type { Plane } from '../../sim/map/answer.ts';
import { handleWords } from '../../sim/map/words.ts';
import type { Pixel } from '../section/marks.ts';
import type { MapDrawing } from './drawing.ts';
import { degreesOpen, type Openings, type Valve } from './hand.ts';
import { pixelAt, type Sheet, ticksOf } from './sheet.ts';

/** What a hand does on the sheet; none on a plane that is only looked at. */
export interface Grips {
  readonly down: (event: PointerEvent, on: Valve | 'plane') => void;
  /** A finger that taps the plane sets the point there; one that is drawn over it scrolls the page. */
  readonly tap: (event: PointerEvent) => void;
  readonly move: (event: PointerEvent) => void;
  readonly up: () => void;
  readonly keys: (event: KeyboardEvent, valve: Valve) => void;
}

/** Half of what a finger needs, px. */
const FINGER = 22;
const TICK = 5;

export function planeView(
  { region, lines, words }: MapDrawing,
  sheet: Sheet,
  plane: Plane,
  at: readonly [number, number],
  openings: Openings,
  grips: Grips | undefined,
): SVGTemplateResult {
  const { left, top, across, down, width, height } = sheet;
  const point = pixelAt(sheet, at);
  return svg`<svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" role="group"
    aria-label="Map of settings" @pointermove=${grips?.move} @pointerup=${grips?.up} @pointercancel=${grips?.up}>
    <defs><pattern id="holds" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(30)">
      <circle class="dot" cx="2" cy="2" r="0.8" /></pattern></defs>
    <g aria-hidden="true">
      ${region ? svg`<path class="region" d=${region} fill="url(#holds)" />` : ''}
      ${lines.map(({ d, look }) => svg`<path class="line ${look}" d=${d} />`)}
      <rect class="plane" x=${left} y=${top} width=${across} height=${down}
        @pointerdown=${(event: PointerEvent) => event.pointerType !== 'touch' && grips?.down(event, 'plane')}
        @click=${grips?.tap} />
      ${words.map(({ text, x, y, italic }) => svg`<text class="seat ${italic ? 'name' : ''}" x=${x} y=${y} text-anchor="middle">${text}</text>`)}
      ${rulersOf(sheet, plane)}
      <path class="cross" d="M${point[0]} ${top}V${top + down}M${left} ${point[1]}H${left + across}" />
      <circle class="point" cx=${point[0]} cy=${point[1]} r="6" />
      ${grips ? svg`<circle class="grab" cx=${point[0]} cy=${point[1]} r=${FINGER} @pointerdown=${(event: PointerEvent) => grips.down(event, 'plane')} />` : ''}
    </g>
    ${grips ? [grip(sheet, 'bottom', point, openings, grips), grip(sheet, 'top', point, openings, grips)] : ''}
  </svg>`;
}

function rulersOf({ left, top, across, down, ...sheet }: Sheet, plane: Plane): SVGTemplateResult[] {
  const whole = { left, top, across, down, ...sheet };
  const foot = top + down;
  const [xName, yName] =
    plane === 'valves'
      ? ['bottom valve’s handle, closed by', 'top valve’s handle, closed by']
      : ['pump’s speed', 'share by the bottom feed'];
  return [
    ...ticksOf(plane, 'x').map(({ value, text }) => {
      const [x] = pixelAt(whole, [value, whole.y[0]]);
      return svg`<line class="tick" x1=${x} y1=${foot} x2=${x} y2=${foot + TICK} />
        <text x=${x} y=${foot + 36} text-anchor="middle">${text}</text>`;
    }),
    ...ticksOf(plane, 'y').map(({ value, text }) => {
      const [, y] = pixelAt(whole, [whole.x[0], value]);
      return svg`<line class="tick" x1=${left} y1=${y} x2=${left - TICK} y2=${y} />
        <text x=${left - 22} y=${y + 4} text-anchor="end">${text}</text>`;
    }),
    svg`<text class="name" x=${left + across / 2} y=${foot + 56} text-anchor="middle">${xName}</text>`,
    svg`<text class="name" x="0" y="14">${yName}</text>`,
  ];
}

/** A pointer on a valve's ruler: dragged along it, moved by keys. */
function grip(
  { left, top, down }: Sheet,
  valve: Valve,
  [x, y]: Pixel,
  openings: Openings,
  grips: Grips,
): SVGTemplateResult {
  const opening = openings[valve];
  const across = valve === 'bottom';
  const [cx, cy] = across ? [x, top + down + 13] : [left - 13, y];
  const pin = across ? `M${x} ${top + down + 1}l-6 11h12Z` : `M${left - 1} ${y}l-11 -6v12Z`;
  return svg`<g role="slider" tabindex="0" aria-label="${valve} valve" aria-orientation=${across ? 'horizontal' : 'vertical'}
    aria-valuemin="0" aria-valuemax="90" aria-valuenow=${degreesOpen(opening)} aria-valuetext=${handleWords(opening)}
    @pointerdown=${(event: PointerEvent) => grips.down(event, valve)} @keydown=${(event: KeyboardEvent) => grips.keys(event, valve)}>
    <path class="pin" d=${pin} />
    <rect class="grab" x=${cx - FINGER} y=${cy - FINGER} width=${2 * FINGER} height=${2 * FINGER} />
  </g>`;
}
