import { frictionFactor, makeTransition, TURBULENT_START } from './friction.ts';

/**
 * f Re² of one relative roughness, read off in a few nanoseconds: a cubic with the true value and slope at the ends of
 * 16 equal cells in every octave of Re from 4000 to 2.048 million. Against the law itself the head loss is off by less
 * than 1e-7, and its slope is the cubic's own.
 */
export interface FrictionTable {
  /** Four coefficients a cell, by the share of the cell. */
  readonly cubic: Float64Array;
  readonly relativeRoughness: number;
}

const OCTAVES = 9;
const CELLS = 16;
/** The octaves are counted from the start of turbulence, where the law has a kink in its curvature. */
const FIRST_OCTAVE = 12;
const SCALE = 2 ** FIRST_OCTAVE / TURBULENT_START;
/** Above this Reynolds number the law itself is asked. */
export const TABLE_END = TURBULENT_START * 2 ** OCTAVES;

const known = new Map<number, FrictionTable>();
const MOST_KNOWN = 64;

/** The table of a relative roughness, made once and kept. */
export function frictionTable(relativeRoughness: number): FrictionTable {
  const kept = known.get(relativeRoughness);
  if (kept) return kept;
  if (known.size >= MOST_KNOWN) known.clear();
  const table = makeTable(relativeRoughness);
  known.set(relativeRoughness, table);
  return table;
}

function makeTable(relativeRoughness: number): FrictionTable {
  const transition = makeTransition(relativeRoughness);
  const pair = new Float64Array(2);
  const cubic = new Float64Array(4 * OCTAVES * CELLS);
  let cell = 0;
  for (let octave = 0; octave < OCTAVES; octave++) {
    const width = (TURBULENT_START * 2 ** octave) / CELLS;
    for (let i = 0; i < CELLS; i++, cell++) {
      const from = (CELLS + i) * width;
      const ends = [from, from + width].map((re) => {
        frictionFactor(re, transition, pair);
        return { value: pair[0] * re * re, slope: (2 + pair[1]) * pair[0] * re * width };
      });
      const rise = ends[1].value - ends[0].value;
      cubic[4 * cell] = ends[0].value;
      cubic[4 * cell + 1] = ends[0].slope;
      cubic[4 * cell + 2] = 3 * rise - 2 * ends[0].slope - ends[1].slope;
      cubic[4 * cell + 3] = ends[0].slope + ends[1].slope - 2 * rise;
    }
  }
  return { cubic, relativeRoughness };
}

/**
 * f Re² and its slope by Re.
 *
 * @param reynolds 4000 .. 2.048 million
 * @param out receives [f Re² −, its slope by Re −]
 */
export function readFriction(table: FrictionTable, reynolds: number, out: Float64Array): void {
  const r = reynolds * SCALE;
  const whole = r | 0;
  const octave = 31 - Math.clz32(whole);
  const shift = octave - 4;
  const steps = whole >> shift;
  const cell = 4 * ((octave - FIRST_OCTAVE) * CELLS + (steps & 15));
  const perCell = 1 / (1 << shift);
  const u = r * perCell - steps;
  const { cubic } = table;
  const c1 = cubic[cell + 1];
  const c2 = cubic[cell + 2];
  const c3 = cubic[cell + 3];
  out[0] = cubic[cell] + u * (c1 + u * (c2 + u * c3));
  out[1] = (c1 + u * (2 * c2 + 3 * u * c3)) * perCell * SCALE;
}
