/** Porosity at which a layer of media takes no more solids, −. Our default. */
export const LEAST_POROSITY = 0.15;

/**
 * Share that a layer keeps of the solids that enter it, 0..1: 1 − exp(−λ L).
 *
 * First-order capture (Iwasaki 1937, J. AWWA 29(10), 1591–1602; from memory).
 * @param capture λ, 1/m, ≥ 0
 * @param thickness L, m, ≥ 0
 */
export function capturedShare(capture: number, thickness: number): number {
  return -Math.expm1(-capture * thickness);
}

/**
 * Porosity that a deposit leaves, −: ε₀ − β σ, not below the least; a layer that began below it keeps its own.
 *
 * @param beta pore space lost per volume of settled solids
 * @param deposit σ, settled volume per volume of layer, −
 */
export function porosityLeft(clean: number, beta: number, deposit: number): number {
  return Math.max(Math.min(clean, LEAST_POROSITY), clean - beta * deposit);
}

/**
 * Settled volume that a layer takes at the most, m³: what leaves it the least porosity; none where it began below.
 *
 * @param beta pore space lost per volume of settled solids, > 0
 * @param bulk volume of the layer with its pores, m³
 */
export function depositRoom(clean: number, beta: number, bulk: number): number {
  return (Math.max(0, clean - LEAST_POROSITY) * bulk) / beta;
}
