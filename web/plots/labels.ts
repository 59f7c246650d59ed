/** Direct labels: each line's name beside the line itself, where it meets no other line and no other name. */
import type { Pixel } from '../section/marks.ts';
import { extentWithin } from './curve.ts';
import { textWidth } from './text-width.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface LabelRequest {
  readonly text: string;
  readonly size: number;
  readonly italic: boolean;
  readonly look: string;
  /** The line it names. */
  readonly points: readonly Pixel[];
  /** Where along the stretch it would stand, 0 left to 1 right. */
  readonly prefer: number;
}

export interface SeatedLabel {
  readonly request: LabelRequest;
  readonly box: Box;
  /** Baseline. */
  readonly x: number;
  readonly y: number;
}

/** px between a line and its own name; round a name to everything else. */
const OWN = 3;
const PAD = 2;
/** px between two names side by side. */
const APART = 7;
/** Share of the size a letter reaches above its baseline and below. */
const ASCENT = 0.78;
const DESCENT = 0.24;
const PLACES = 24;

export const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top;

const padded = ({ left, top, right, bottom }: Box, across: number, up: number): Box => ({
  left: left - across,
  top: top - up,
  right: right + across,
  bottom: bottom + up,
});

/** A line passes through a box. */
function crosses(points: readonly Pixel[], box: Box): boolean {
  const extent = extentWithin(points, box.left, box.right);
  return extent !== undefined && extent[0] < box.bottom && extent[1] > box.top;
}

/**
 * Seats names in the order asked for, each once above or below its line within the room; one that finds no seat is left
 * out.
 *
 * @param taken what else must be kept clear
 */
export function seatLabels(
  requests: readonly LabelRequest[],
  lines: readonly (readonly Pixel[])[],
  room: Box,
  taken: readonly Box[] = [],
): SeatedLabel[] {
  const seated: SeatedLabel[] = [];
  for (const request of requests) {
    const found = bestSeat(request, lines, room, [...taken, ...seated.map(({ box }) => box)]);
    if (found) seated.push(found);
  }
  return seated;
}

function bestSeat(
  request: LabelRequest,
  lines: readonly (readonly Pixel[])[],
  room: Box,
  taken: readonly Box[],
): SeatedLabel | undefined {
  const width = textWidth(request.text, request.size, request.italic);
  const free = room.right - room.left - width;
  if (free < 0) return undefined;
  const seats: { x: number; line: number; above: boolean; cost: number }[] = [];
  for (let i = 0; i <= PLACES; i++) {
    const x = room.left + (i / PLACES) * free;
    const own = extentWithin(request.points, x - PAD, x + width + PAD);
    if (!own) continue;
    const cost = Math.abs(i / PLACES - request.prefer) * 40 + (own[1] - own[0]);
    seats.push({ x, line: own[0], above: true, cost }, { x, line: own[1], above: false, cost: cost + 3 });
  }
  // What is asked of a place takes longer than its cost: the cheapest are asked first.
  for (const { x, line, above } of seats.sort((a, b) => a.cost - b.cost)) {
    const seat = seatAt(request, x, width, line, above);
    if (isFree(seat.box, lines, room, taken)) return seat;
  }
  return undefined;
}

function seatAt(request: LabelRequest, x: number, width: number, line: number, above: boolean): SeatedLabel {
  const { size } = request;
  const y = above ? line - OWN - DESCENT * size : line + OWN + ASCENT * size;
  return { request, x, y, box: boxOfText(x, y, width, size) };
}

export const boxOfText = (x: number, y: number, width: number, size: number): Box => ({
  left: x,
  top: y - ASCENT * size,
  right: x + width,
  bottom: y + DESCENT * size,
});

/** The baseline of a text in its box. */
export const baselineOf = ({ bottom }: Box, size: number): number => bottom - DESCENT * size;

/** A box within the room that meets neither a line nor what is taken. */
export const isFree = (box: Box, lines: readonly (readonly Pixel[])[], room: Box, taken: readonly Box[]): boolean =>
  box.top >= room.top &&
  box.bottom <= room.bottom &&
  box.left >= room.left &&
  box.right <= room.right &&
  !taken.some((other) => overlaps(padded(box, APART, PAD), other)) &&
  !lines.some((points) => crosses(points, padded(box, PAD, PAD)));

/** A free place of a size for words with a leader, nearest to a point; undefined where all is drawn over. */
export function freePlace(
  width: number,
  height: number,
  near: Pixel,
  lines: readonly (readonly Pixel[])[],
  room: Box,
  taken: readonly Box[],
): Box | undefined {
  let best: { box: Box; far: number } | undefined;
  const [nearX, nearY] = [near[0] + 24, near[1] - 12 - height / 2];
  for (const left of outward(room.left, room.right - width, 8, nearX)) {
    if (best && Math.abs(left - nearX) >= best.far) break;
    for (const top of outward(room.top, room.bottom - height, 4, nearY)) {
      const far = Math.hypot(left - nearX, top - nearY);
      if (best && far >= best.far) break;
      const box = { left, top, right: left + width, bottom: top + height };
      if (isFree(box, lines, room, taken)) best = { box, far };
    }
  }
  return best?.box;
}

/** Steps from one end to the other, the nearest to a place first. */
function outward(from: number, to: number, step: number, near: number): number[] {
  const count = Math.max(0, Math.floor((to - from) / step) + 1);
  const all = Array.from({ length: count }, (_, i) => from + i * step);
  return all.sort((a, b) => Math.abs(a - near) - Math.abs(b - near));
}

/** Lines that run together over a stretch share one name. */
export function together(a: readonly Pixel[], b: readonly Pixel[], { left, right }: Box, within = 2.5): boolean {
  for (let i = 0; i <= 12; i++) {
    const x = left + (i / 12) * (right - left);
    const [one, other] = [extentWithin(a, x, x), extentWithin(b, x, x)];
    if (!one || !other || Math.abs(one[0] - other[0]) > within || Math.abs(one[1] - other[1]) > within) return false;
  }
  return true;
}
