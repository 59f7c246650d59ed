/** Friction factors and the roughness behind them, for sources that take the factor as given. */
import { frictionFactor, makeTransition } from '../../sim/laws/friction.ts';
import { rootOf } from './units.ts';

const out = new Float64Array(2);

/** Darcy friction factor of a pipe, −. */
export function friction(reynolds: number, relativeRoughness: number): number {
  frictionFactor(reynolds, makeTransition(relativeRoughness), out);
  return out[0];
}

/** Sand roughness (m) that gives a friction factor at a Reynolds number; fully rough flow unless it is given. */
export const roughnessFor = (factor: number, bore: number, reynolds = 1e11): number =>
  bore * rootOf((r) => friction(reynolds, r) - factor, 0, 0.2);
