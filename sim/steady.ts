import { tolerances } from './march.ts';
import type { Network } from './network/network.ts';
import type { Settings } from './network/settings.ts';
import { standingVolumes, withoutSupply } from './network/start.ts';
import { RunFailure } from './results/failure.ts';
import type { Scenario } from './scenario/scenario.ts';
import { IntegrationFailure, Integrator } from './solver/integrate.ts';
import { SparseMatrix } from './solver/sparse.ts';
import { makeLinearization } from './solver/system.ts';

const HOUR = 3600;
/** Newton is done when no volume changes by more than this share of its tolerance in an iteration, or that in an hour. */
const CONVERGED = 1e-8;
const AT_REST = 1e-5;
const FIRST_STEP = 0.5;
/** From a balance nearby the first step is already Newton's own, s. */
const FIRST_STEP_NEARBY = 1e7;
const LONGEST_STEP = 1e9;
/** Steps this long no longer follow time: they are Newton's own, s. */
const SETTLED = 1e5;
const MOST_ITERATIONS = 200;
/** Steps shorter than this follow the site through time, s. */
const FOLLOWS_TIME = 20;
const MOST_HALVINGS = 10;
/** The fallback marches this long, s, and asks Newton again. */
const MARCH = 4 * HOUR;

/**
 * Volumes in the running balance: the pump at a speed, the pond held at a level, nothing from outside, all else in
 * balance with it. A basin that no water reaches keeps the level at which it stands.
 *
 * Newton's method damped as in pseudo-transient continuation (Kelley & Keyes 1998, SIAM J. Numer. Anal. 35): each
 * iteration is an implicit Euler step, longer as the residual falls. Where that fails, a march finds the way.
 *
 * @param nearby volumes in the balance of much the same settings, from which it is sought first
 * @throws RunFailure where neither comes to rest
 */
export function steadyVolumes(
  s: Scenario,
  network: Network,
  settings: Settings,
  pondLevel: number,
  nearby?: Float64Array,
): Float64Array {
  const held: Settings = { ...withoutSupply(settings), pondHeld: true };
  network.apply(held);
  const scale = tolerances(network);
  const near = nearby && Float64Array.from(nearby);
  if (near && newton(network, near, scale, FIRST_STEP_NEARBY)) return near;
  const volumes = standingVolumes(s, network, pondLevel);
  if (newton(network, volumes, scale)) return volumes;
  const marched = standingVolumes(s, network, pondLevel);
  for (let i = 0; i < 6; i++) {
    marchOn(network, marched, scale);
    const polished = Float64Array.from(marched);
    if (newton(network, polished, scale)) return polished;
    if (i === 5 && resting(network, marched, scale)) return marched;
  }
  throw new RunFailure('no solution', 6 * MARCH, 'running balance', 'the water course does not come to rest in it');
}

/** Improves volumes in place; false where they do not settle. */
function newton(network: Network, volumes: Float64Array, scale: Float64Array, first = FIRST_STEP): boolean {
  const at = makeLinearization(network);
  const matrix = new SparseMatrix(network.size, network.jacobianPattern);
  const step = new Float64Array(network.size);
  const trial = new Float64Array(network.size);
  let length = first;
  for (let i = 0; i < MOST_ITERATIONS; i++) {
    network.linearize(0, volumes, at);
    const before = norm(at.f, scale);
    matrix.factor(1 / length, at.jacobian);
    step.set(at.f);
    matrix.solve(step);
    const whole = norm(step, scale);
    if (!Number.isFinite(whole)) return false;
    // So near the balance the residual is rounding, which no step lowers.
    if (before * HOUR < AT_REST || (whole < CONVERGED && length > SETTLED)) return true;
    const { share, after } = goDownhill(network, volumes, step, trial, scale, before, length);
    volumes.set(trial);
    const gain = Math.max(before, 1e-300) / Math.max(after, 1e-300);
    length = Math.min(LONGEST_STEP, length * (share < 0.1 ? 0.2 : Math.min(8, Math.max(0.5, 1.5 * gain))));
  }
  return false;
}

/**
 * Takes as much of a step as lowers the residual, into `trial`. While steps are short they follow time, and the front
 * of a start may raise it.
 */
function goDownhill(
  network: Network,
  volumes: Float64Array,
  step: Float64Array,
  trial: Float64Array,
  scale: Float64Array,
  before: number,
  length: number,
): { share: number; after: number } {
  const f = new Float64Array(network.size);
  const g = new Float64Array(network.quadratures);
  let share = 1;
  for (let k = 0; k < step.length; k++)
    if (volumes[k] + step[k] < 0) share = Math.min(share, (0.9 * volumes[k]) / -step[k]);
  for (let halving = 0; ; halving++) {
    for (let k = 0; k < step.length; k++) trial[k] = volumes[k] + share * step[k];
    network.rates(0, trial, f, g);
    const after = norm(f, scale);
    if (after <= before || length < FOLLOWS_TIME || halving === MOST_HALVINGS) return { share, after };
    share /= 2;
  }
}

function marchOn(network: Network, volumes: Float64Array, tolerance: Float64Array): void {
  const integrator = new Integrator(network, 0, volumes, { tolerance, least: -1e-15, mostSteps: 20_000 });
  try {
    integrator.advance(MARCH, [], () => {});
  } catch (error) {
    if (!(error instanceof IntegrationFailure)) throw error;
    throw new RunFailure(
      error.kind,
      error.time,
      network.parts.basins[error.component].name,
      'its level does not settle with the pump running',
    );
  }
  volumes.set(integrator.state);
}

/** A state that would move less than its tolerance in an hour counts as at rest. */
function resting(network: Network, volumes: Float64Array, scale: Float64Array): boolean {
  const f = new Float64Array(network.size);
  network.rates(0, volumes, f, new Float64Array(network.quadratures));
  return norm(f, scale) * HOUR < 1;
}

function norm(x: Float64Array, scale: Float64Array): number {
  let most = 0;
  for (let k = 0; k < x.length; k++) most = Math.max(most, Math.abs(x[k]) / scale[k]);
  return most;
}
