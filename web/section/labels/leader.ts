import { LINE_HEIGHT } from './block.ts';
import type { Box, Point } from './shapes.ts';

/** Between text and leader, px. */
const GAP = 3;
/** Level part of a leader that bends, px. */
const LEVEL = 9;
/** A slope shorter than this to the side is no slope, px. */
const LEAST_SLOPE = 4;

/** A straight leader down or up to an anchor under or over the text; none where the anchor stands beside it. */
function vertical(box: Box, anchor: Point): Point[] | undefined {
  if (anchor.x < box.left - 1 || anchor.x > box.right + 1) return undefined;
  if (anchor.y >= box.bottom + GAP) return [{ x: anchor.x, y: box.bottom + GAP - 2 }, anchor];
  if (anchor.y <= box.top - GAP) return [{ x: anchor.x, y: box.top - GAP + 2 }, anchor];
  return undefined;
}

/** A level piece beside one line of the text, then one slope to the anchor. */
function bent(box: Box, line: number, anchor: Point): Point[] | undefined {
  const y = box.top + line * LINE_HEIGHT + LINE_HEIGHT / 2;
  const toLeft = anchor.x < box.left;
  const start = toLeft ? box.left - GAP : box.right + GAP;
  const bend = toLeft ? start - LEVEL : start + LEVEL;
  const left = toLeft ? bend - anchor.x : anchor.x - bend;
  if (left < LEAST_SLOPE) return undefined;
  if (Math.abs(anchor.y - y) < 0.5)
    return [
      { x: start, y },
      { x: anchor.x, y },
    ];
  return [{ x: start, y }, { x: bend, y }, anchor];
}

/**
 * The leaders a text could have, the straight one first: one vertical, or one level piece and one slope that starts
 * beside the line next to the anchor.
 */
export function leadersOf(box: Box, anchor: Point): Point[][] {
  const last = Math.round((box.bottom - box.top) / LINE_HEIGHT) - 1;
  const lines = anchor.y > box.top ? [last, 0] : [0, last];
  const shapes = [vertical(box, anchor), ...new Set(lines)].map((shape) =>
    typeof shape === 'number' ? bent(box, shape, anchor) : shape,
  );
  return shapes.filter((shape) => shape !== undefined);
}
