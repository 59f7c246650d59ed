import { GRAVITY } from './constants.ts';
import { frictionFactor, LAMINAR_END, makeTransition, type Transition, TURBULENT_START } from './friction.ts';
import { type FrictionTable, frictionTable, readFriction, TABLE_END } from './frictionTable.ts';

/** In the friction term a pipe counts as at least this many diameters long: no length has an infinite slope at rest. */
const LEAST_LENGTH = 10;

/** A pipe ready to be asked for its loss. `k` may be changed when a valve on it is turned. */
export interface Pipe {
  readonly diameter: number;
  /** Bore area, m². */
  readonly area: number;
  /** Length over diameter in the friction term, −. */
  readonly lengths: number;
  /** Re per m³/s. */
  readonly reynolds: number;
  /** V²/2g per (m³/s)². */
  readonly head: number;
  readonly transition: Transition;
  readonly table: FrictionTable;
  /** Friction head per f Re², m. */
  readonly perFriction: number;
  /** Sum of the loss coefficients on the pipe's velocity head, −; Infinity shuts it. */
  k: number;
}

/**
 * @param diameter inside, m
 * @param length m
 * @param roughness equivalent sand roughness, m
 * @param k sum of loss coefficients on this pipe's velocity head, −
 * @param viscosity kinematic, m²/s
 */
export function makePipe(diameter: number, length: number, roughness: number, k: number, viscosity: number): Pipe {
  const area = (Math.PI * diameter * diameter) / 4;
  const lengths = Math.max(LEAST_LENGTH, length / diameter);
  const reynolds = diameter / (area * viscosity);
  const head = 1 / (2 * GRAVITY * area * area);
  return {
    diameter,
    area,
    lengths,
    reynolds,
    head,
    transition: makeTransition(roughness / diameter),
    table: frictionTable(roughness / diameter),
    perFriction: (lengths * head) / (reynolds * reynolds),
    k,
  };
}

const pair = new Float64Array(2);

/**
 * Head lost in a pipe: (f L/D + ΣK) V²/2g (Darcy–Weisbach), m.
 *
 * @param flow m³/s, ≥ 0
 * @param extra loss coefficient beside the pipe's own, −
 * @param out receives [head m, ∂/∂flow s/m²]
 */
export function pipeLoss(p: Pipe, flow: number, extra: number, out: Float64Array): void {
  const re = p.reynolds * flow;
  const k = (p.k + extra) * p.head;
  if (re <= LAMINAR_END) {
    // f Re² = 64 Re: linear, and so without a quotient that overflows at rest.
    pair[1] = 64;
    pair[0] = 64 * re;
  } else if (re >= TURBULENT_START && re < TABLE_END) readFriction(p.table, re, pair);
  else {
    frictionFactor(re, p.transition, pair);
    pair[1] = (2 + pair[1]) * pair[0] * re;
    pair[0] *= re * re;
  }
  out[0] = p.perFriction * pair[0] + k * flow * flow;
  out[1] = p.perFriction * pair[1] * p.reynolds + 2 * k * flow;
}

/** First guess of the flow that a head drives through a pipe, m³/s: turbulent, or laminar where that is slower. */
export function guessFlow(p: Pipe, drive: number, extra: number): number {
  const turbulent = Math.sqrt(drive / ((0.025 * p.lengths + p.k + extra) * p.head));
  const laminar = (drive * p.reynolds) / (64 * p.lengths * p.head);
  return Math.min(turbulent, laminar);
}
