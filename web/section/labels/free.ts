import { boxAt, type Size, sizeOf } from './block.ts';
import { leadersOf } from './leader.ts';
import { regionHolds } from './region.ts';
import type { Align, Seat } from './request.ts';
import { type Box, boxesMeet, boxHolds, grown, type Point } from './shapes.ts';
import { boxFits, leaderFits, PAD, type Seated, type Sheet, type Worded } from './sheet.ts';

/** How far from its anchor a text may stand in the open, px, and the step of the search. */
const REACH = 170;
const STEP = 16;
/** Most boxes that are looked at: what is farther than so many others is too far to belong together. */
const MOST = 240;
/** A text beside its anchor begins this far from it, px: room for a level piece and a slope. */
const ASIDE = 20;

export type Open = Extract<Seat, 'sky right' | 'blank earth'>;

const distance = (box: Box, { x, y }: Point): number =>
  Math.hypot(Math.max(box.left - x, 0, x - box.right), Math.max(box.top - y, 0, y - box.bottom));

/** Left ends at which a text is tried: straight under or over the anchor, then on either side of it. */
function leftsNear({ x }: Point, width: number): number[] {
  const lefts = [x, x - width];
  for (let left = x - REACH - width; left <= x + REACH; left += STEP) lefts.push(left);
  return lefts;
}

/**
 * Boxes round the anchor in a region, the nearest first. In the sky those to its right come before all others: only
 * where they are taken or would leave the frame does a text stand over its anchor or to the left.
 */
function boxesNear(seat: Open, region: readonly Box[], anchor: Point, size: Size): Box[] {
  const found: { box: Box; far: number }[] = [];
  for (const left of leftsNear(anchor, size.width)) {
    const later = seat === 'sky right' && left < anchor.x + ASIDE ? REACH : 0;
    for (let top = anchor.y - REACH; top <= anchor.y + REACH; top += STEP) {
      const box = boxAt(left, top, size);
      const far = distance(box, anchor);
      if (far <= REACH && regionHolds(region, box)) found.push({ box, far: far + later });
    }
  }
  return found
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST)
    .map(({ box }) => box);
}

const alignTo = (box: Box, anchor: Point): Align => (anchor.x > box.right - 1 ? 'end' : 'start');

/** The sheet with what stands no farther from an anchor than that, px: the rest cannot matter to its label. */
function sheetNear(sheet: Sheet, { x, y }: Point, distance: number): Sheet {
  const area = grown({ left: x, top: y, right: x, bottom: y }, distance + 2 * PAD);
  const there = ({ round }: { round: Box }): boolean => boxesMeet(round, area);
  return { ...sheet, obstacles: sheet.obstacles.filter(there), anchors: sheet.anchors.filter(there) };
}

/** A label's seat in the open sky to the right of its anchor, or in blank earth anywhere near it. */
export function seatInTheOpen(
  sheet: Sheet,
  seat: Open,
  label: Worded,
  seated: readonly Seated[],
): Seated[] | undefined {
  const { request, lines } = label;
  const { sky, earth } = sheet.bounds;
  const region = seat === 'sky right' ? sky : earth;
  const ground = seat === 'sky right' ? 'paper' : 'earth';
  const size = sizeOf(lines, sheet.measure);
  const near = sheetNear(sheet, request.anchor, REACH + size.width);
  for (const box of boxesNear(seat, region, request.anchor, size)) {
    if (!boxFits(near, { request, seat, box }, seated)) continue;
    const leader = leadersOf(box, request.anchor, seat).find((each) => leaderFits(near, request, each, seated));
    if (leader) return [...seated, { ...label, seat, box, leader, ground, align: alignTo(box, request.anchor) }];
  }
  return undefined;
}

/** Shares of the spare room left of and above a text, the middle first. */
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8, 0, 1];

/** A label's seat in its part's own water, without a leader. */
export function seatInWater(sheet: Sheet, label: Worded, seated: readonly Seated[]): Seated[] | undefined {
  const { request, lines } = label;
  if (!request.water) return undefined;
  const { box: water, tint } = request.water;
  const size = sizeOf(lines, sheet.measure);
  for (const down of SHARES) {
    for (const along of SHARES) {
      const left = water.left + along * (water.right - water.left - size.width);
      const box = boxAt(left, water.top + down * (water.bottom - water.top - size.height), size);
      if (!boxHolds(water, box)) return undefined;
      if (!boxFits(sheet, { request, seat: 'inside water', box }, seated)) continue;
      return [...seated, { ...label, seat: 'inside water', box, leader: [], ground: `${tint} water`, align: 'middle' }];
    }
  }
  return undefined;
}
