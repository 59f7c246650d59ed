/** One time axis for hours and for minutes: linear, but for one window that is pulled open to about half its width. */

export type Window = readonly [from: number, to: number];

/** A stretch of the axis at one scale: seconds from the start of the run, px from the axis's left end. */
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
  /** The minutes pulled open; false for the hours at either side. */
  readonly opened: boolean;
}

export interface Axis {
  /** Seconds the run lasts. */
  readonly span: number;
  readonly window: Window;
  readonly width: number;
  /** In the order of time, each as wide as it lasts; at most three. */
  readonly pieces: readonly Piece[];
  /** px of a moment; moments beyond the run are held at its ends. */
  readonly x: (t: number) => number;
  /** The moment of a px: the inverse of `x`. */
  readonly t: (x: number) => number;
}

/** Share of the width the opened window takes; on a narrow axis more, so that its minutes can be told apart. */
const SHARE = 0.51;
const NARROW_SHARE = 0.62;
const NARROW = 480;

/** Shortest window that can be opened, s. */
export const SHORTEST = 10;

/** A window within the run: its ends in order, at least the shortest apart. */
export function withinRun([from, to]: Window, span: number): Window {
  const least = Math.min(SHORTEST, span);
  const length = Math.min(span, Math.max(least, to - from));
  const start = Math.min(Math.max(0, from), span - length);
  return [start, start + length];
}

/**
 * @param span seconds the run lasts, > 0
 * @param window what is pulled open; the whole run: one linear axis without a seam
 * @param width px, > 0
 */
export function openAxis(span: number, window: Window, width: number): Axis {
  const [from, to] = withinRun(window, span);
  const rest = span - (to - from);
  const share = Math.max(width < NARROW ? NARROW_SHARE : SHARE, (to - from) / span);
  const open = rest > 0 ? share * width : width;
  const left = rest > 0 ? (from / rest) * (width - open) : 0;
  const pieces = [
    { from: 0, to: from, left: 0, right: left, opened: false },
    { from, to, left, right: left + open, opened: true },
    { from: to, to: span, left: left + open, right: width, opened: false },
  ].filter((piece) => piece.to > piece.from);
  const x = (t: number): number => {
    const held = Math.min(span, Math.max(0, t));
    const piece = pieces.find((each) => held <= each.to) ?? pieces[pieces.length - 1]!;
    return piece.left + ((held - piece.from) / (piece.to - piece.from)) * (piece.right - piece.left);
  };
  const t = (px: number): number => {
    const held = Math.min(width, Math.max(0, px));
    const piece = pieces.find((each) => held <= each.right) ?? pieces[pieces.length - 1]!;
    return piece.from + ((held - piece.left) / (piece.right - piece.left)) * (piece.to - piece.from);
  };
  return { span, window: [from, to], width, pieces, x, t };
}

/** px at which the scale of time changes. */
export const seamsOf = ({ pieces }: Axis): number[] => pieces.slice(1).map(({ left }) => left);

/** The opened stretch, px; all of the axis where nothing is left beside it. */
export function openedOf({ pieces, width }: Axis): readonly [left: number, right: number] {
  const piece = pieces.find(({ opened }) => opened);
  return piece ? [piece.left, piece.right] : [0, width];
}
