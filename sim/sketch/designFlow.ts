import { GRAVITY } from '../laws/constants.ts';
import { turbulentFriction } from '../laws/fittings.ts';

/** Darcy friction factor of a smooth plastic line at the flows of ponds, −: a handbook's middle, good to a quarter. */
const FRICTION = 0.02;
/** Losses of a feed beside its elbows: its end and an open valve, −. */
const FEED_END = 1.13;

/** A pipe as a sketch knows it: m, and a count of right-angled elbows. */
export interface SketchPipe {
  readonly bore: number;
  readonly length: number;
  readonly elbows: number;
}

/** Head lost by a pipe per squared flow, s²/m⁵, with further losses `k` on its velocity head. */
function lossFactor({ bore, length, elbows }: SketchPipe, k: number): number {
  const area = (Math.PI / 4) * bore ** 2;
  const loss = (FRICTION * length) / bore + 30 * turbulentFriction(bore) * elbows + k;
  return loss / (2 * GRAVITY * area ** 2);
}

export interface DesignSite {
  /** Rated points (flow m³/s, head m) from flow 0 up, or the two maxima on the box. */
  readonly curve: { readonly flow: number; readonly head: number } | readonly (readonly [number, number])[];
  readonly main: SketchPipe;
  /** K of entrance and check valve, −. */
  readonly mainLoss: number;
  readonly feed: SketchPipe;
  /** 1 or 2 feeds of one size that share the flow. */
  readonly feeds: number;
  /** Elevation above the pond to which the pump lifts, m. */
  readonly lift: number;
}

/**
 * The flow a site is laid out for, m³/s, before anything upstairs is known: the parabola through the box's two figures
 * against the lift and square losses, Q = √((H₀ − z)/(H₀/Q_max² + K_m + K_f/n²)). With rated points, their straight
 * lines against the same losses. 0 where the pump does not reach. Good to some 5 % of the running balance with both
 * valves open and a clean filter; no figure to judge a site by.
 */
export function designFlow({ curve, main, mainLoss, feed, feeds, lift }: DesignSite): number {
  const losses = lossFactor(main, mainLoss) + lossFactor(feed, FEED_END) / feeds ** 2;
  if ('head' in curve) {
    const spare = curve.head - lift;
    return spare > 0 ? Math.sqrt(spare / (curve.head / curve.flow ** 2 + losses)) : 0;
  }
  const spare = (q: number): number => headOf(curve, q) - lift - losses * q * q;
  let low = 0;
  let high = curve.at(-1)?.[0] ?? 0;
  if (spare(0) <= 0) return 0;
  if (spare(high) >= 0) return high;
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2;
    if (spare(mid) > 0) low = mid;
    else high = mid;
  }
  return low;
}

/** Head at a flow on the straight lines between rated points, m. */
function headOf(points: readonly (readonly [number, number])[], q: number): number {
  const i = Math.max(
    1,
    points.findIndex(([flow]) => flow >= q),
  );
  const [q0, h0] = points[i - 1] ?? [0, 0];
  const [q1, h1] = points[i] ?? [q0 + 1, h0];
  return h0 + ((h1 - h0) * (q - q0)) / (q1 - q0);
}
