import { boxAt, type Size, sizeOf } from './block.ts';
import { leadersOf } from './leader.ts';
import { meetsBox } from './obstacles.ts';
import type { Align, Seat } from './request.ts';
import { type Box, grown } from './shapes.ts';
import { boxFits, leaderFits, PAD, type Seated, type Sheet, type Worded } from './sheet.ts';

/** Between two texts on a rail, px. */
export const RAIL_GAP = 16;
/** A text is pushed no farther than this from above its anchor, px. */
const FARTHEST = 150;
/** Step by which a text is pushed past what stands in its way, px. */
const STEP = 4;

export type Rail = Extract<Seat, 'top rail' | 'second rail' | 'bottom rail'>;

interface OnRail extends Worded {
  readonly align: Align;
  readonly size: Size;
  /** Where the text's left end would be if it had the rail to itself. */
  readonly wish: number;
}

function onRail(label: Worded, align: Align, sheet: Sheet): OnRail {
  const size = sizeOf(label.lines, sheet.measure);
  const { x } = label.request.anchor;
  return { ...label, align, size, wish: align === 'end' ? x - size.width : x };
}

/** The first x from `from` on at which the padded text meets no obstacle; far off where there is none near. */
function pastObstacles(sheet: Sheet, from: number, top: number, size: Size): number {
  const meets = (box: Box): boolean => sheet.obstacles.some((o) => meetsBox(o, grown(box, PAD)));
  for (let x = from; x <= from + FARTHEST; x += STEP) if (!meets(boxAt(x, top, size))) return x;
  return Infinity;
}

/** Left ends of the texts of a rail in order: each over its anchor, pushed right to the gap, and back from the end. */
function spread(sheet: Sheet, labels: readonly OnRail[], top: number): number[] {
  const { left, right } = sheet.bounds.frame;
  const lefts: number[] = [];
  let free = left;
  for (const { wish, size } of labels) {
    const x = pastObstacles(sheet, Math.max(free, Math.min(wish, right - size.width)), top, size);
    lefts.push(x);
    free = x + size.width + RAIL_GAP;
  }
  let end = right;
  for (let i = labels.length - 1; i >= 0; i--) {
    lefts[i] = Math.min(lefts[i], end - labels[i].size.width);
    end = lefts[i] - RAIL_GAP;
  }
  return lefts;
}

/** All labels of the rail at their new places, if each of them is then free. */
function settle(sheet: Sheet, seat: Rail, top: number, labels: OnRail[], others: readonly Seated[]) {
  const lefts = spread(sheet, labels, top);
  const settled: Seated[] = [];
  for (const [i, { size, wish, ...label }] of labels.entries()) {
    if (!(Math.abs(lefts[i] - wish) <= FARTHEST)) return undefined;
    const box = boxAt(lefts[i], top, size);
    const so = [...others, ...settled];
    const { request } = label;
    if (!boxFits(sheet, { request, seat, box }, so)) return undefined;
    const leader = leadersOf(box, request.anchor, seat).find((each) => leaderFits(sheet, request, each, so));
    if (!leader) return undefined;
    settled.push({ ...label, seat, box, leader, ground: seat === 'bottom rail' ? 'earth' : 'paper' });
  }
  return settled;
}

/**
 * A label's seat on a rail among those already there, which stand in the order of their anchors and may move.
 *
 * @returns all seated labels with the new one among them, or undefined where the rail has no room for it
 */
export function seatOnRail(sheet: Sheet, seat: Rail, top: number, label: Worded, seated: readonly Seated[]) {
  const others = seated.filter((each) => each.seat !== seat);
  const there = seated.filter((each) => each.seat === seat).map((each) => onRail(each, each.align, sheet));
  for (const align of ['start', 'end'] as const) {
    const labels = [...there, onRail(label, align, sheet)];
    labels.sort((a, b) => a.request.anchor.x - b.request.anchor.x);
    const settled = settle(sheet, seat, top, labels, others);
    if (settled) return [...others, ...settled];
  }
  return undefined;
}
