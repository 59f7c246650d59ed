import { GRAVITY } from './constants.ts';

/** Porosities between which the viscous loss passes from a bed of grains to a mat of fibres, −. */
const FIBRE_FROM = 0.91;
const FIBRE_OVER = 0.02;

/** Ergun's viscous coefficient, head per length per velocity, s/m: 150 ν (1−ε)²/(g ε³ d²). */
export function ergunViscous(porosity: number, grain: number, viscosity: number): number {
  const solid = 1 - porosity;
  return (150 * viscosity * solid * solid) / (GRAVITY * porosity ** 3 * grain * grain);
}

/** Ergun's inertial coefficient, head per length per velocity², s²/m²: 1.75 (1−ε)/(g ε³ d). */
export function ergunInertial(porosity: number, grain: number): number {
  return (1.75 * (1 - porosity)) / (GRAVITY * porosity ** 3 * grain);
}

/**
 * Davies' viscous coefficient of a fibre mat, s/m: 64 ν c^1.5 (1 + 56 c³)/(g d²), c the solid fraction, d the fibre.
 *
 * Davies (1952), Proc. Inst. Mech. Engrs. 1B; formula from memory. Valid for c below about 0.3.
 */
export function daviesViscous(porosity: number, fibre: number, viscosity: number): number {
  const c = 1 - porosity;
  return (64 * viscosity * c ** 1.5 * (1 + 56 * c ** 3)) / (GRAVITY * fibre * fibre);
}

/**
 * Viscous coefficient of a layer, s/m: Ergun (1952) for grains and coarse mats, Davies above porosity 0.93, blended
 * from 0.91. Up to there Ergun on the fibre's own diameter keeps within 30 % of Davies.
 */
export function viscousCoefficient(porosity: number, grain: number, viscosity: number): number {
  const t = Math.min(1, Math.max(0, (porosity - FIBRE_FROM) / FIBRE_OVER));
  const grains = ergunViscous(porosity, grain, viscosity);
  return t === 0 ? grains : (1 - t) * grains + t * daviesViscous(porosity, grain, viscosity);
}

/** Loss coefficients of a layer per metre of thickness: Δh/L = viscous · u + inertial · u². */
export interface LayerLoss {
  readonly viscous: number;
  readonly inertial: number;
}

/**
 * Loss of a layer at its present porosity.
 *
 * @param grain grain or fibre diameter, m; undefined where a permittivity is given
 * @param permittivity ASTM D4491, 1/s: the clean mat loses u/ψ over its whole thickness
 * @param thickness m
 * @param porosity clean, 0..1
 * @param present porosity left by the deposit
 */
export function layerLoss(
  grain: number | undefined,
  permittivity: number | undefined,
  thickness: number,
  porosity: number,
  present: number,
  viscosity: number,
): LayerLoss {
  if (permittivity !== undefined) {
    // The diameter cancels in the ratio, so any will do.
    const ratio = viscousCoefficient(present, 1, viscosity) / viscousCoefficient(porosity, 1, viscosity);
    return { viscous: ratio / (permittivity * thickness), inertial: 0 };
  }
  const d = grain as number;
  return { viscous: viscousCoefficient(present, d, viscosity), inertial: ergunInertial(present, d) };
}

/**
 * Velocity in the gap between media and wall, m/s: the root of Δh = 12 ν L u/(g δ²) + (1.5 + 0.04 L/2δ) u²/2g.
 *
 * Flow between parallel plates (White, Fluid Mechanics) with an entrance and exit loss and the plates' turbulent
 * friction.
 * @param head Δh along the gap, m, ≥ 0
 * @param length wetted height L, m
 * @param width δ, m
 * @param out receives [velocity m/s, ∂/∂head 1/s, ∂/∂width 1/s, ∂/∂length 1/s]
 */
export function gapVelocity(head: number, length: number, width: number, viscosity: number, out: Float64Array): void {
  if (width <= 0) {
    out.fill(0, 0, 4);
    return;
  }
  const a = (12 * viscosity * length) / (GRAVITY * width * width);
  const b = (1.5 + (0.02 * length) / width) / (2 * GRAVITY);
  const root = Math.sqrt(a * a + 4 * b * head);
  const u = root > 0 ? (2 * head) / (a + root) : 0;
  out[0] = u;
  out[1] = root > 0 ? 1 / root : 0;
  const byLength = (12 * viscosity * u) / (GRAVITY * width * width) + (0.01 * u * u) / (GRAVITY * width);
  const byWidth = (-2 * a * u) / width - (0.01 * length * u * u) / (GRAVITY * width * width);
  out[2] = -byWidth * out[1];
  out[3] = -byLength * out[1];
}

/**
 * Head across the media at which they lift, m: submerged weight and hold-down over ρ g A.
 *
 * The condition of heave under upward seepage (Das, Principles of Geotechnical Engineering, ch. 9).
 * @param weight submerged weight plus what holds the media down, N
 */
export function liftHead(weight: number, area: number, density: number): number {
  return weight / (density * GRAVITY * area);
}
