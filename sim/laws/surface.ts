/** Depth over which evaporation from a nearly dry basin fades out, m. */
const FILM = 0.001;

/**
 * Evaporation from an open surface, m³/s: rate × area, fading linearly over the last millimeter of depth.
 *
 * @param rate m/s of depth
 * @param area open water surface, m², and its growth with level, m²/m
 * @param depth of the water over the basin's floor, m
 * @param out receives [flow m³/s, ∂/∂level m²/s]
 */
export function evaporationFlow(rate: number, area: number, growth: number, depth: number, out: Float64Array): void {
  if (depth <= 0) {
    out[0] = 0;
    out[1] = (rate * area) / FILM;
  } else if (depth < FILM) {
    out[0] = (rate * area * depth) / FILM;
    out[1] = rate * ((growth * depth + area) / FILM);
  } else {
    out[0] = rate * area;
    out[1] = rate * growth;
  }
}

/**
 * Flow of a float valve, m³/s: full at its low level, none at its set level, linear in between.
 *
 * @param out receives [flow m³/s, ∂/∂level m²/s]
 */
export function floatValveFlow(full: number, low: number, set: number, level: number, out: Float64Array): void {
  const opening = (set - level) / (set - low);
  out[0] = full * Math.min(1, Math.max(0, opening));
  out[1] = opening > 0 && opening < 1 ? -full / (set - low) : 0;
}
