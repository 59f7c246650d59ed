/**
 * Value of a component inside a step: (1−θ) y₀ + θ (y₁ + (1−θ)(k₁ + θ k₂)), a cubic.
 *
 * @param theta 0 at the start of the step, 1 at its end
 */
export function denseValue(y0: number, y1: number, k1: number, k2: number, theta: number): number {
  const rest = 1 - theta;
  return rest * y0 + theta * (y1 + rest * (k1 + theta * k2));
}

/** Slope of the cubic by θ. */
export function denseSlope(y0: number, y1: number, k1: number, k2: number, theta: number): number {
  return y1 - y0 + k1 + theta * (2 * (k2 - k1) - 3 * theta * k2);
}

/** First place after θ where the cubic of a step is flat, 1 where there is none. */
function flatAfter(y0: number, y1: number, k1: number, k2: number, theta: number): number {
  const c1 = y1 - y0 + k1;
  const c2 = k2 - k1;
  // Slope c1 + 2 c2 θ − 3 k2 θ²; where a root is no number, no comparison holds.
  const half = Math.sqrt(c2 * c2 + 3 * k2 * c1);
  const q = c2 >= 0 ? c2 + half : c2 - half;
  const one = q / (3 * k2);
  const other = -c1 / q;
  let first = 1;
  if (one > theta && one < first) first = one;
  if (other > theta && other < first) first = other;
  return first;
}

/** Where the cubic of a step is flat, ascending inside (0, 1); at most two. */
export function flatPoints(y0: number, y1: number, k1: number, k2: number): number[] {
  const first = flatAfter(y0, y1, k1, k2, 0);
  if (first === 1) return [];
  const second = flatAfter(y0, y1, k1, k2, first);
  return second === 1 ? [first] : [first, second];
}

/**
 * First moment inside a step at which a component reaches a value from one side, as θ; −1 where it does not.
 *
 * @param direction +1: from below, −1: from above; the place looked from must lie on that side
 * @param after θ from which on it is looked for
 */
export function firstCrossing(
  y0: number,
  y1: number,
  k1: number,
  k2: number,
  value: number,
  direction: 1 | -1,
  after = 0,
): number {
  // The bulge of the cubic over its chord is at most a quarter of the greatest inner coefficient.
  const bulge = 0.25 * Math.max(Math.abs(k1), Math.abs(k1 + k2));
  if (Math.max(direction * y0, direction * y1) + bulge < direction * value) return -1;
  for (let from = after; from < 1; ) {
    const to = flatAfter(y0, y1, k1, k2, from);
    const end = to === 1 ? y1 : denseValue(y0, y1, k1, k2, to);
    if (direction * (end - value) >= 0) return narrow(y0, y1, k1, k2, value, direction, from, to);
    from = to;
  }
  return -1;
}

/** Where the cubic passes a value between two places without a turn, by Newton's method kept within the bracket. */
function narrow(
  y0: number,
  y1: number,
  k1: number,
  k2: number,
  value: number,
  direction: 1 | -1,
  from: number,
  to: number,
): number {
  let low = from;
  let high = to;
  let theta = to;
  for (let i = 0; i < 100; i++) {
    const gap = denseValue(y0, y1, k1, k2, theta) - value;
    if (direction * gap >= 0) high = theta;
    else low = theta;
    const next = theta - gap / denseSlope(y0, y1, k1, k2, theta);
    if (Math.abs(next - theta) <= 1e-15) return theta;
    theta = next > low && next < high ? next : (low + high) / 2;
    if (high - low <= 1e-15) return high;
  }
  return high;
}
