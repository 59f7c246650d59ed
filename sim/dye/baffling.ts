import type { BafflingClass } from './answer.ts';

/**
 * Baffling factors t10/T and their names: US EPA, LT1ESWTR Disinfection Profiling and Benchmarking Technical Guidance
 * Manual (2003), from the Guidance Manual for the surface water treatment rule (1991), table C-5: unbaffled 0.1, poor
 * 0.3, average 0.5, superior 0.7, perfect (plug flow) 1.0.
 */
export const BAFFLING: readonly (readonly [from: number, name: BafflingClass])[] = [
  [0.1, 'unbaffled'],
  [0.3, 'poor'],
  [0.5, 'average'],
  [0.7, 'superior'],
  [1, 'perfect'],
];

/** Rounding that does not keep a figure out of its class. */
const ROUNDING = 1e-9;

/** Class that a t10/T reaches (the lowest also below its own figure), and the nearest one beside it. */
export function bafflingOf(share: number): {
  class: BafflingClass;
  neighbor: { class: BafflingClass; from: number };
} {
  const reached = BAFFLING.filter(([from]) => share >= from - ROUNDING).length - 1;
  const own = Math.max(0, reached);
  const above = Math.min(own + 1, BAFFLING.length - 1);
  const up = BAFFLING[above][0] - share;
  const down = share - BAFFLING[own][0];
  const rises = own === 0 || (above > own && up <= down);
  const [, name] = BAFFLING[rises ? above : own - 1];
  return { class: BAFFLING[own][1], neighbor: { class: name, from: BAFFLING[rises ? above : own][0] } };
}
