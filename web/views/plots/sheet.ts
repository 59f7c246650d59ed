import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { SeatedFlag } from '../../plots/flags.ts';
import type { Place } from '../../plots/place.ts';
import type { Clip, Mark } from '../../section/marks.ts';

export const clipElement = ({ id, d }: Clip): SVGTemplateResult =>
  svg`<clipPath id=${id}><path d=${d}></path></clipPath>`;

export function markElement(mark: Mark): SVGTemplateResult {
  if (mark.kind === 'text')
    return svg`<text class=${mark.look} x=${mark.x} y=${mark.y} text-anchor=${mark.at}>${mark.text}</text>`;
  const clip = mark.clip ? `url(#${mark.clip})` : '';
  return clip
    ? svg`<path class=${mark.look} d=${mark.d} clip-path=${clip}></path>`
    : svg`<path class=${mark.look} d=${mark.d}></path>`;
}

/** The playhead stands at a flag. */
export const isAt = ({ t }: SeatedFlag, moment: number): boolean => Math.abs(t - moment) < 0.5;

/** The flags as presses on their rail. */
export function flagsView(
  flags: readonly SeatedFlag[],
  lines: Place['flagLines'],
  moment: number,
  press: (flag: SeatedFlag) => void,
): TemplateResult {
  return html`<div role="group" aria-label="What happened when" class=${lines === 1 ? 'short' : ''}>
    ${flags.map(
      (flag) => html`<button class="flag" aria-pressed=${isAt(flag, moment)}
        .style=${`left: ${flag.left}px; width: ${flag.width}px`}
        @click=${() => press(flag)}><span class="what">${flag.what}</span> <span>${flag.when}</span></button>`,
    )}
  </div>`;
}

/** Where a box of the sheet stands on the page, px, as text for an element's `style` property. */
export const boxStyle = ({ rail }: Place, left: number, top: number, width: number, height: number): string =>
  `left: ${left}px; top: ${top + rail}px; width: ${width}px; height: ${height}px`;
