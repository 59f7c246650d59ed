/** Where a sparse matrix may hold something else than zero: entry k stands in row rows[k], column columns[k]. */
export interface Pattern {
  readonly rows: Int32Array;
  readonly columns: Int32Array;
}

/**
 * A stiff system y' = f(t, y) with quadratures q' = g(t, y) beside it, which feed nothing back.
 *
 * Both functions are pure: the same (t, y) gives the same rates, and a state is never repaired in passing.
 */
export interface StiffSystem {
  /** Number of states. */
  readonly size: number;
  /** Number of quadratures. */
  readonly quadratures: number;
  /** Entries of ∂f/∂y, and of ∂g/∂y. No place is named twice. */
  readonly jacobianPattern: Pattern;
  readonly quadraturePattern: Pattern;
  /** Fills f and g. */
  rates(t: number, y: Float64Array, f: Float64Array, g: Float64Array): void;
  /** Fills f, g, the values of both patterns in their order, ∂f/∂t and ∂g/∂t. */
  linearize(t: number, y: Float64Array, into: Linearization): void;
}

/** What `linearize` fills. */
export interface Linearization {
  readonly f: Float64Array;
  readonly g: Float64Array;
  readonly jacobian: Float64Array;
  readonly gradient: Float64Array;
  readonly fByTime: Float64Array;
  readonly gByTime: Float64Array;
}

/** An empty linearization of the right lengths for a system. */
export function makeLinearization(system: StiffSystem): Linearization {
  return {
    f: new Float64Array(system.size),
    g: new Float64Array(system.quadratures),
    jacobian: new Float64Array(system.jacobianPattern.rows.length),
    gradient: new Float64Array(system.quadraturePattern.rows.length),
    fByTime: new Float64Array(system.size),
    gByTime: new Float64Array(system.quadratures),
  };
}
