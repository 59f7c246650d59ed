/** Roughness of commercial steel on which Crane's fully turbulent friction factor rests, m (0.0018 in, rounded). */
const CRANE_ROUGHNESS = 4.57e-5;

/**
 * Fully turbulent friction factor of a bore, f_T = 0.25/log10(ε/(3.7 D))² with ε of commercial steel, −.
 *
 * Crane TP-410 (2009), appendix A.
 * @param diameter m
 */
export function turbulentFriction(diameter: number): number {
  return 0.25 / Math.log10(CRANE_ROUGHNESS / (3.7 * diameter)) ** 2;
}

/** Fittings whose K is a multiple of f_T (Crane TP-410, "K" factor table; from memory). */
const MULTIPLE: Readonly<Record<string, number>> = { elbow90: 30, elbow45: 16, ballValve: 3, checkSwing: 100 };
/** Fittings whose K is a plain number: sharp flush entrance, exit (Crane TP-410). */
const PLAIN: Readonly<Record<string, number>> = { entrance: 0.5, exit: 1.0 };

/**
 * Sum of the loss coefficients of counted fittings, on the velocity head of a pipe of that bore, −.
 *
 * @param fittings count by name; a name not in Crane's short list here adds nothing (the reader of files refuses it)
 */
export function fittingsLoss(fittings: Readonly<Partial<Record<string, number>>>, diameter: number): number {
  const ft = turbulentFriction(diameter);
  let k = 0;
  for (const [name, count] of Object.entries(fittings))
    k += (count ?? 0) * ((MULTIPLE[name] ?? 0) * ft + (PLAIN[name] ?? 0));
  return k;
}
