/** Where the flags, the two plots, their axis and the bar of all the time stand. */

export interface Strip {
  readonly top: number;
  readonly bottom: number;
}

export interface Place {
  readonly width: number;
  readonly height: number;
  /** px of the axis's ends; the y axis stands where the drawing's own scale of heights does. */
  readonly left: number;
  readonly right: number;
  /** Height of the rail the flags stand on, above the sheet's own y = 0, px. */
  readonly rail: number;
  /** Lines of a flag: what happened and when beside each other, or one under the other. */
  readonly flagLines: 1 | 2;
  readonly levels: Strip;
  readonly flows: Strip;
  /** y of the bar of all the time. */
  readonly bar: number;
}

/** Page on which words are shortened and stand under each other, px. */
export const NARROW = 640;

/** px: heights of rail and plots, from one to the other, from the flows to the bar. */
const SIZES = {
  narrow: { left: 38, right: 8, rail: 46, levels: 160, apart: 28, flows: 92, bar: 58 },
  // On a desk drawing, plots and bar are seen at once.
  wide: { left: 54, right: 12, rail: 26, levels: 132, apart: 25, flows: 76, bar: 46 },
} as const;

const TOP = 24;

/** Below the bar are its figures, px. */
const FOOT = 22;

export function placeOf(width: number): Place {
  const narrow = width < NARROW;
  const { left, right, rail, levels: tall, apart, flows: low, bar: away } = SIZES[narrow ? 'narrow' : 'wide'];
  const levels = { top: TOP, bottom: TOP + tall };
  const flows = { top: levels.bottom + apart, bottom: levels.bottom + apart + low };
  const bar = flows.bottom + away;
  const flagLines = narrow ? 2 : 1;
  return { width, height: bar + FOOT, left, right: width - right, rail, flagLines, levels, flows, bar };
}
