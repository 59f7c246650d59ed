import { GRAVITY } from './constants.ts';
import { makePipe, pipeLoss } from './pipe.ts';

/** A hose on a tap, open at its end. */
export interface PressedHose {
  /** Gauge pressure at the tap, Pa; read with the tap shut it gives an upper bound of the flow. */
  readonly pressure: number;
  /** m */
  readonly length: number;
  /** Inside diameter, m. */
  readonly bore: number;
  /** Height of the open end over the gauge, m; negative where it hangs lower. */
  readonly rise: number;
  /** Loss coefficients on the hose's velocity head, the jet's own 1 included. */
  readonly k: number;
}

/** Plastic in use: equivalent sand roughness of a hose's bore, m. Our default. */
const ROUGHNESS = 1e-5;
/** Halvings of the bracket: to the last digit of a double. */
const HALVINGS = 60;

/**
 * Flow that a pressure drives through a hose, m³/s: p/(ρ g) = (f L/D + k) V²/2g + rise (Darcy–Weisbach, f by
 * `frictionFactor`); 0 where the pressure does not lift it.
 *
 * @param density kg/m³
 * @param viscosity kinematic, m²/s
 */
export function hoseFlow(hose: PressedHose, density: number, viscosity: number): number {
  const drive = hose.pressure / (density * GRAVITY) - hose.rise;
  if (drive <= 0) return 0;
  const pipe = makePipe(hose.bore, hose.length, ROUGHNESS, hose.k, viscosity);
  const loss = new Float64Array(2);
  const lossAt = (flow: number): number => {
    pipeLoss(pipe, flow, 0, loss);
    return loss[0];
  };
  // Without friction the jet alone takes the head; no loss at all leaves a speed that a hose never has.
  let low = 0;
  let high = pipe.area * Math.sqrt((2 * GRAVITY * drive) / Math.max(hose.k, 0.01));
  while (lossAt(high) < drive) high *= 2;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (lossAt(middle) < drive) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
