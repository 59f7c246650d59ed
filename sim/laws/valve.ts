/**
 * Loss coefficient of a ball valve by its opening, −: log10 K = 2.945 − 3.840 x from x = 0.05 up, 566 (0.05/x)² below.
 *
 * Miller (1978), Internal Flow Systems, sec. 14.6, as fitted in the FluidDissipation library for Modelica. Valves
 * differ by a factor 2 either way: a handle position is a starting point.
 * @param opening x = 1 − handle angle/90°, 0 shut .. 1 open; Infinity where shut
 */
export function ballValveLoss(opening: number): number {
  if (opening <= 0) return Number.POSITIVE_INFINITY;
  return opening >= 0.05 ? 10 ** (2.945 - 3.84 * opening) : 566 * (0.05 / opening) ** 2;
}

/** Weisbach's plug cock: degrees closed and K, in every hydraulics handbook (some points from memory). */
const COCK_ANGLE = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65];
const COCK_K = [0.05, 0.05, 0.29, 0.75, 1.56, 3.1, 5.47, 9.68, 17.3, 31.2, 52.6, 106, 206, 486];
/** From this angle on a cock passes nothing, degrees closed. */
const COCK_SHUT = 82.5;

/**
 * Loss coefficient of a plug cock by its opening, −; linear in log K between the points and beyond, shut from 82.5°.
 *
 * Weisbach (1855), as tabled in Perry's Chemical Engineers' Handbook. What many textbooks print for ball valves;
 * 2 to 4.5 times a ball valve's loss, so the upper bracket.
 */
export function cockLoss(opening: number): number {
  const angle = 90 * (1 - opening);
  if (angle >= COCK_SHUT) return Number.POSITIVE_INFINITY;
  let i = 0;
  while (i < COCK_ANGLE.length - 2 && angle > COCK_ANGLE[i + 1]) i++;
  const share = (angle - COCK_ANGLE[i]) / (COCK_ANGLE[i + 1] - COCK_ANGLE[i]);
  return COCK_K[i] * (COCK_K[i + 1] / COCK_K[i]) ** share;
}
