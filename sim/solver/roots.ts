/** An equation in one unknown x ≥ 0 whose value rises with x and is not positive at 0. */
export interface RisingEquation {
  value: number;
  slope: number;
  /** Sets `value` and `slope` at x. */
  at(x: number): void;
}

/** A Newton step this small relative to the unknown is the last: what it leaves is its square. */
const LAST_STEP = 1e-5;

/**
 * Root of a rising equation by Newton's method within a bracket, from a guess that may be exact.
 *
 * Convergence is looked at before the bracket is: the exact guess would else be taken for the bracket's end. After the
 * call the equation holds the value and slope of the point before the last step.
 * @param guess first try, > 0
 */
export function solveRising(equation: RisingEquation, guess: number): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let x = guess;
  for (let i = 0; i < 100; i++) {
    equation.at(x);
    const next = x - equation.value / equation.slope;
    if (Math.abs(next - x) <= LAST_STEP * x && next >= 0) return next;
    if (equation.value < 0) low = x;
    else high = x;
    if (next > low && next < high) x = next;
    else if (high === Number.POSITIVE_INFINITY) x = 4 * low;
    else x = low > 0 ? (low + high) / 2 : high / 8;
    if (x < 1e-300) return 0;
  }
  return x;
}

/**
 * Follows the root of an equation as a parameter of it moves: the next guess carries on from the last root, so that
 * Newton rarely needs a second step. It changes how fast a root is found, not which.
 */
export class RootTracker {
  private readonly asPower: boolean;
  private root = 0;
  private parameter = 0;
  private byParameter = 0;

  /** @param asPower the root goes about as a power of the parameter (a flow by the head that drives it): else straight */
  constructor(asPower = false) {
    this.asPower = asPower;
  }

  /**
   * First try at a parameter's new value, > 0.
   *
   * @param fresh what to try where nothing is known yet
   */
  guess(parameter: number, fresh: number): number {
    if (!(this.root > 0)) return fresh;
    const change = parameter - this.parameter;
    let rise = this.byParameter * change;
    if (this.asPower) {
      // Second term of (1 + change/parameter)^p, p the local exponent.
      const share = change / this.parameter;
      rise *= 1 + 0.5 * ((this.byParameter * this.parameter) / this.root - 1) * share;
    }
    const ahead = this.root + rise;
    return ahead > 0.25 * this.root && ahead < 4 * this.root ? ahead : this.root;
  }

  /** Keeps a root with the parameter it belongs to and its slope by that. */
  keep(root: number, parameter: number, byParameter: number): number {
    this.root = root;
    this.parameter = parameter;
    this.byParameter = byParameter;
    return root;
  }
}
