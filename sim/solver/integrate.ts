import { RosenbrockStep } from './step.ts';
import type { StiffSystem } from './system.ts';
import { ESTIMATE_ORDER } from './tableau.ts';
import { earliestCrossing, isPast, rearm, type Trigger } from './trigger.ts';

/** Counters of what a run cost. */
export interface WorkCounters {
  steps: number;
  rejected: number;
  rates: number;
  jacobians: number;
}

/** Why and where the integrator could not go on. */
export class IntegrationFailure extends Error {
  override readonly name = 'IntegrationFailure';
  readonly kind: 'capped' | 'no solution';
  readonly time: number;
  /** State whose error was the largest. */
  readonly component: number;

  constructor(kind: 'capped' | 'no solution', time: number, component: number) {
    super(`${kind} at t = ${time} s, component ${component}`);
    this.kind = kind;
    this.time = time;
    this.component = component;
  }
}

export interface IntegratorOptions {
  /** Absolute tolerance of each state. */
  readonly tolerance: Float64Array;
  /** A step that ends with a state below this is taken again, smaller; −Infinity: no bound. */
  readonly least?: number;
  /** Steps, accepted and rejected, after which the run is capped. */
  readonly mostSteps?: number;
}

const SAFETY = 0.9;
const GROWTH = 6;
const SHRINK = 0.2;
const SMALLEST_STEP = 1e-9;

/**
 * Carries a stiff system from one mandatory stop to the next, with steps of controlled error, and stops where a
 * trigger fires. What changes the system (a switch, a restart) is done between two calls of `advance`.
 */
export class Integrator {
  readonly step: RosenbrockStep;
  readonly state: Float64Array;
  readonly quadratures: Float64Array;
  readonly work: WorkCounters = { steps: 0, rejected: 0, rates: 0, jacobians: 0 };
  time: number;
  /** Size of the step just accepted, s. */
  taken = 0;

  private readonly options: Required<IntegratorOptions>;
  private wish = 0.1;

  constructor(system: StiffSystem, time: number, state: Float64Array, options: IntegratorOptions) {
    this.step = new RosenbrockStep(system);
    this.time = time;
    this.state = Float64Array.from(state);
    this.quadratures = new Float64Array(system.quadratures);
    this.options = { least: Number.NEGATIVE_INFINITY, mostSteps: Number.POSITIVE_INFINITY, ...options };
  }

  /** After a jump of the rates: the next step is at most this long, s. */
  restart(firstStep: number): void {
    this.wish = Math.min(this.wish, firstStep);
  }

  /**
   * Takes steps to `end` or to the first trigger that fires.
   *
   * @param onStep called after each accepted step, the step's dense output prepared
   * @returns the triggers that fired at `this.time`, empty at `end`
   */
  advance(end: number, triggers: readonly Trigger[], onStep: (step: RosenbrockStep, size: number) => void): Trigger[] {
    while (this.time < end) {
      const fired = this.oneStep(end, triggers);
      onStep(this.step, this.taken);
      if (fired.length > 0) return fired;
    }
    return [];
  }

  private oneStep(end: number, triggers: readonly Trigger[]): Trigger[] {
    const { step, work, state } = this;
    if (work.steps + work.rejected >= this.options.mostSteps)
      throw new IntegrationFailure('capped', this.time, this.worst());
    step.begin(this.time, state);
    work.jacobians++;
    const size = this.acceptable(end);
    step.prepareDense();
    const fired = this.land(size, triggers);
    const whole = this.taken === end - this.time;
    this.time = whole ? end : this.time + this.taken;
    state.set(step.end);
    for (let r = 0; r < this.quadratures.length; r++) this.quadratures[r] += step.growth[r];
    work.steps++;
    work.rates = step.rateCalls;
    for (const t of fired) t.armed = false;
    rearm(triggers, state);
    return fired;
  }

  /** Attempts smaller and smaller steps until one is good; returns its size. */
  private acceptable(end: number): number {
    const { step, work } = this;
    const rest = end - this.time;
    let most = GROWTH;
    for (;;) {
      let size = this.wish;
      if (size >= rest) size = rest;
      else if (size > rest / 2) size = rest / 2;
      step.attempt(size);
      const error = this.errorNorm();
      if (error <= 1) {
        const next = size * Math.min(most, Math.max(SHRINK, SAFETY * error ** (-1 / (ESTIMATE_ORDER + 1))));
        // A step cut short by a stop says nothing about how long the next may be.
        this.wish = size < this.wish ? Math.max(this.wish, next) : next;
        return size;
      }
      work.rejected++;
      const factor = Number.isFinite(error) ? Math.max(SHRINK, SAFETY * error ** (-1 / (ESTIMATE_ORDER + 1))) : SHRINK;
      this.wish = size * factor;
      most = 1;
      if (this.wish < SMALLEST_STEP) throw new IntegrationFailure('no solution', this.time, this.worst());
    }
  }

  /** Shortens the accepted step to the first trigger, by the step itself and not its dense output. */
  private land(size: number, triggers: readonly Trigger[]): Trigger[] {
    const { step } = this;
    this.taken = size;
    if (triggers.length === 0) return [];
    const theta = earliestCrossing(triggers, step);
    if (theta > 1) return [];
    if (theta < 1) {
      const first = triggers.filter((t) => t.armed);
      let size2 = Math.max(theta * size, 1e-12 * size);
      for (let i = 0; i < 12; i++) {
        step.attempt(size2);
        if (first.some((t) => isPast(t, step.end))) break;
        size2 = Math.min(size, size2 + shortfall(first, step, size2));
      }
      step.prepareDense();
      this.taken = size2;
    }
    return triggers.filter((t) => t.armed && (isPast(t, step.end) || earliestCrossing([t], step) <= 1));
  }

  private errorNorm(): number {
    const { error, end } = this.step;
    const { tolerance, least } = this.options;
    let norm = 1e-10;
    for (let k = 0; k < error.length; k++) {
      const scaled = Math.abs(error[k]) / tolerance[k];
      if (Number.isNaN(scaled)) return Number.POSITIVE_INFINITY;
      if (scaled > norm) norm = scaled;
      if (end[k] < least) norm = Math.max(norm, 8);
    }
    return norm;
  }

  private worst(): number {
    const { error } = this.step;
    let worst = 0;
    let most = -1;
    for (let k = 0; k < error.length; k++) {
      const scaled = Math.abs(error[k]) / this.options.tolerance[k];
      if (!(scaled <= most)) {
        worst = k;
        most = scaled;
      }
    }
    return worst;
  }
}

/** How much longer a step must be for its nearest trigger to be reached, s; never nothing. */
function shortfall(triggers: readonly Trigger[], step: RosenbrockStep, size: number): number {
  let least = size;
  for (const t of triggers) {
    const speed = (t.direction * (step.end[t.component] - step.start[t.component])) / size;
    const missing = t.direction * (t.value - step.end[t.component]);
    if (speed > 0) least = Math.min(least, (1.01 * missing) / speed);
  }
  return Math.max(least, 1e-13 * size);
}
