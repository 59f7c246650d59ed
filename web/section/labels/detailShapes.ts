import type { Box, Point } from './shapes.ts';

/** Share of the frame's width that the bank takes at the edge. */
const BANK = 0.2;

/** How far the wall leans out: at once, px, and by its height. */
const FOOT = 6;
const LEAN = 0.1;
/** Widest that a pipe is drawn, as a share of the frame's width. */
const MOST_PIPE = 0.12;

/** Where the bank's wall starts at the edge, px. */
export const footOf = ({ left, right }: Box): number => left + BANK * (right - left);

/** The bank, closed: a top a little under the edge, and a wall that leans out toward the water. */
export function bankOf(frame: Box, edge: number): { bank: Point[]; liner: Point[] } {
  const foot = footOf(frame);
  const { left, bottom } = frame;
  const wall: Point[] = [
    { x: foot, y: edge },
    { x: foot + 2, y: edge + 10 },
    { x: foot + FOOT + (bottom - edge) * LEAN, y: bottom },
  ];
  const bank = [{ x: left, y: edge + 5 }, { x: foot - 12, y: edge + 5 }, ...wall, { x: left, y: bottom }];
  return { bank, liner: wall };
}

/** The pond's water in the frame, from the bank's wall on; undefined where it stands under the frame. */
export function waterIn(frame: Box, surface: number): Box | undefined {
  if (surface >= frame.bottom) return undefined;
  return { left: footOf(frame), top: Math.max(frame.top, surface), right: frame.right, bottom: frame.bottom };
}

/** The overflow's standing pipe, its mouth at `mouth`, clear of the bank, its width (px) to the detail's scale. */
export function pipeIn(frame: Box, mouth: number, width: number): Box {
  const free = footOf(frame) + FOOT + LEAN * (frame.bottom - frame.top) + 6;
  const wide = Math.min(width, MOST_PIPE * (frame.right - frame.left));
  return { left: free, top: mouth, right: free + wide, bottom: frame.bottom };
}
