import { SparseMatrix } from './sparse.ts';
import { type Linearization, makeLinearization, type StiffSystem } from './system.ts';
import { A, ALPHA, B, B_TIME, C, D, GAMMA, H1, H2, STAGES } from './tableau.ts';

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
  jacobianCalls = 0;

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
    this.jacobianCalls++;
  }

  /** Tries a step of size h, s: fills `end`, `error` and `growth`. */
  attempt(h: number): void {
    const { at, growth, matrix } = this;
    const n = this.start.length;
    matrix.factor(1 / (h * GAMMA), at.jacobian);
    for (let r = 0; r < growth.length; r++) growth[r] = h * B[0] * at.g[r] + h * h * B_TIME * at.gByTime[r];
    for (let i = 0; i < STAGES; i++) {
      if (i > 0) this.stageRates(i, h);
      this.stageSolve(i, h);
    }
    const last = this.stages[STAGES - 1];
    for (let k = 0; k < n; k++) {
      this.error[k] = last[k];
      this.end[k] = this.value[k] + last[k];
    }
    this.addGradients(h);
  }

  /** Inner coefficients of the dense output of the step at hand; call once the step is accepted. */
  prepareDense(): void {
    const [u0, u1, u2, u3, u4] = this.stages;
    for (let k = 0; k < this.start.length; k++) {
      this.inner1[k] = H1[0] * u0[k] + H1[1] * u1[k] + H1[2] * u2[k] + H1[3] * u3[k];
      this.inner2[k] = H2[0] * u0[k] + H2[1] * u1[k] + H2[2] * u2[k] + H2[3] * u3[k] + H2[4] * u4[k];
    }
  }

  private stageRates(i: number, h: number): void {
    const { stages, value, start, growth, g } = this;
    const a = A[i];
    for (let k = 0; k < value.length; k++) {
      let sum = start[k];
      for (let j = 0; j < i; j++) sum += a[j] * stages[j][k];
      value[k] = sum;
    }
    this.system.rates(this.time + ALPHA[i] * h, value, this.f, g);
    this.rateCalls++;
    const weight = h * B[i];
    for (let r = 0; r < growth.length; r++) growth[r] += weight * g[r];
  }

  private stageSolve(i: number, h: number): void {
    const { stages, at } = this;
    const f = i === 0 ? at.f : this.f;
    const c = C[i];
    const u = stages[i];
    const perStep = 1 / h;
    const byTime = h * D[i];
    for (let k = 0; k < u.length; k++) {
      let sum = 0;
      for (let j = 0; j < i; j++) sum += c[j] * stages[j][k];
      u[k] = f[k] + sum * perStep + byTime * at.fByTime[k];
    }
    this.matrix.solve(u);
  }

  private addGradients(h: number): void {
    const { stages, mean, growth, at } = this;
    const { rows, columns } = this.system.quadraturePattern;
    for (let k = 0; k < mean.length; k++) {
      let sum = 0;
      for (let i = 0; i < STAGES; i++) sum += B[i] * stages[i][k];
      mean[k] = h * sum;
    }
    for (let e = 0; e < rows.length; e++) growth[rows[e]] += at.gradient[e] * mean[columns[e]];
  }
}
