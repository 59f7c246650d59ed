import { LINE_HEIGHT } from './block.ts';
import type { Seat } from './request.ts';
import type { Box, Point } from './shapes.ts';

/** Between text and leader, px. */
const GAP = 3;
/** Level part of a leader that bends, px. */
const LEVEL = 6;
/** From a text's end to an upright that starts inside it, px. */
const INSIDE = 6;
/** A slope shorter than this to the side is no slope, px. */
const LEAST_SLOPE = 4;

/** A straight leader down or up to an anchor under or over the text; none where the anchor stands beside it. */
function vertical(box: Box, anchor: Point): Point[] | undefined {
  if (anchor.x < box.left - 1 || anchor.x > box.right + 1) return undefined;
  if (anchor.y >= box.bottom + GAP) return [{ x: anchor.x, y: box.bottom + 1 }, anchor];
  if (anchor.y <= box.top - GAP) return [{ x: anchor.x, y: box.top - 1 }, anchor];
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

/** A level piece from the anchor to over or under the text, then straight down or up to it. */
function angled(box: Box, anchor: Point): Point[] | undefined {
  const under = anchor.y <= box.top - GAP - LEVEL;
  if (!under && anchor.y < box.bottom + GAP + LEVEL) return undefined;
  const x = Math.min(box.right - INSIDE, Math.max(box.left + INSIDE, anchor.x));
  if (Math.abs(x - anchor.x) < LEAST_SLOPE) return undefined;
  return [{ x, y: under ? box.top - 1 : box.bottom + 1 }, { x, y: anchor.y }, anchor];
}

/**
 * The leaders a text could have, the straight one first: one vertical; then one level piece and one slope, which starts
 * beside the line next to the anchor; for a text under the drawing at last one level piece and one upright, which can
 * cross pipes. Over it that one would run along the water.
 */
export function leadersOf(box: Box, anchor: Point, seat: Seat): Point[][] {
  const last = Math.round((box.bottom - box.top) / LINE_HEIGHT) - 1;
  const lines = anchor.y > box.top ? [last, 0] : [0, last];
  const bends = [...new Set(lines)].map((line) => bent(box, line, anchor));
  const upright = seat === 'bottom rail' ? angled(box, anchor) : undefined;
  return [vertical(box, anchor), ...bends, upright].filter((leader) => leader !== undefined);
}
