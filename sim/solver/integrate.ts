import { denseSlope } from './dense.ts';
import { RosenbrockStep } from './step.ts';
import type { StiffSystem } from './system.ts';
import { crossing, firstReached, goal, heading, isPast, margin, rearm, type Trigger } from './trigger.ts';

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
  /** Steps, accepted and rejected, after which the run is capped, and how many more for each second it has come. */
  readonly mostSteps?: number;
  readonly stepsPerSecond?: number;
}

const SAFETY = 0.9;
const GROWTH = 6;
const SHRINK = 0.2;
const SMALLEST_STEP = 1e-9;
const NEAREST_STOP = 1e-200;
/** A switch is landed on at most this far past its value, in tolerances of its component. */
const LANDING = 1e-2;

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
  private readonly fired: Trigger[] = [];
  private wish = 0.1;
  private cap: number;

  constructor(system: StiffSystem, time: number, state: Float64Array, options: IntegratorOptions) {
    this.step = new RosenbrockStep(system);
    this.time = time;
    this.state = Float64Array.from(state);
    this.quadratures = new Float64Array(system.quadratures);
    this.options = {
      least: Number.NEGATIVE_INFINITY,
      mostSteps: Number.POSITIVE_INFINITY,
      stepsPerSecond: 0,
      ...options,
    };
    this.cap = this.options.mostSteps;
  }

  /** After a jump of the rates: the next step is at most this long, s. */
  restart(firstStep: number): void {
    this.wish = Math.min(this.wish, firstStep);
  }

  /** Grants more steps before the run is capped: for a stop that was asked for. */
  grant(steps: number): void {
    this.cap += steps;
  }

  /**
   * Takes steps to `end` or to the first trigger that fires.
   *
   * @param onStep called after each accepted step, the step's dense output prepared
   * @returns the triggers that fired at `this.time`, empty at `end`; the list is good until the next call
   * @throws IntegrationFailure
   */
  advance(end: number, triggers: readonly Trigger[], onStep: (step: RosenbrockStep, size: number) => void): Trigger[] {
    if (this.fired.length > 0) this.fired.length = 0;
    // A stop nearer than a step can be told from none.
    if (end - this.time < NEAREST_STOP) this.time = Math.max(this.time, end);
    while (this.time < end && this.fired.length === 0) {
      this.oneStep(end, triggers);
      onStep(this.step, this.taken);
    }
    return this.fired;
  }

  private oneStep(end: number, triggers: readonly Trigger[]): void {
    const { step, work, state, quadratures } = this;
    if (work.steps + work.rejected >= this.cap + this.options.stepsPerSecond * this.time)
      throw new IntegrationFailure('capped', this.time, this.worst());
    step.begin(this.time, state);
    work.jacobians++;
    this.taken = this.acceptable(end);
    step.prepareDense();
    if (triggers.length > 0) this.land(triggers);
    this.time = this.taken === end - this.time ? end : this.time + this.taken;
    state.set(step.end);
    for (let r = 0; r < quadratures.length; r++) quadratures[r] += step.growth[r];
    work.steps++;
    work.rates = step.rateCalls;
    rearm(triggers, state);
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
      const next = size * Math.min(most, Math.max(SHRINK, SAFETY / fourthRoot(error)));
      if (error <= 1) {
        // A step cut short by a stop says nothing about how long the next may be.
        this.wish = size < this.wish ? Math.max(this.wish, next) : next;
        return size;
      }
      work.rejected++;
      work.rates = step.rateCalls;
      this.wish = next;
      most = 1;
      // A step that time's last digit does not show would go on for ever.
      if (next < SMALLEST_STEP + 2 * Number.EPSILON * Math.abs(this.time))
        throw new IntegrationFailure('no solution', this.time, this.worst());
    }
  }

  /** Shortens the accepted step to the first trigger that needs it and notes which have fired there. */
  private land(triggers: readonly Trigger[]): void {
    const { step, fired } = this;
    const first = firstReached(triggers, step);
    if (first === undefined) return;
    const theta = crossing(first, step);
    if (theta < 1) this.shorten(first, theta);
    for (const t of triggers) {
      if (!t.armed || !isPast(t, step.end)) continue;
      t.armed = false;
      fired.push(t);
    }
  }

  /**
   * Takes the step again up to a trigger, found on the step's own end by Newton's method with the slope of the dense
   * output. It ends past the value by more than the margin that arms the opposite trigger: two switches at one value
   * act on each other whatever the rounding.
   */
  private shorten(trigger: Trigger, theta: number): void {
    const { step } = this;
    const k = trigger.component;
    const value = goal(trigger);
    const direction = heading(trigger);
    const whole = this.taken;
    const speed = (direction * denseSlope(step.start[k], step.end[k], step.inner1[k], step.inner2[k], theta)) / whole;
    const nearest = 2 * margin(trigger);
    const farthest = Math.max(2 * nearest, LANDING * this.options.tolerance[k]);
    let size = theta * whole;
    for (let i = 0; i < 10; i++) {
      this.taken = Math.min(whole, Math.max(size, 1e-12 * whole));
      step.attempt(this.taken);
      const past = direction * (step.end[k] - value);
      // Where the component only just touches its value there is no speed to go by.
      if (!(speed > 0) || (past >= nearest && past <= farthest)) break;
      size = this.taken + ((nearest + farthest) / 2 - past) / speed;
    }
    step.prepareDense();
  }

  /** Largest error by its tolerance; ∞ where anything is no number. */
  private errorNorm(): number {
    const { error, end, growth } = this.step;
    const { tolerance, least } = this.options;
    let norm = 1e-10;
    for (let k = 0; k < error.length; k++) {
      const scaled = Math.abs(error[k]) / tolerance[k];
      if (!(scaled <= norm)) norm = scaled;
      if (Number.isNaN(norm)) return Number.POSITIVE_INFINITY;
      if (end[k] < least && norm < 8) norm = 8;
    }
    for (let r = 0; r < growth.length; r++) if (!Number.isFinite(growth[r])) return Number.POSITIVE_INFINITY;
    return norm;
  }

  /** The first state that is no number or below its bound, else that of the largest error. */
  private worst(): number {
    const { error, end } = this.step;
    const { tolerance, least } = this.options;
    let worst = 0;
    for (let k = 0; k < error.length; k++) {
      if (Number.isNaN(end[k]) || end[k] < least) return k;
      if (Math.abs(error[k]) / tolerance[k] > Math.abs(error[worst]) / tolerance[worst]) worst = k;
    }
    return worst;
  }
}

/** Of square roots alone, which every engine rounds alike, so that a run takes the same steps everywhere. */
function fourthRoot(x: number): number {
  return Math.sqrt(Math.sqrt(x));
}
