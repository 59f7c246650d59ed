import { GRAVITY } from './constants.ts';

/** A pump's curve at full speed: a cubic between points (flow m³/s, head m, slope of the head s/m²). */
export interface PumpCurve {
  readonly flow: Float64Array;
  readonly head: Float64Array;
  readonly slope: Float64Array;
  /** Flow at which the curve reaches zero head, m³/s; Infinity where it never does. */
  readonly freeFlow: number;
}

/**
 * Slopes of the monotone cubic through points.
 *
 * Fritsch & Carlson (1980), SIAM J. Numer. Anal. 17: interior slopes the mean of the neighboring secants, end slopes
 * the end secants, limited to the circle of radius 3 interval by interval from the left, in place.
 */
export function monotoneSlopes(x: ArrayLike<number>, y: ArrayLike<number>): Float64Array {
  const n = x.length;
  const secant = Float64Array.from({ length: n - 1 }, (_, i) => (y[i + 1] - y[i]) / (x[i + 1] - x[i]));
  const slope = Float64Array.from({ length: n }, (_, i) => {
    if (i === 0) return secant[0];
    if (i === n - 1) return secant[n - 2];
    return secant[i - 1] * secant[i] <= 0 ? 0 : (secant[i - 1] + secant[i]) / 2;
  });
  for (let i = 0; i < n - 1; i++) {
    if (secant[i] === 0) {
      slope[i] = 0;
      slope[i + 1] = 0;
      continue;
    }
    const a = slope[i] / secant[i];
    const b = slope[i + 1] / secant[i];
    const radius = Math.hypot(a, b);
    if (radius > 3) {
      slope[i] = (3 * a * secant[i]) / radius;
      slope[i + 1] = (3 * b * secant[i]) / radius;
    }
  }
  return slope;
}

const pair = new Float64Array(2);

/** Head and its slope at full speed; the last slope goes on beyond the last point. out: [m, s/m²]. */
export function curveHead(c: PumpCurve, flow: number, out: Float64Array): void {
  const last = c.flow.length - 1;
  if (flow >= c.flow[last]) {
    out[1] = c.slope[last];
    out[0] = c.head[last] + out[1] * (flow - c.flow[last]);
    return;
  }
  let i = last - 1;
  while (i > 0 && flow < c.flow[i]) i--;
  const width = c.flow[i + 1] - c.flow[i];
  const u = (flow - c.flow[i]) / width;
  const rise = c.head[i + 1] - c.head[i];
  const m0 = c.slope[i] * width;
  const m1 = c.slope[i + 1] * width;
  const c2 = 3 * rise - 2 * m0 - m1;
  const c3 = m0 + m1 - 2 * rise;
  out[0] = c.head[i] + u * (m0 + u * (c2 + u * c3));
  out[1] = (m0 + u * (2 * c2 + 3 * u * c3)) / width;
}

function flowAtZeroHead(c: Omit<PumpCurve, 'freeFlow'>): number {
  const last = c.flow.length - 1;
  const curve = { ...c, freeFlow: 0 };
  if (c.head[last] > 0) {
    return c.slope[last] < 0 ? c.flow[last] - c.head[last] / c.slope[last] : Number.POSITIVE_INFINITY;
  }
  let low = 0;
  let high = c.flow[last];
  while (high - low > 1e-15 * high) {
    const mid = (low + high) / 2;
    if (mid === low || mid === high) break;
    curveHead(curve, mid, pair);
    if (pair[0] > 0) low = mid;
    else high = mid;
  }
  return high;
}

function finish(flow: Float64Array, head: Float64Array, slope: Float64Array): PumpCurve {
  return { flow, head, slope, freeFlow: flowAtZeroHead({ flow, head, slope }) };
}

/** The maker's points (flow m³/s ascending, head m not rising), joined by Fritsch & Carlson's cubic. */
export function curveFromPoints(points: readonly (readonly [number, number])[]): PumpCurve {
  const flow = Float64Array.from(points, ([q]) => q);
  const head = Float64Array.from(points, ([, h]) => h);
  return finish(flow, head, monotoneSlopes(flow, head));
}

