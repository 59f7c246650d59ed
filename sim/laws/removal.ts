/**
 * Water that a bed frees of its waste per time, m³/s: η Q with η = 1 − exp(−k V/Q).
 *
 * First-order removal over the empty bed contact time in plug flow (Levenspiel, Chemical Reaction Engineering, 3rd ed.,
 * ch. 5). It rises with Q towards k V and never falls: more flow never cleans less.
 * @param flow Q, m³/s; none is treated of what runs backward
 * @param most k V, m³/s
 * @param out receives [η Q, its slope by Q]
 */
export function treatedFlow(flow: number, most: number, out: Float64Array): void {
  if (flow <= 0 || most <= 0) {
    out[0] = 0;
    out[1] = 0;
    return;
  }
  const x = most / flow;
  const removed = -Math.expm1(-x);
  out[0] = removed * flow;
  out[1] = removed - x * Math.exp(-x);
}
