import type { Align, LabelLine, Measure, PlacedLine } from './request.ts';
import type { Box } from './shapes.ts';

/** Distance between baselines, px. */
export const LINE_HEIGHT = 16;
/** From the top of a line to its baseline, px. */
const BASELINE = 12;

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room a label's lines take. */
export const sizeOf = (lines: readonly LabelLine[], measure: Measure): Size => ({
  width: Math.max(0, ...lines.map(({ text, style }) => measure(text, style))),
  height: lines.length * LINE_HEIGHT,
});

export const boxAt = (left: number, top: number, { width, height }: Size): Box => ({
  left,
  top,
  right: left + width,
  bottom: top + height,
});

/** The lines set into their box: flush with its left or right, or each in its middle. */
export function linesIn(box: Box, lines: readonly LabelLine[], align: Align, measure: Measure): PlacedLine[] {
  const spare = { start: 0, middle: 0.5, end: 1 }[align];
  return lines.map((line, i) => ({
    ...line,
    x: box.left + spare * (box.right - box.left - measure(line.text, line.style)),
    y: box.top + i * LINE_HEIGHT + BASELINE,
  }));
}