/**
 * The two figures on the box, H = H₀ (1 − (Q/Q_max)²): good to some 12 %, our estimate. A parabola is its own cubic.
 *
 * @param flow Q_max at no head, m³/s
 * @param head H₀ at no flow, m
 */
export function curveFromBox(flow: number, head: number): PumpCurve {
  return finish(Float64Array.of(0, flow), Float64Array.of(head, 0), Float64Array.of(0, (-2 * head) / flow));
}

/**
 * Head of the pump at a speed: n² H₁(Q/n) by the affinity laws (Crane TP-410, 2009, ch. 5).
 *
 * Beyond the flow at which the curve meets zero head the pump is driven, and resists as if it stood:
 * −K (V² − V₀²)/2g, which at n = 0 is the standing pump.
 * @param flow m³/s, ≥ 0
 * @param speed n, 0..1.2
 * @param standing K V²/2g per flow², s²/m⁵
 * @param out receives [head m, ∂/∂flow s/m², ∂/∂speed m]
 */
export function pumpHead(c: PumpCurve, flow: number, speed: number, standing: number, out: Float64Array): void {
  const free = speed * c.freeFlow;
  if (speed <= 0 || flow > free) {
    const start = speed > 0 ? free : 0;
    out[0] = -standing * (flow * flow - start * start);
    out[1] = -2 * standing * flow;
    out[2] = speed > 0 ? 2 * standing * start * c.freeFlow : 0;
    return;
  }
  curveHead(c, flow / speed, pair);
  out[0] = speed * speed * pair[0];
  out[1] = speed * pair[1];
  out[2] = 2 * speed * pair[0] - flow * pair[1];
}

/**
 * K of a pump that stands still, on the main's velocity head, where nothing better is known, −.
 *
 * 0.69 of the mid-curve head at the mid-curve flow: rotor held, backwards, four-quadrant data at nq 25 in Wylie &
 * Streeter (1978), Fluid Transients; good to a factor 2.
 * @param area bore of the main, m²
 */
export function standingLoss(c: PumpCurve, area: number): number {
  const flow = c.flow[c.flow.length - 1] / 2;
  curveHead(c, flow, pair);
  const velocity = flow / area;
  return (0.69 * pair[0] * 2 * GRAVITY) / (velocity * velocity);
}

/** Wire power at full speed: points (flow m³/s, W), straight between and constant beyond; one point is a constant. */
export interface PowerCurve {
  readonly flow: Float64Array;
  readonly watts: Float64Array;
  /** Wire to water; 0: `watts` holds. */
  readonly efficiency: number;
}

/**
 * Wire power of the pump: n³ P₁(Q/n) by the affinity laws, or ρ g Q H/η, W.
 *
 * @param head of the pump at that flow and speed with its slopes by flow and speed, as `pumpHead` gives them
 * @param density of the water, kg/m³
 * @param out receives [power W, ∂/∂flow W s/m³, ∂/∂speed W]
 */
export function wirePower(
  p: PowerCurve,
  flow: number,
  speed: number,
  head: Float64Array,
  density: number,
  out: Float64Array,
): void {
  out.fill(0, 0, 3);
  if (speed <= 0) return;
  if (p.efficiency > 0) {
    const perHead = (density * GRAVITY) / p.efficiency;
    if (head[0] <= 0) return;
    out[0] = perHead * flow * head[0];
    out[1] = perHead * (head[0] + flow * head[1]);
    out[2] = perHead * flow * head[2];
    return;
  }
  const q = flow / speed;
  const last = p.flow.length - 1;
  let i = last;
  while (i > 0 && q < p.flow[i]) i--;
  let watts = p.watts[i];
  let slope = 0;
  if (i < last && q > p.flow[i]) {
    slope = (p.watts[i + 1] - p.watts[i]) / (p.flow[i + 1] - p.flow[i]);
    watts += slope * (q - p.flow[i]);
  }
  const square = speed * speed;
  out[0] = square * speed * watts;
  out[1] = square * slope;
  out[2] = 3 * square * watts - speed * slope * flow;
}
