/** Reynolds numbers between which a pipe's flow is neither laminar nor turbulent, −. */
export const LAMINAR_END = 2000;
export const TURBULENT_START = 4000;

const LN10_HALF = Math.LN10 / 2;

/**
 * Colebrook's friction factor (Darcy) and its slope in logarithms.
 *
 * Colebrook (1939): 1/√f = −2 log10(2.51/(Re √f) + ε/(3.7 D)). With w = (ln 10/2)/√f it reads x + ln x = s for
 * x = w + A, s = A + B, A = Re ε/(8.0666 D), B = ln Re − 0.7794 (Praks & Brkić 2020, Mathematics 8(1), 26), whose
 * explicit start is good to 0.02 %; one Newton step makes it exact to 1e-8.
 * @param reynolds −, ≥ 4000
 * @param relativeRoughness ε/D, 0..0.05
 * @param out receives [f −, d ln f/d ln Re −]
 */
export function colebrook(reynolds: number, relativeRoughness: number, out: Float64Array): void {
  // 3.7 · 2.51 · 2/ln 10 and ln(2.51 · 2/ln 10) to full precision, so that the exact root is Colebrook's own.
  const a = (reynolds * relativeRoughness) / (3.7 * (2.51 / LN10_HALF));
  const s = a + Math.log(reynolds) - Math.log(2.51 / LN10_HALF);
  const c = Math.log(s);
  let x = s - c + c / (s - 0.5588 * c + 1.2079);
  x = (x * (1 + s - Math.log(x))) / (1 + x);
  const w = x - a;
  out[0] = (LN10_HALF / w) ** 2;
  out[1] = -2 / (x + 1);
}

/**
 * What the friction factor does between laminar and turbulent flow in a pipe of one relative roughness: the value and
 * slope at Re 4000, between which and the laminar end a cubic in (ln Re, ln f) runs with the true slopes at both ends.
 */
export interface Transition {
  readonly relativeRoughness: number;
  readonly lnF: number;
  readonly slope: number;
}

const pair = new Float64Array(2);
const LN_LAMINAR_F = Math.log(64 / LAMINAR_END);
const WIDTH = Math.log(TURBULENT_START / LAMINAR_END);

export function makeTransition(relativeRoughness: number): Transition {
  colebrook(TURBULENT_START, relativeRoughness, pair);
  return { relativeRoughness, lnF: Math.log(pair[0]), slope: pair[1] };
}

/**
 * Darcy friction factor at any Reynolds number: 64/Re below 2000 (Hagen–Poiseuille), Colebrook above 4000, and a cubic
 * between that keeps the head loss smooth and rising with the flow.
 *
 * @param out receives [f −, d ln f/d ln Re −]
 */
export function frictionFactor(reynolds: number, t: Transition, out: Float64Array): void {
  if (reynolds >= TURBULENT_START) colebrook(reynolds, t.relativeRoughness, out);
  else if (reynolds <= LAMINAR_END) {
    out[0] = 64 / reynolds;
    out[1] = -1;
  } else {
    const u = Math.log(reynolds / LAMINAR_END) / WIDTH;
    const rise = t.lnF - LN_LAMINAR_F;
    // Cubic Hermite on the unit interval: value 0 and slope −WIDTH at the laminar end, rise and t.slope·WIDTH above.
    const m0 = -WIDTH;
    const m1 = t.slope * WIDTH;
    const c2 = 3 * rise - 2 * m0 - m1;
    const c3 = m0 + m1 - 2 * rise;
    out[0] = Math.exp(LN_LAMINAR_F + u * (m0 + u * (c2 + u * c3)));
    out[1] = (m0 + u * (2 * c2 + 3 * u * c3)) / WIDTH;
  }
}
