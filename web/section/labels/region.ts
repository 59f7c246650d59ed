import type { Box } from './shapes.ts';

/** Between two boxes that count as touching, px. */
const TOUCH = 0.5;

/**
 * Whether a box lies in a region of boxes side by side: those high enough for it reach from its left to its right.
 *
 * @param region boxes by their left sides, ascending
 */
export function regionHolds(region: readonly Box[], { left, top, right, bottom }: Box): boolean {
  let reached = left;
  for (let i = 0; i < region.length; i++) {
    const each = region[i];
    if (each.right <= reached || each.top > top || each.bottom < bottom) continue;
    if (each.left > reached + TOUCH) return false;
    reached = each.right;
    if (reached >= right) return true;
  }
  return false;
}
