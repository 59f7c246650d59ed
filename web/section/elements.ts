import { nothing, type SVGTemplateResult, svg } from 'lit';
import { byClip, type Clip, type Mark } from './marks.ts';

export const clipElement = ({ id, d }: Clip): SVGTemplateResult =>
  svg`<clipPath id=${id}><path d=${d}></path></clipPath>`;

/** Marks as elements of the page, those of one clip together. */
export const layerElement = (marks: readonly Mark[]): SVGTemplateResult =>
  svg`<g>${byClip(marks).map(
    (group) => svg`<g clip-path=${group.clip ? `url(#${group.clip})` : nothing}>${group.marks.map(markElement)}</g>`,
  )}</g>`;

function markElement(mark: Mark): SVGTemplateResult {
  if (mark.kind === 'text') {
    return svg`<text class=${mark.look} x=${mark.x} y=${mark.y} text-anchor=${mark.at}>${mark.text}</text>`;
  }
  return svg`<path class=${mark.look} d=${mark.d} stroke-opacity=${mark.opacity ?? nothing}
    stroke-width=${mark.stroke ?? nothing}></path>`;
}
