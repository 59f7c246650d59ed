import type { Box } from './shapes.ts';

/** Between two boxes that count as touching, px. */
const TOUCH = 0.5;

/** Whether a box lies in a region of boxes side by side: those high enough for it reach from its left to its right. */
export function regionHolds(region: readonly Box[], { left, top, right, bottom }: Box): boolean {
  let reached = left;
  const high = region.filter((each) => each.top <= top && each.bottom >= bottom && each.right > left);
  for (const each of high.sort((a, b) => a.left - b.left)) {
    if (each.left > reached + TOUCH) return false;
    reached = Math.max(reached, each.right);
    if (reached >= right) return true;
  }
  return false;
}
