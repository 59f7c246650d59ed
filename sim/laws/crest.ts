import { GRAVITY } from './constants.ts';

/** Discharge of an ideal broad crest per meter at 1 m of head, (2/3)^1.5 √g, m^0.5/s (ISO 3846 form). */
export const IDEAL_CREST = (2 / 3) ** 1.5 * Math.sqrt(GRAVITY);

/**
 * A crest as a level takes it off: straight pieces between surveyed points, each with its width, its lower and its
 * upper end. What lies out of level, a V, and a second stone set a little higher all come from the same pieces.
 */
export interface CrestLine {
  /** Three figures a piece: width m, elevation of the lower end m, elevation of the upper end m. */
  readonly pieces: Float64Array;
  /** Lowest point, m. */
  readonly lowest: number;
  /** Discharge coefficient on the ideal broad crest, −. */
  readonly cd: number;
  /** Length along the flow, m; 0: `cd` holds at every head. */
  readonly along: number;
  /** Radius of the upstream edge, m. */
  readonly nose: number;
}

/** Builds a crest from [station m, elevation m] points in order of station. */
export function makeCrest(points: readonly (readonly [number, number])[], cd: number, along = 0, nose = 0): CrestLine {
  const pieces = new Float64Array(3 * (points.length - 1));
  for (let i = 0; i + 1 < points.length; i++) {
    const [s0, z0] = points[i];
    const [s1, z1] = points[i + 1];
    pieces.set([s1 - s0, Math.min(z0, z1), Math.max(z0, z1)], 3 * i);
  }
  return { pieces, lowest: Math.min(...points.map(([, z]) => z)), cd, along, nose };
}

/** Head over length along the flow, and the coefficient there: Bos (1989), ILRI Publication 20. */
const BOS_RATIO = [0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.5];
const BOS_CD = [0.848, 0.86, 0.88, 0.92, 0.96, 1.0, 1.05];

/**
 * Discharge coefficient of a square-edged broad crest by its head, raised for a rounded upstream edge.
 *
 * Bos (1989), Discharge Measurement Structures, ILRI Publ. 20 (linear between the points, constant outside 0.4..1.5);
 * rounding by Hulsing (1967), USGS TWRI 3-A5: 1 + 0.63 R/h up to R/h = 0.14.
 * @param head over the lowest point of the piece, m, > 0
 * @param out receives [coefficient −, its slope by head 1/m]
 */
export function broadCrestCoefficient(head: number, along: number, nose: number, out: Float64Array): void {
  const ratio = head / along;
  let c = BOS_CD[0];
  let slope = 0;
  const last = BOS_RATIO.length - 1;
  if (ratio >= BOS_RATIO[last]) c = BOS_CD[last];
  else if (ratio > BOS_RATIO[0]) {
    let i = 0;
    while (ratio > BOS_RATIO[i + 1]) i++;
    slope = (BOS_CD[i + 1] - BOS_CD[i]) / (BOS_RATIO[i + 1] - BOS_RATIO[i]);
    c = BOS_CD[i] + slope * (ratio - BOS_RATIO[i]);
    slope /= along;
  }
  const rounding = nose / head;
  const factor = 1 + 0.63 * Math.min(rounding, 0.14);
  out[0] = c * factor;
  out[1] = slope * factor - (rounding < 0.14 ? (c * 0.63 * rounding) / head : 0);
}

/** Below this value of 1 − S^1.5 the chord of Villemonte's curve stands for it, so that the slope stays finite. */
const DROWNED = 0.001;
const DROWNED_SLOPE = DROWNED ** (0.385 - 1);
/**
 * Over a shallow crest the chord reaches to this difference of levels, m: nearer than a tenth of a millimeter the law's
 * slope is not hydraulics, and no integrator comes to rest on a root that steep.
 */
const LEVEL_DIFFERENCE = 1e-4;
const SHALLOW = (1.5 * LEVEL_DIFFERENCE) / DROWNED;

