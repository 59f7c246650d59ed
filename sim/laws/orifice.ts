import { GRAVITY } from './constants.ts';
import { IDEAL_CREST } from './crest.ts';

/** Head below which the outflow of a hole is linear in the head, m: keeps its slope finite. */
const LINEAR_HEAD = 0.001;

/**
 * Outflow of a hole of effective area a (contraction included) under a head: a √(2 g h), m³/s; linear below 1 mm.
 *
 * Torricelli (1644).
 * @param area effective area, m²
 * @param head m; ≤ 0 gives nothing
 * @param out receives [flow m³/s, ∂/∂head m²/s]
 */
export function holeFlow(area: number, head: number, out: Float64Array): void {
  if (head <= 0) {
    out[0] = 0;
    out[1] = 0;
  } else if (head < LINEAR_HEAD) {
    out[1] = area * Math.sqrt((2 * GRAVITY) / LINEAR_HEAD);
    out[0] = out[1] * head;
  } else {
    out[0] = area * Math.sqrt(2 * GRAVITY * head);
    out[1] = out[0] / (2 * head);
  }
}

/** Discharge coefficient of a thin lip, and of a submerged round opening, − . */
const LIP_CD = 1.08;
const OPENING_CD = 0.6;

/**
 * Flow into a standing overflow pipe, m³/s: the lesser of the weir round its edge (length π D, Cd 1.08) and its mouth
 * as an orifice, 0.6 A √(2 g h), both from the same elevation.
 *
 * Weir and orifice control of a drop inlet: US Bureau of Reclamation, Design of Small Dams (1987), ch. 9.
 * @param head water level over the pipe's edge, m
 * @param out receives [flow m³/s, ∂/∂head m²/s]
 */
export function overflowPipeFlow(diameter: number, head: number, out: Float64Array): void {
  if (head <= 0) {
    out[0] = 0;
    out[1] = 0;
    return;
  }
  const root = Math.sqrt(head);
  const weir = LIP_CD * IDEAL_CREST * Math.PI * diameter * head * root;
  const mouth = OPENING_CD * ((Math.PI * diameter * diameter) / 4) * Math.sqrt(2 * GRAVITY) * root;
  out[0] = Math.min(weir, mouth);
  out[1] = (weir <= mouth ? 1.5 : 0.5) * (out[0] / head);
}
