export type Point = readonly [t: number, value: number];

/** First row at or after `t`; the count of rows where there is none. */
export function rowAt(times: ArrayLike<number>, t: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The value at a moment, straight between rows, and held beyond the first and the last. */
export function valueAt(times: ArrayLike<number>, values: ArrayLike<number>, t: number): number {
  const row = rowAt(times, t);
  if (row === 0 || times[row] === t) return values[row]!;
  if (row === times.length) return values[row - 1]!;
  const [before, after] = [times[row - 1]!, times[row]!];
  return values[row - 1]! + ((values[row]! - values[row - 1]!) * (t - before)) / (after - before);
}

/**
 * The rows of a window, at most four a pixel: of each pixel's rows the first, the lowest, the highest and the last,
 * in the order of time. A peak of one row therefore stays in sight at every zoom. The window's ends are set in.
 */
export function thin(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  [from, to]: readonly [from: number, to: number],
  pixels: number,
): Point[] {
  const points: Point[] = [[from, valueAt(times, values, from)]];
  const end = rowAt(times, to);
  const perPixel = (to - from) / Math.max(1, Math.floor(pixels));
  let row = rowAt(times, from);
  while (row < end) {
    const first = row;
    const pixelEnd = from + (Math.floor((times[first]! - from) / perPixel) + 1) * perPixel;
    let [lowest, highest] = [first, first];
    for (; row < end && (row === first || times[row]! < pixelEnd); row++) {
      if (values[row]! < values[lowest]!) lowest = row;
      if (values[row]! > values[highest]!) highest = row;
    }
    const kept = new Set([first, Math.min(lowest, highest), Math.max(lowest, highest), row - 1]);
    for (const each of kept) points.push([times[each]!, values[each]!]);
  }
  points.push([to, valueAt(times, values, to)]);
  return points;
}
