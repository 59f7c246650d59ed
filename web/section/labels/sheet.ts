import { meetsBox, type Ready, readied, stopsLeader } from './obstacles.ts';
import type { Align, Bounds, Form, LabelLine, LabelRequest, Measure, Obstacle, Placed, Seat } from './request.ts';
import {
  type Box,
  boxesMeet,
  boxHolds,
  boxRound,
  grown,
  type Point,
  segmentMeetsBox,
  segmentsNear,
  segmentsOf,
} from './shapes.ts';

/** Room kept free round a text, px. */
export const PAD = 4;
/** Radius of an anchor's dot, px. */
export const DOT = 1.6;
/** Between two leaders, or a leader and another's text or dot, px. */
const APART = 2;

/** A label with one of its wordings. */
export interface Worded {
  readonly request: LabelRequest;
  readonly form: Form;
  readonly lines: readonly LabelLine[];
}

/** A worded label at a place of its own. */
export interface Seated extends Worded {
  readonly seat: Seat;
  readonly align: Align;
  readonly ground: Placed['ground'];
  readonly box: Box;
  readonly leader: readonly Point[];
}

/** What seats are looked for on: the obstacles made ready, and all anchors as dots. */
export interface Sheet {
  readonly bounds: Bounds;
  readonly measure: Measure;
  readonly obstacles: readonly Ready[];
  readonly anchors: readonly Ready[];
}

export const sheetOf = (
  requests: readonly LabelRequest[],
  obstacles: readonly Obstacle[],
  bounds: Bounds,
  measure: Measure,
): Sheet => ({
  bounds,
  measure,
  obstacles: obstacles.flatMap(readied),
  anchors: requests.flatMap(({ id, anchor }) => readied({ kind: 'line', of: id, points: [anchor], width: 2 * DOT })),
});

type Free = Pick<Seated, 'request' | 'seat' | 'box'>;

/** Whether a text box, padded, lies in the frame and meets nothing: no obstacle, anchor, other text or leader. */
export function boxFits(sheet: Sheet, { request, seat, box }: Free, others: readonly Seated[]): boolean {
  if (!boxHolds(sheet.bounds.frame, box)) return false;
  const padded = grown(box, PAD);
  const inside = seat === 'inside water';
  const own = (o: Ready): boolean => inside && o.of === request.id;
  const meets = (o: Ready): boolean => !own(o) && meetsBox(o, padded);
  if (others.some((other) => boxesMeet(padded, other.box))) return false;
  if (sheet.anchors.some(meets) || sheet.obstacles.some(meets)) return false;
  return !others.some(({ leader }) => segmentsOf(leader).some((segment) => segmentMeetsBox(segment, padded)));
}

/** Whether a leader may be drawn: it crosses no other, touches no other's text or dot, and no obstacle stops it. */
export function leaderFits(
  sheet: Sheet,
  request: LabelRequest,
  leader: readonly Point[],
  others: readonly Seated[],
): boolean {
  const segments = segmentsOf(leader);
  const near = (other: readonly Point[]): boolean =>
    segmentsOf(other).some((one) => segments.some((segment) => segmentsNear(segment, one, APART)));
  if (others.some(({ box }) => segments.some((segment) => segmentMeetsBox(segment, grown(box, APART))))) return false;
  if (others.some((other) => near(other.leader))) return false;
  const onDot = (o: Ready): boolean =>
    o.of !== request.id && segments.some((segment) => segmentsNear(segment, o.segments[0], DOT + APART));
  if (sheet.anchors.some(onDot)) return false;
  const round = boxRound(leader);
  // A stone belongs to its pool, media to their filter: their leaders may pass its water.
  const own = ({ kind, of }: Ready): boolean =>
    of !== undefined && (of === request.id || (kind === 'water' && request.id.startsWith(`${of}.`)));
  return !sheet.obstacles.some((o) => !own(o) && stopsLeader(o, leader, round));
}
