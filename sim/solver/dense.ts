/**
 * Value of a component inside a step: (1−θ) y₀ + θ (y₁ + (1−θ)(k₁ + θ k₂)), a cubic.
 *
 * @param theta 0 at the start of the step, 1 at its end
 */
export function denseValue(y0: number, y1: number, k1: number, k2: number, theta: number): number {
  const rest = 1 - theta;
  return rest * y0 + theta * (y1 + rest * (k1 + theta * k2));
}

/** Where the cubic of a step is flat, ascending inside (0, 1); at most two. */
export function flatPoints(y0: number, y1: number, k1: number, k2: number): number[] {
  const c1 = y1 - y0 + k1;
  const c2 = k2 - k1;
  // Slope c1 + 2 c2 θ − 3 k2 θ².
  const roots: number[] = [];
  const discriminant = c2 * c2 + 3 * k2 * c1;
  if (discriminant < 0) return roots;
  const q = c2 >= 0 ? c2 + Math.sqrt(discriminant) : c2 - Math.sqrt(discriminant);
  if (k2 !== 0) roots.push(q / (3 * k2));
  if (q !== 0) roots.push(-c1 / q);
  return roots.filter((r) => r > 0 && r < 1).sort((p, r) => p - r);
}

/**
 * First moment inside a step at which a component reaches a value from one side, as θ; −1 where it does not.
 *
 * @param direction +1: from below, −1: from above; the start must lie on that side
 */
export function firstCrossing(
  y0: number,
  y1: number,
  k1: number,
  k2: number,
  value: number,
  direction: 1 | -1,
): number {
  // The bulge of the cubic over its chord is at most a quarter of the greatest inner coefficient.
  const bulge = 0.25 * Math.max(Math.abs(k1), Math.abs(k1 + k2));
  if (Math.max(direction * y0, direction * y1) + bulge < direction * value) return -1;
  let from = 0;
  for (const to of [...flatPoints(y0, y1, k1, k2), 1]) {
    if (direction * (denseValue(y0, y1, k1, k2, to) - value) >= 0)
      return narrow((t) => direction * (denseValue(y0, y1, k1, k2, t) - value), from, to);
    from = to;
  }
  return -1;
}

/** The end of a bracket whose value is ≥ 0, narrowed by bisection with regula falsi steps to the last bit. */
function narrow(g: (theta: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  let gLow = g(low);
  let gHigh = g(high);
  for (let i = 0; i < 200 && high - low > 1e-15; i++) {
    const chord = high - (gHigh * (high - low)) / (gHigh - gLow);
    const mid = i % 3 < 2 && chord > low && chord < high ? chord : (low + high) / 2;
    if (mid <= low || mid >= high) break;
    const gMid = g(mid);
    if (gMid >= 0) {
      high = mid;
      gHigh = gMid;
      if (gMid === 0) break;
    } else {
      low = mid;
      gLow = gMid;
    }
  }
  return high;
}
