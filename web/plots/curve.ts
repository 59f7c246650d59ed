/** A line of values as points on the sheet. */
import { type Pixel, px } from '../section/marks.ts';
import { thin, valueAt } from './thin.ts';
import type { Axis, Window } from './time-axis.ts';

/**
 * A column's points on the axis, where it has values, at most four a px; each piece of the axis is thinned by its own scale, and no line is
 * smoothed over a seam.
 *
 * @param left px of the axis's left end
 */
export function curvePoints(
  times: Float64Array,
  values: Float64Array,
  axis: Axis,
  left: number,
  y: (value: number) => number,
): Pixel[] {
  const [first, last] = [times[0]!, times[times.length - 1]!];
  return axis.pieces.flatMap((piece) => {
    const [from, to] = [Math.max(piece.from, first), Math.min(piece.to, last)];
    if (to <= from) return [];
    const scale = (piece.right - piece.left) / (piece.to - piece.from);
    const x = (t: number): number => left + piece.left + (t - piece.from) * scale;
    return thin(times, values, [from, to], (to - from) * scale).map(([t, value]): Pixel => [x(t), y(value)]);
  });
}

/** A path through points; of points on one line only the first and the last are told. */
export function pathThrough(points: readonly Pixel[]): string {
  let d = '';
  let [lastX, lastY] = ['', ''];
  for (const [x, y] of points) {
    const [nextX, nextY] = [px(x), px(y)];
    if (nextX === lastX && nextY === lastY) continue;
    d +=
      d === ''
        ? `M${nextX} ${nextY}`
        : nextX === lastX
          ? `V${nextY}`
          : nextY === lastY
            ? `H${nextX}`
            : `L${nextX} ${nextY}`;
    [lastX, lastY] = [nextX, nextY];
  }
  return d;
}

/** The part of a curve between two moments, its ends set in. */
export function stretchOf(
  times: Float64Array,
  values: Float64Array,
  [from, to]: Window,
  axis: Axis,
  left: number,
  y: (value: number) => number,
): Pixel[] {
  const points = curvePoints(times, values, axis, left, y);
  const [start, end] = [left + axis.x(from), left + axis.x(to)];
  const inner = points.filter(([x]) => x > start && x < end);
  return [[start, y(valueAt(times, values, from))], ...inner, [end, y(valueAt(times, values, to))]];
}

/** Lowest and highest px of points within [left, right]; undefined where none reach. */
export function extentWithin(
  points: readonly Pixel[],
  left: number,
  right: number,
): readonly [top: number, bottom: number] | undefined {
  let [top, bottom] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const take = (y: number): void => {
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  };
  for (let i = firstFrom(points, left); i < points.length; i++) {
    const [x, y] = points[i]!;
    const before = points[i - 1];
    if (before && before[0] < left) take(between(before, points[i]!, Math.min(left, x)));
    if (x > right) {
      if (before && before[0] <= right) take(between(before, points[i]!, right));
      break;
    }
    take(y);
  }
  return bottom < top ? undefined : [top, bottom];
}

function firstFrom(points: readonly Pixel[], x: number): number {
  let [low, high] = [0, points.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle]![0] < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

const between = ([x1, y1]: Pixel, [x2, y2]: Pixel, x: number): number =>
  x2 > x1 ? y1 + ((y2 - y1) * (x - x1)) / (x2 - x1) : y2;