/** Value of 1 − S^1.5 from which the chord runs under a head, m: 0.001 from 0.15 m of head up. */
export function chordFrom(head: number): number {
  return head >= SHALLOW ? DROWNED : Math.min(1, (1.5 * LEVEL_DIFFERENCE) / head);
}

/**
 * Villemonte's reduction for a drowned crest, (1 − S^1.5)^0.385.
 *
 * Villemonte (1947), Engineering News-Record 139(26). Published for thin plates; a broad stone stays free to S ≈ 0.7,
 * so this errs towards less flow.
 * @param s head downstream over head upstream, 0..1
 * @param out receives [factor −, its slope by S −, its slope by the chord's start −]
 * @param drowned value of 1 − S^1.5 from which the chord runs
 */
export function villemonte(s: number, out: Float64Array, drowned = DROWNED): void {
  const root = Math.sqrt(s);
  const rest = 1 - s * root;
  if (rest < drowned) {
    const slope = drowned === DROWNED ? DROWNED_SLOPE : drowned ** (0.385 - 1);
    out[0] = slope * rest;
    out[1] = -1.5 * root * slope;
    out[2] = (-0.615 * out[0]) / drowned;
  } else {
    out[0] = rest ** 0.385;
    out[1] = (-0.5775 * root * out[0]) / rest;
    out[2] = 0;
  }
}

const pair = new Float64Array(3);

function overFrom(c: CrestLine, up: number, down: number, out: Float64Array): void {
  const pieces = c.pieces;
  let flow = 0;
  let byUp = 0;
  let byDown = 0;
  for (let i = 0; i < pieces.length; i += 3) {
    const low = pieces[i + 1];
    const head = up - low;
    if (head <= 0) continue;
    const span = pieces[i + 2] - low;
    const wet = head >= span ? pieces[i] : (pieces[i] * head) / span;
    const a = Math.sqrt(head);
    const b = head > span ? Math.sqrt(head - span) : 0;
    const width = (IDEAL_CREST * wet) / (a + b);
    let cd = c.cd;
    let cdSlope = 0;
    if (c.along > 0) {
      broadCrestCoefficient(head, c.along, c.nose, pair);
      cd = pair[0];
      cdSlope = pair[1];
    }
    const free = 0.4 * width * (head * head + a * b * head + head * b * b + a * b * b * b + b * b * b * b);
    let q = cd * free;
    let slope = cd * width * (head + a * b + b * b) + cdSlope * free;
    if (down > low) {
      const s = (down - low) / head;
      const chord = chordFrom(head);
      villemonte(s, pair, chord);
      const drown = (q * pair[1]) / head;
      const byChord = chord > DROWNED && chord < 1 ? (-q * pair[2] * chord) / head : 0;
      slope = slope * pair[0] - drown * s + byChord;
      byDown += drown;
      q *= pair[0];
    }
    flow += q;
    byUp += slope;
  }
  out[0] = flow;
  out[1] = byUp;
  out[2] = byDown;
}

/**
 * Flow over a crest between two levels, m³/s; the same with its sign turned when the levels are swapped.
 *
 * Each straight piece passes the integral of Cd (2/3)^1.5 √g h^1.5 along it, in the closed form
 * (2/5)(a⁴ + a³b + a²b² + ab³ + b⁴)/(a + b), a and b the roots of the heads at its ends, which holds for level pieces
 * and does not cancel; each is drowned by Villemonte over its own lowest point. Below some 20 mm of head surface
 * tension matters: ± 10 %.
 * @param up, down water levels on both sides, m; down −Infinity for a free fall
 * @param open fraction of every piece that is not blocked, 0..1
 * @param out receives [flow m³/s, ∂/∂up m²/s, ∂/∂down m²/s]
 */
export function crestFlow(c: CrestLine, up: number, down: number, open: number, out: Float64Array): void {
  if (up >= down) {
    overFrom(c, up, down, out);
    out[0] *= open;
    out[1] *= open;
    out[2] *= open;
  } else {
    overFrom(c, down, up, out);
    const byDown = -open * out[1];
    out[0] *= -open;
    out[1] = -open * out[2];
    out[2] = byDown;
  }
}
