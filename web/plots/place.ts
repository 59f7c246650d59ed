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
  readonly levels: Strip;
  readonly flows: Strip;
  /** y of the bar of all the time. */
  readonly bar: number;
}

/** Page on which words are shortened, px. */
export const NARROW = 640;

export function placeOf(width: number): Place {
  const narrow = width < NARROW;
  const levels = { top: 24, bottom: 24 + (narrow ? 160 : 150) };
  const flows = { top: levels.bottom + 28, bottom: levels.bottom + 28 + 92 };
  const bar = flows.bottom + 58;
  return { width, height: bar + 24, left: narrow ? 38 : 54, right: width - (narrow ? 8 : 12), levels, flows, bar };
}
