/** Units that the sources use (NIST SP 811, exact or to all its digits), in SI. */
export const INCH = 0.0254;
export const FOOT = 0.3048;
export const YARD = 0.9144;
export const GALLON_US = 3.785411784e-3;
export const GPM = GALLON_US / 60;
export const CFS = FOOT ** 3;
export const POUND = 0.45359237;
export const POUND_FORCE = 4.4482216152605;
export const PSI = POUND_FORCE / INCH ** 2;
/** lb/ft³ in kg/m³. */
export const PCF = POUND / FOOT ** 3;
/** Mechanical horsepower, 550 ft·lbf/s. */
export const HORSEPOWER = 550 * FOOT * POUND_FORCE;
/** Standard gravity, m/s² (CGPM 1901). */
export const G = 9.80665;

/** Root of a rising function between two bounds, by halving. */
export function rootOf(rising: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 100; i++) {
    const mid = (a + b) / 2;
    if (rising(mid) < 0) a = mid;
    else b = mid;
  }
  return (a + b) / 2;
}
