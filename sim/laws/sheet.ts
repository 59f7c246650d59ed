import { GRAVITY } from './constants.ts';

/** Critical depth of a flow per width q (m²/s), m: (q²/g)^⅓ (Chow 1959, Open-Channel Hydraulics). */
export function criticalDepth(flowPerWidth: number): number {
  return Math.cbrt((flowPerWidth * flowPerWidth) / GRAVITY);
}

/**
 * How far out from its lip a sheet lands, m: free fall through `fall` at the critical velocity q/y_c, air neglected.
 *
 * @param flowPerWidth m²/s, ≥ 0
 * @param fall m, ≥ 0
 */
export function reachOfSheet(flowPerWidth: number, fall: number): number {
  const depth = criticalDepth(flowPerWidth);
  return depth > 0 ? (flowPerWidth / depth) * Math.sqrt((2 * Math.max(0, fall)) / GRAVITY) : 0;
}
