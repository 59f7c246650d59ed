import type { Pattern } from './system.ts';

/**
 * A sparse matrix I/(hγ) − J, factored without pivoting along a pattern found once.
 *
 * Meant for compartment systems: conservation and monotone flows make it an M-matrix, for which elimination in any
 * order is stable (Berman & Plemmons 1994, Nonnegative Matrices, ch. 6). The order is of least degree, so that the
 * work of a ring or chain of basins grows in proportion to their number.
 */
export class SparseMatrix {
  private readonly values: Float64Array;
  /** Place in `values` of each entry of the pattern, and of each diagonal in order of elimination. */
  private readonly places: Int32Array;
  private readonly diagonal: Int32Array;
  /** The state eliminated at each turn. */
  private readonly order: Int32Array;
  /** Programs: factor [place of l, count, (place of u, place of target)…], forward [l, from, to], backward likewise. */
  private readonly factorCode: Int32Array;
  private readonly turnStart: Int32Array;
  private readonly lower: Int32Array;
  private readonly upper: Int32Array;
  private readonly upperStart: Int32Array;

  constructor(size: number, pattern: Pattern) {
    const plan = eliminate(size, pattern);
    this.order = Int32Array.from(plan.order);
    this.places = Int32Array.from(pattern.rows, (row, k) => plan.place(row, pattern.columns[k]));
    this.diagonal = Int32Array.from(plan.order, (k) => plan.place(k, k));
    this.values = new Float64Array(plan.count());
    const factor: number[] = [];
    const starts: number[] = [];
    const lower: number[] = [];
    const upper: number[] = [];
    const upperStarts: number[] = [];
    for (const [k, below] of plan.turns) {
      starts.push(factor.length);
      for (const i of below) {
        const l = plan.place(i, k);
        factor.push(l, below.length);
        for (const j of below) factor.push(plan.place(k, j), plan.place(i, j));
        lower.push(l, k, i);
      }
      upperStarts.push(upper.length);
      for (const j of below) upper.push(plan.place(k, j), j);
    }
    this.factorCode = Int32Array.from(factor);
    this.turnStart = Int32Array.from([...starts, factor.length]);
    this.lower = Int32Array.from(lower);
    this.upper = Int32Array.from(upper);
    this.upperStart = Int32Array.from([...upperStarts, upper.length]);
  }

  /** Number of stored entries, fill included. */
  get entries(): number {
    return this.values.length;
  }

  /** Takes shift · I − J, J by the values of its pattern, and factors it. */
  factor(shift: number, jacobian: Float64Array): void {
    const v = this.values;
    const code = this.factorCode;
    v.fill(0);
    for (let k = 0; k < jacobian.length; k++) v[this.places[k]] -= jacobian[k];
    for (let k = 0; k < this.diagonal.length; k++) v[this.diagonal[k]] += shift;
    for (let k = 0; k < this.diagonal.length; k++) {
      const pivot = 1 / v[this.diagonal[k]];
      v[this.diagonal[k]] = pivot;
      let at = this.turnStart[k];
      const end = this.turnStart[k + 1];
      while (at < end) {
        const l = v[code[at]] * pivot;
        v[code[at]] = l;
        const stop = at + 2 + 2 * code[at + 1];
        for (at += 2; at < stop; at += 2) v[code[at + 1]] -= l * v[code[at]];
      }
    }
  }

  /** Solves in place with the factors at hand. */
  solve(x: Float64Array): void {
    const v = this.values;
    const { lower, upper, upperStart, order, diagonal } = this;
    for (let at = 0; at < lower.length; at += 3) x[lower[at + 2]] -= v[lower[at]] * x[lower[at + 1]];
    for (let k = order.length - 1; k >= 0; k--) {
      let sum = x[order[k]];
      const end = upperStart[k + 1];
      for (let at = upperStart[k]; at < end; at += 2) sum -= v[upper[at]] * x[upper[at + 1]];
      x[order[k]] = sum * v[diagonal[k]];
    }
  }
}

interface Plan {
  readonly order: number[];
  /** Each state eliminated, with those still left that it touches. */
  readonly turns: [number, number[]][];
  place(row: number, column: number): number;
  count(): number;
}

/** Symbolic elimination of the symmetrized pattern, least degree first, the lowest number among equals. */
function eliminate(size: number, pattern: Pattern): Plan {
  const touches = Array.from({ length: size }, () => new Set<number>());
  for (let k = 0; k < pattern.rows.length; k++) {
    const [i, j] = [pattern.rows[k], pattern.columns[k]];
    if (i === j) continue;
    touches[i].add(j);
    touches[j].add(i);
  }
  const places = new Map<number, number>();
  const place = (i: number, j: number): number => {
    const key = i * size + j;
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, places.size);
    return places.size - 1;
  };
  const order: number[] = [];
  const turns: [number, number[]][] = [];
  const left = new Set(touches.keys());
  while (left.size > 0) {
    let k = -1;
    for (const i of left) if (k < 0 || touches[i].size < touches[k].size) k = i;
    left.delete(k);
    const below = [...touches[k]].sort((p, q) => p - q);
    for (const i of below) {
      touches[i].delete(k);
      for (const j of below) if (i !== j) touches[i].add(j);
    }
    order.push(k);
    turns.push([k, below]);
    place(k, k);
    for (const i of below) {
      place(k, i);
      place(i, k);
    }
  }
  return { order, turns, place, count: () => places.size };
}
