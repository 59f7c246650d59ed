import { nothing, type SVGTemplateResult, svg } from 'lit';
import type { Clip, Mark } from '../section/marks.ts';

/** Marks of a drawing as elements of the page. */
export const marksView = (marks: readonly Mark[]): SVGTemplateResult[] =>
  marks.map((mark) =>
    mark.kind === 'text'
      ? svg`<text class=${mark.look} x=${mark.x.toFixed(1)} y=${mark.y.toFixed(1)} text-anchor=${mark.at}>${mark.text}</text>`
      : svg`<path class=${mark.look} d=${mark.d} clip-path=${mark.clip ? `url(#${mark.clip})` : nothing}
          opacity=${mark.opacity ?? nothing} stroke-width=${mark.stroke ?? nothing} />`,
  );

export const clipsView = (clips: readonly Clip[]): SVGTemplateResult =>
  svg`<defs>${clips.map(({ id, d }) => svg`<clipPath id=${id}><path d=${d} /></clipPath>`)}</defs>`;
