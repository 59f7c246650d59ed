import { addScaled, addStages, sumStages } from './combine.ts';
import { SparseMatrix } from './sparse.ts';
import { type Linearization, makeLinearization, type StiffSystem } from './system.ts';
import { A, ALPHA, B, B_TIME, C, D, GAMMA, H1, H2, STAGES } from './tableau.ts';

const fullRow = (row: readonly number[]): Float64Array => Float64Array.from({ length: STAGES }, (_, j) => row[j] ?? 0);
const VALUES = A.map(fullRow);
const RIGHT = C.map(fullRow);
const WEIGHTS = fullRow(B);
const INNER1 = fullRow(H1);
const INNER2 = fullRow(H2);

/**
 * One step of the Rosenbrock method from a state: `begin` once, then `attempt` with any step size until one is good.
 *
 * The quadratures take part with the method's own weights, so that whatever J and the gradients conserve is conserved
 * to rounding: k_q = h (g_i + G u_i) + h² d_i ∂g/∂t, summed with b_i.
 */
export class RosenbrockStep {
  readonly system: StiffSystem;
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** Estimated error of `end`, and what the quadratures grew by. */
  readonly error: Float64Array;
  readonly growth: Float64Array;
  /** Dense output's two inner coefficients per state. */
  readonly inner1: Float64Array;
  readonly inner2: Float64Array;
  readonly at: Linearization;
  time = 0;
  rateCalls = 0;

  private readonly matrix: SparseMatrix;
  private readonly stages: Float64Array[];
  private readonly value: Float64Array;
  private readonly f: Float64Array;
  private readonly g: Float64Array;
  private readonly mean: Float64Array;

  constructor(system: StiffSystem) {
    const n = system.size;
    this.system = system;
    this.start = new Float64Array(n);
    this.end = new Float64Array(n);
    this.error = new Float64Array(n);
    this.growth = new Float64Array(system.quadratures);
    this.inner1 = new Float64Array(n);
    this.inner2 = new Float64Array(n);
    this.at = makeLinearization(system);
    this.matrix = new SparseMatrix(n, system.jacobianPattern);
    this.stages = Array.from({ length: STAGES }, () => new Float64Array(n));
    this.value = new Float64Array(n);
    this.f = new Float64Array(n);
    this.g = new Float64Array(system.quadratures);
    this.mean = new Float64Array(n);
  }

  /** Takes the state to step from and linearizes there. */
  begin(time: number, y: Float64Array): void {
    this.time = time;
    this.start.set(y);
    this.system.linearize(time, this.start, this.at);
    this.rateCalls++;
  }

  /** Tries a step of size h, s: fills `end`, `error` and `growth`. */
  attempt(h: number): void {
    const { at, growth, value, end, error } = this;
    this.matrix.factor(1 / (h * GAMMA), at.jacobian);
    for (let r = 0; r < growth.length; r++) growth[r] = h * (B[0] * at.g[r] + h * B_TIME * at.gByTime[r]);
    for (let i = 0; i < STAGES; i++) {
      if (i > 0) this.stageRates(i, h);
      this.stageSolve(i, h);
    }
    error.set(this.stages[STAGES - 1]);
    for (let k = 0; k < end.length; k++) end[k] = value[k] + error[k];
    this.addGradients(h);
  }

  /** Inner coefficients of the dense output of the step at hand; call once the step is accepted. */
  prepareDense(): void {
    sumStages(this.inner1, 1, INNER1, this.stages);
    sumStages(this.inner2, 1, INNER2, this.stages);
  }

  private stageRates(i: number, h: number): void {
    const { stages, value, growth, g } = this;
    if (i < STAGES - 1) addStages(value, this.start, 1, VALUES[i], stages, i);
    else addScaled(value, 1, stages[i - 1]);
    this.system.rates(this.time + ALPHA[i] * h, value, this.f, g);
    this.rateCalls++;
    addScaled(growth, h * B[i], g);
  }

  private stageSolve(i: number, h: number): void {
    const { stages, at } = this;
    const u = stages[i];
    if (i === 0) u.set(at.f);
    else addStages(u, this.f, 1 / h, RIGHT[i], stages, i);
    if (D[i] !== 0) addScaled(u, h * D[i], at.fByTime);
    this.matrix.solve(u);
  }

  private addGradients(h: number): void {
    const { mean, growth, at } = this;
    const { rows, columns } = this.system.quadraturePattern;
    sumStages(mean, h, WEIGHTS, this.stages);
    for (let e = 0; e < rows.length; e++) growth[rows[e]] += at.gradient[e] * mean[columns[e]];
  }
}
