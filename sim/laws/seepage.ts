/**
 * Water that finds its way under and behind a stone: k (max(up, foot) − max(down, foot)), m³/s.
 *
 * Darcy's law with the path's geometry lumped into k; no value of k is published for garden stones.
 * @param k m²/s, ≥ 0
 * @param foot elevation of the path's lower end, m
 * @param out receives [flow m³/s, ∂/∂up m²/s, ∂/∂down m²/s]
 */
export function seepageFlow(k: number, foot: number, up: number, down: number, out: Float64Array): void {
  out[0] = k * (Math.max(up, foot) - Math.max(down, foot));
  out[1] = up > foot ? k : 0;
  out[2] = down > foot ? -k : 0;
}
