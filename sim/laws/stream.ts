/**
 * Flow out of a stream at normal depth in a wide bed: (1/n) w y^(5/3) √S, m³/s.
 *
 * Manning's formula with the hydraulic radius taken as the depth (Chow 1959, Open-Channel Hydraulics); no backwater.
 * @param depth y, m; ≤ 0 gives nothing
 * @param conveyance (1/n) w √S, m^(4/3)/s
 * @param out receives [flow m³/s, ∂/∂depth m²/s]
 */
export function streamFlow(conveyance: number, depth: number, out: Float64Array): void {
  if (depth <= 0) {
    out[0] = 0;
    out[1] = 0;
    return;
  }
  const perDepth = conveyance * Math.cbrt(depth * depth);
  out[0] = perDepth * depth;
  out[1] = (5 / 3) * perDepth;
}

/** Manning's conveyance (1/n) w √S of a wide bed, m^(4/3)/s: width m, slope −, n s/m^(1/3). */
export function conveyance(width: number, slope: number, manning: number): number {
  return (width * Math.sqrt(slope)) / manning;
}

/** Normal depth of a wide bed, m, at a flow m³/s: y = (Q/conveyance)^(3/5). */
export function normalDepth(flow: number, conveyanceOfBed: number): number {
  return (flow / conveyanceOfBed) ** 0.6;
}

/**
 * Manning's n of low flow over coarse stones: 0.32 S^0.38 y^−0.16 (R in m).
 *
 * Jarrett (1984), J. Hydraulic Eng. 110(11), in SI; fitted for hydraulic radii of 0.15..2.1 m and slopes of
 * 0.002..0.04, so an extrapolation for garden streams.
 */
export function jarrettManning(slope: number, depth: number): number {
  return 0.32 * slope ** 0.38 * depth ** -0.16;
}
