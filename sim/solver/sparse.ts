import type { Pattern } from './system.ts';

/**
 * A sparse matrix I/(hγ) − J, factored without pivoting along a pattern found once.
 *
 * Meant for compartment systems: conservation and monotone flows make it an M-matrix, for which elimination in any
 * order is stable (Berman & Plemmons 1994, Nonnegative Matrices, ch. 6). The order is of least degree, so that the
 * work of a ring or chain of basins grows in proportion to their number.
 */
export class SparseMatrix {
  /**
   * Turn after turn of the elimination: the diagonal, inverted by `factor`, then for each state below, a state still
   * left that the eliminated one touches, the entries above and below the diagonal.
   */
  private readonly values: Float64Array;
  private readonly plan: Plan;

  constructor(size: number, pattern: Pattern) {
    this.plan = planOf(size, pattern);
    this.values = new Float64Array(this.plan.entries);
  }

  /** Number of stored entries, fill included. */
  get entries(): number {
    return this.values.length;
  }

  /** Takes shift · I − J, J by the values of its pattern, and factors it. */
  factor(shift: number, jacobian: Float64Array): void {
    const v = this.values;
    const { places, order, belowStart, targets } = this.plan;
    v.fill(0);
    for (let k = 0; k < places.length; k++) v[places[k]] = -jacobian[k];
    const turns = order.length;
    let at = 0;
    let target = 0;
    for (let k = 0; k < turns; k++) {
      const pivot = 1 / (shift + v[at]);
      v[at++] = pivot;
      const end = at + 2 * (belowStart[k + 1] - belowStart[k]);
      for (let i = at; i < end; i += 2) {
        const l = v[i + 1] * pivot;
        v[i + 1] = l;
        for (let j = at; j < end; j += 2) v[targets[target++]] -= l * v[j];
      }
      at = end;
    }
  }

  /** Solves in place with the factors at hand. */
  solve(x: Float64Array): void {
    const v = this.values;
    const { order, below, belowStart } = this.plan;
    const turns = order.length;
    for (let k = 0; k < turns; k++) {
      const known = x[order[k]];
      const end = belowStart[k + 1];
      for (let m = belowStart[k], at = k + 2 * m + 2; m < end; m++, at += 2) x[below[m]] -= v[at] * known;
    }
    for (let k = turns - 1; k >= 0; k--) {
      let sum = x[order[k]];
      const start = belowStart[k];
      const end = belowStart[k + 1];
      for (let m = start, at = k + 2 * m + 1; m < end; m++, at += 2) sum -= v[at] * x[below[m]];
      x[order[k]] = sum * v[k + 2 * start];
    }
  }
}

/** How a pattern is eliminated. */
interface Plan {
  /** Place among the stored entries of each entry of the pattern. */
  readonly places: Int32Array;
  /** The state eliminated at each turn, the states below it, and where those of a turn begin. */
  readonly order: Int32Array;
  readonly below: Int32Array;
  readonly belowStart: Int32Array;
  /** Place of what each product of an entry below with an entry above is taken from, in order. */
  readonly targets: Int32Array;
  readonly entries: number;
}

/** Plans by their patterns: a system is often marched again. */
const plans = new WeakMap<Pattern, Plan>();

function planOf(size: number, pattern: Pattern): Plan {
  const known = plans.get(pattern);
  if (known !== undefined && known.order.length === size) return known;
  const { turns, place, count } = eliminate(size, pattern);
  const starts = [0];
  for (const [, below] of turns) starts.push(starts[starts.length - 1] + below.length);
  const plan = {
    order: Int32Array.from(turns, ([k]) => k),
    below: Int32Array.from(turns.flatMap(([, below]) => below)),
    belowStart: Int32Array.from(starts),
    targets: Int32Array.from(turns.flatMap(([, below]) => below.flatMap((i) => below.map((j) => place(i, j))))),
    places: Int32Array.from(pattern.rows, (row, k) => place(row, pattern.columns[k])),
    entries: count(),
  };
  plans.set(pattern, plan);
  return plan;
}

interface Elimination {
  /** Each state eliminated, with those still left that it touches. */
  readonly turns: [number, number[]][];
  /** Place of an entry among all; those of a turn stand side by side. */
  place(row: number, column: number): number;
  count(): number;
}

/** Symbolic elimination of the symmetrized pattern, least degree first, the lowest number among equals. */
function eliminate(size: number, pattern: Pattern): Elimination {
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
    turns.push([k, below]);
    place(k, k);
    for (const i of below) {
      place(k, i);
      place(i, k);
    }
  }
  return { turns, place, count: () => places.size };
}
