/** The curve of a dye at the lip, and that of the case kept beside it. */
import { html, type TemplateResult } from 'lit';
import type { DyeFigures } from '../../sim/dye/answer.ts';
import { formatDuration, formatPercent } from '../../sim/quantity/index.ts';
import { layerElement } from '../section/elements.ts';
import { bothDyesMarks } from './dye-both-plot.ts';
import { dyePlotMarks, TALL } from './dye-plot.ts';

/** @param since time since the pour that is drawn, s; undefined where none of it is */
export function curveView(
  now: DyeFigures,
  kept: DyeFigures | undefined,
  width: number,
  since: number | undefined,
): TemplateResult {
  const marks = kept ? bothDyesMarks(now, kept, width, since) : dyePlotMarks(now, width, since);
  const says = kept
    ? `Dye at the lip. Now: ${saysOf(now)}. As kept: ${saysOf(kept)}.`
    : `Dye at the lip: ${saysOf(now)}.`;
  return html`<svg role="img" width=${width} height=${TALL} viewBox="0 0 ${width} ${TALL}" aria-label=${says}>
    ${layerElement(marks)}
  </svg>`;
}

const saysOf = ({ channeled, t10, t50, t90 }: DyeFigures): string =>
  `${formatPercent(1 - channeled)} through the media, ${formatPercent(channeled)} round them; a tenth has passed after ` +
  `${formatDuration(t10)}, half after ${formatDuration(t50)}, nine tenths after ${formatDuration(t90)}`;
