import type { Passing } from './answer.ts';
import { type Clogged, type CloggingPath, shareOf } from './path.ts';

/** A point of the way from clean on, and the running time at which it is reached, s. */
export interface Point extends Clogged {
  readonly ran: number;
}

export interface Walk {
  readonly points: readonly Point[];
  /** In running time. */
  readonly passing: Passing;
}

/** Between two points any layer's loss grows by at most this share of itself. */
const GROWTH = 0.1;
/** From clean to full a layer's loss grows some thousandfold: a hundred such points, as often as a layer fills. */
const MOST_POINTS = 2000;
/** Below this nothing goes through any more, m³/s. */
const NO_FLOW = 1e-9;
/** Where the share passes the limit and where the media lift is found to this share of the water until then. */
const EXACT = 1e-6;

/** Past the limit the media are followed until they lift, if they do within so many times the time of passing. */
const UNTIL_LIFT = 6;

/**
 * Walks from clean media until the channeled share passes a limit, and on to `beyond` times that time, or the time at
 * which they lift where that comes later.
 *
 * Time is the integral of 1/Q over the water that goes through, by Simpson's rule over pairs of points.
 * @param longest running time looked at, s
 * @param beyond ≥ 1; 0: no further than the passing
 * @throws RunFailure where a running balance fails
 */
export function walkOn(path: CloggingPath, limit: number, longest: number, beyond: number): Walk {
  const points: Point[] = [{ ...path.at(0), ran: 0 }];
  let passing: Passing = shareOf(points[0]) > limit ? { when: 'clean' } : { when: 'never' };
  let until = longest;
  while (points.length < MOST_POINTS) {
    const from = points[points.length - 1];
    if (from.ran >= until || from.media < NO_FLOW) break;
    const water = path.clogging.waterUntil(2 * GROWTH, from.held);
    if (water === Number.POSITIVE_INFINITY) break;
    // A layer that takes nothing yet for want of flow would stretch one step over years.
    const [mid, end] = step(path, from, Math.min(water, from.media * longest));
    points.push(...(beyond > 0 ? withLift(path, from, mid, end) : [mid, end]));
    if (passing.when === 'never' && shareOf(end) > limit) {
      const isOver = (at: Clogged): boolean => shareOf(at) > limit;
      const t = (isOver(mid) ? turn(path, from, mid, isOver) : turn(path, mid, end, isOver)).ran;
      if (t <= longest) passing = { when: 'later', t };
      until = Math.min(longest, beyond > 0 ? UNTIL_LIFT * t : 0);
    }
    if (passing.when === 'later' && isLifted(end)) until = Math.min(until, beyond * end.ran);
  }
  return { points: passing.when === 'later' ? asFarAsAsked(points, passing.t, beyond) : points, passing };
}

/** Up to `beyond` times the passing, or the lift where there is one past it. */
function asFarAsAsked(points: Point[], passed: number, beyond: number): Point[] {
  const lifts = points.find((point) => point.ran > passed && isLifted(point))?.ran ?? passed;
  const end = points.findIndex(({ ran }) => ran >= beyond * lifts);
  return end < 0 ? points : points.slice(0, end + 1);
}

/** Two points onward, half the water and all of it through. */
function step(path: CloggingPath, from: Point, water: number): [Point, Point] {
  const mid = path.at(from.water + water / 2);
  const end = path.at(from.water + water);
  const [a, b, c] = [from, mid, end].map(({ media }) => 1 / Math.max(NO_FLOW, media));
  return [
    { ...mid, ran: from.ran + (water * (5 * a + 8 * b - c)) / 24 },
    { ...end, ran: from.ran + (water * (a + 4 * b + c)) / 6 },
  ];
}

/** Both points, with the one between at which the media lift: there the course bends, for the gap opens from it on. */
function withLift(path: CloggingPath, from: Point, mid: Point, end: Point): Point[] {
  if (isLifted(from) || !isLifted(end)) return [mid, end];
  return isLifted(mid) ? [turn(path, from, mid, isLifted), mid, end] : [mid, turn(path, mid, end, isLifted), end];
}

const isLifted = ({ lift }: Clogged): boolean => lift >= 1;

/** The first point between two at which something holds that holds at the later one, by bisection on running balances. */
function turn(path: CloggingPath, from: Point, to: Point, holds: (at: Clogged) => boolean): Point {
  let low = from.water;
  let high = to.water;
  while (high - low > EXACT * high) {
    const water = (low + high) / 2;
    if (holds(path.at(water))) high = water;
    else low = water;
  }
  return step(path, from, high - from.water)[1];
}
