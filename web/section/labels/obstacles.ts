import type { Obstacle } from './request.ts';
import {
  atRightAngles,
  type Box,
  boxesMeet,
  boxRound,
  cornersOf,
  grown,
  outlineHolds,
  type Point,
  type Segment,
  segmentMeetsBox,
  segmentsCross,
  segmentsNear,
  segmentsOf,
} from './shapes.ts';

/** Between a leader and what it misses, px. */
const CLEAR = 1.5;
/** So near its anchor a leader may touch what the anchor stands on, px; a pipe it enters from one wall to the other. */
const AT_ANCHOR = 4;

/** An obstacle with what is asked of it often worked out once. */
export interface Ready extends Obstacle {
  readonly round: Box;
  readonly segments: readonly Segment[];
  readonly half: number;
}

/** A long line is taken apart into pieces of so many segments, each with a box of its own: most are far from a text. */
const PIECE = 6;

function readiedAs(obstacle: Obstacle, segments: readonly Segment[]): Ready {
  const half = (obstacle.width ?? 0) / 2;
  // The box round a level or upright line has no inside; a hair of room gives it one.
  return { ...obstacle, round: grown(boxRound(segments.flat()), half + 1e-6), segments, half };
}

export function readied(obstacle: Obstacle): Ready[] {
  const { points, closed } = obstacle;
  // A dot is a segment without length.
  if (points.length === 1) return [readiedAs(obstacle, [[points[0], points[0]]])];
  const segments = segmentsOf(points, closed);
  if (closed) return [readiedAs(obstacle, segments)];
  const pieces: Ready[] = [];
  for (let i = 0; i < segments.length; i += PIECE) pieces.push(readiedAs(obstacle, segments.slice(i, i + PIECE)));
  return pieces;
}

/** Whether a padded text box meets the obstacle, its inside included where it is closed. */
export function meetsBox(o: Ready, box: Box): boolean {
  if (!boxesMeet(o.round, box)) return false;
  const wide = grown(box, o.half);
  if (o.segments.some((segment) => segmentMeetsBox(segment, wide))) return true;
  return o.closed === true && outlineHolds(o.points, cornersOf(box)[0]);
}

/** A leader without its last few px. */
function shortened(leader: readonly Point[], by: number): Point[] {
  const [before, end] = leader.slice(-2);
  const size = Math.hypot(end.x - before.x, end.y - before.y);
  if (size <= by) return leader.slice(0, -1);
  const share = (size - by) / size;
  return [
    ...leader.slice(0, -1),
    { x: before.x + share * (end.x - before.x), y: before.y + share * (end.y - before.y) },
  ];
}

const solid = ({ kind }: Ready): boolean => kind === 'stone' || kind === 'frame' || kind === 'figure';

/** Whether a piece of a leader comes too near; `whole`: the piece with what was taken off at the anchor. */
function stopsSegment(o: Ready, piece: Segment, whole: Segment): boolean {
  const near = (other: Segment): boolean => segmentsNear(piece, other, o.half + CLEAR);
  if (solid(o)) return o.segments.some(near) || (o.closed === true && outlineHolds(o.points, piece[0]));
  const squarely = (pipe: Segment): boolean => atRightAngles(whole, pipe) && segmentsCross(whole, pipe);
  return o.kind === 'pipe' && o.segments.some((pipe) => near(pipe) && !squarely(pipe));
}

/** Whether a leader leads through water in which its anchor doesn't stand; an anchor on its edge is met from outside. */
function throughWater(o: Ready, leader: readonly Point[]): boolean {
  const anchor = leader[leader.length - 1];
  const atEdge = o.segments.some((side) => segmentsNear([anchor, anchor], side, AT_ANCHOR));
  if (!atEdge && outlineHolds(o.points, anchor)) return false;
  const rest = shortened(leader, AT_ANCHOR);
  const crosses = (piece: Segment): boolean => o.segments.some((side) => segmentsCross(piece, side));
  return segmentsOf(rest).some(crosses) || outlineHolds(o.points, rest[rest.length - 1]);
}

/**
 * Whether a leader may not be drawn for the obstacle.
 *
 * @param round box round the leader
 */
export function stopsLeader(o: Ready, leader: readonly Point[], round: Box): boolean {
  if (o.kind === 'line' || !boxesMeet(o.round, grown(round, CLEAR))) return false;
  if (o.kind === 'water') return throughWater(o, leader);
  const pieces = segmentsOf(shortened(leader, AT_ANCHOR + 2 * o.half));
  return pieces.some((piece, i) => stopsSegment(o, piece, [leader[i], leader[i + 1]]));
}
