/** Initial value problems whose solutions are known in closed form, to hold an integrator against. */
import type { Linearization, Pattern, StiffSystem } from '../sim/solver/system.ts';

type Rates = (t: number, y: Float64Array) => readonly number[];
type Slopes = (t: number, y: Float64Array) => readonly (readonly number[])[];

/** A system written out in full, for problems of a few states. */
export interface Equations {
  readonly size: number;
  readonly rates: Rates;
  readonly jacobian: Slopes;
  /** ∂f/∂t; nothing for an autonomous problem. */
  readonly byTime?: Rates;
  /** What is summed beside the states, its rows of ∂g/∂y and ∂g/∂t. */
  readonly sums?: { readonly rates: Rates; readonly gradient: Slopes; readonly byTime?: Rates };
}

/** A problem with its solution, sums last. */
export interface Case {
  readonly name: string;
  readonly system: StiffSystem;
  readonly start: readonly number[];
  readonly end: number;
  readonly exact: (t: number) => readonly number[];
}

export function fullPattern(rows: number, columns: number): Pattern {
  return {
    rows: Int32Array.from({ length: rows * columns }, (_, k) => Math.floor(k / columns)),
    columns: Int32Array.from({ length: rows * columns }, (_, k) => k % columns),
  };
}

/** The system of some equations, with full patterns. */
export function systemOf({ size, rates, jacobian, byTime, sums }: Equations): StiffSystem {
  const quadratures = sums === undefined ? 0 : sums.rates(0, new Float64Array(size)).length;
  const fill = (t: number, y: Float64Array, f: Float64Array, g: Float64Array): void => {
    f.set(rates(t, y));
    if (sums) g.set(sums.rates(t, y));
  };
  return {
    size,
    quadratures,
    jacobianPattern: fullPattern(size, size),
    quadraturePattern: fullPattern(quadratures, size),
    rates: fill,
    linearize(t: number, y: Float64Array, into: Linearization): void {
      fill(t, y, into.f, into.g);
      into.jacobian.set(jacobian(t, y).flat());
      if (byTime) into.fByTime.set(byTime(t, y));
      if (sums) into.gradient.set(sums.gradient(t, y).flat());
      if (sums?.byTime) into.gByTime.set(sums.byTime(t, y));
    },
  };
}

/** y' = −2 t y² with y = 1/(1 + t²), and the sum of 2 t y, which is ln(1 + t²). */
export const bell: Case = {
  name: 'bell curve',
  system: systemOf({
    size: 1,
    rates: (t, [y]) => [-2 * t * y * y],
    jacobian: (t, [y]) => [[-4 * t * y]],
    byTime: (_, [y]) => [-2 * y * y],
    sums: { rates: (t, [y]) => [2 * t * y], gradient: (t) => [[2 * t]], byTime: (_, [y]) => [2 * y] },
  }),
  start: [1],
  end: 1,
  exact: (t) => [1 / (1 + t * t), Math.log1p(t * t)],
};

/** A turn of the plane, and the sum of y₁² + y₂², which is t. */
export const turning: Case = {
  name: 'turning',
  system: systemOf({
    size: 2,
    rates: (_, [y1, y2]) => [-y2, y1],
    jacobian: () => [
      [0, -1],
      [1, 0],
    ],
    sums: { rates: (_, [y1, y2]) => [y1 * y1 + y2 * y2], gradient: (_, [y1, y2]) => [[2 * y1, 2 * y2]] },
  }),
  start: [1, 0],
  end: 3,
  exact: (t) => [Math.cos(t), Math.sin(t), t],
};

/** A tank that empties through a crest: h' = −h^1.5, h = (1 + t/2)^−2; the sum is what ran out. */
export const crest: Case = {
  name: 'tank over a crest',
  system: systemOf({
    size: 1,
    rates: (_, [h]) => [-h * Math.sqrt(h)],
    jacobian: (_, [h]) => [[-1.5 * Math.sqrt(h)]],
    sums: { rates: (_, [h]) => [h * Math.sqrt(h)], gradient: (_, [h]) => [[1.5 * Math.sqrt(h)]] },
  }),
  start: [1],
  end: 4,
  exact: (t) => [(1 + t / 2) ** -2, 1 - (1 + t / 2) ** -2],
};

