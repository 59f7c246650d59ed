import type { Box, Point } from './shapes.ts';

/** Share of the frame's width that the bank takes at the edge. */
const BANK = 0.2;

/** Where the bank's wall starts at the edge, px. */
export const footOf = ({ left, right }: Box): number => left + BANK * (right - left);

/** The bank, closed: a top a little under the edge, and a wall that leans out toward the water. */
export function bankOf(frame: Box, edge: number): { bank: Point[]; liner: Point[] } {
  const foot = footOf(frame);
  const { left, bottom } = frame;
  const wall: Point[] = [
    { x: foot, y: edge },
    { x: foot + 2, y: edge + 10 },
    { x: foot + 6 + (bottom - edge) * 0.1, y: bottom },
  ];
  const bank = [{ x: left, y: edge + 5 }, { x: foot - 12, y: edge + 5 }, ...wall, { x: left, y: bottom }];
  return { bank, liner: wall };
}

/** The pond's water in the frame, from the bank's wall on; undefined where it stands under the frame. */
export function waterIn(frame: Box, surface: number): Box | undefined {
  if (surface >= frame.bottom) return undefined;
  return { left: footOf(frame), top: Math.max(frame.top, surface), right: frame.right, bottom: frame.bottom };
}

/** The overflow's standing pipe, its mouth at `mouth`, its width to the detail's scale but no wider than a tenth. */
export function pipeIn(frame: Box, mouth: number, width: number): Box {
  const wide = Math.min(width, 0.1 * (frame.right - frame.left));
  const left = frame.left + 0.3 * (frame.right - frame.left);
  return { left, top: mouth, right: left + wide, bottom: frame.bottom };
}