/**
 * Kaps' problem: y₁' = −(k + 2) y₁ + k y₂², y₂' = y₁ − y₂ − y₂², with y₂ = e^−t and y₁ = y₂² whatever the stiffness k.
 *
 * Dekker & Verwer (1984), Stability of Runge–Kutta Methods for Stiff Nonlinear Differential Equations, sec. 7.5.
 */
export const kaps = (k: number): Case => ({
  name: `Kaps' problem, stiffness ${k}`,
  system: systemOf({
    size: 2,
    rates: (_, [y1, y2]) => [-(k + 2) * y1 + k * y2 * y2, y1 - y2 - y2 * y2],
    jacobian: (_, [, y2]) => [
      [-(k + 2), 2 * k * y2],
      [1, -1 - 2 * y2],
    ],
    sums: { rates: (_, [y1]) => [y1], gradient: () => [[1, 0]] },
  }),
  start: [1, 1],
  end: 1,
  exact: (t) => [Math.exp(-2 * t), Math.exp(-t), -Math.expm1(-2 * t) / 2],
});

/**
 * Stiff forcing: y' = −k (y − φ) + φ' with φ = sin(t + π/4), which is the solution; the sum is that of y.
 *
 * Prothero & Robinson (1974), Math. Comp. 28, 145–162.
 */
export const forced = (k: number): Case => ({
  name: `Prothero and Robinson's problem, stiffness ${k}`,
  system: systemOf({
    size: 1,
    rates: (t, [y]) => [-k * (y - Math.sin(t + Math.PI / 4)) + Math.cos(t + Math.PI / 4)],
    jacobian: () => [[-k]],
    byTime: (t) => [k * Math.cos(t + Math.PI / 4) - Math.sin(t + Math.PI / 4)],
    sums: { rates: (_, [y]) => [y], gradient: () => [[1]] },
  }),
  start: [Math.SQRT1_2],
  end: 2,
  exact: (t) => [Math.sin(t + Math.PI / 4), Math.SQRT1_2 - Math.cos(t + Math.PI / 4)],
});

/** y' = −k y. */
export const decay = (k: number): Case => ({
  name: `decay, rate ${k}`,
  system: systemOf({ size: 1, rates: (_, [y]) => [-k * y], jacobian: () => [[-k]] }),
  start: [1],
  end: 1,
  exact: (t) => [Math.exp(-k * t)],
});

/** Components that each run straight at a rate of its own. */
export const straight = (slopes: readonly number[]): Case => ({
  name: 'straight lines',
  system: systemOf({
    size: slopes.length,
    rates: () => slopes,
    jacobian: () => slopes.map(() => slopes.map(() => 0)),
  }),
  start: slopes.map(() => 0),
  end: 10,
  exact: (t) => slopes.map((slope) => slope * t),
});

/** A height thrown up from 0 at speed v: y₁ = v t − t²/2, of which a step is exact. */
export const thrown = (v: number): Case => ({
  name: 'thrown',
  system: systemOf({
    size: 2,
    rates: (_, [, speed]) => [speed, -1],
    jacobian: () => [
      [0, 1],
      [0, 0],
    ],
  }),
  start: [0, v],
  end: 2 * v,
  exact: (t) => [v * t - (t * t) / 2, v - t],
});

/**
 * A ring of linear basins, each giving to the next in proportion to what it holds, the last back to the first.
 *
 * @param give what each gives in a second, per unit held
 */
export function ring(give: readonly number[]): StiffSystem {
  const n = give.length;
  const here = give.map((_, k) => k);
  const next = here.map((k) => (k + 1) % n);
  const flow = (y: Float64Array, f: Float64Array): void => {
    f.fill(0);
    for (let k = 0; k < n; k++) {
      f[k] -= give[k] * y[k];
      f[next[k]] += give[k] * y[k];
    }
  };
  return {
    size: n,
    quadratures: 0,
    jacobianPattern: { rows: Int32Array.from([...here, ...next]), columns: Int32Array.from([...here, ...here]) },
    quadraturePattern: fullPattern(0, n),
    rates: (_, y, f) => flow(y, f),
    linearize(_, y, into) {
      flow(y, into.f);
      for (let k = 0; k < n; k++) {
        into.jacobian[k] = -give[k];
        into.jacobian[n + k] = give[k];
      }
    },
  };
}
