import type { Settings } from '../network/settings.ts';
import type { RunRecord } from '../results/record.ts';
import { denseValue } from '../solver/dense.ts';

/** Volumes that passed each named flow of a network either way, m³, in the order of its `flowNames`. */
export interface Passed {
  readonly forward: Float64Array;
  readonly backward: Float64Array;
}

/** Gauss's rule with three points, exact to the fifth power: places in 0..1 and weights. */
const PLACES = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)];
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18];

/**
 * Integrates all named flows of a record from its start to a moment, from the volumes inside each step.
 *
 * The rule sees the flows at volumes that carry the integrator's own error, so the sums close to that, not to rounding.
 * @param until s, inside the record
 */
export function passedBy(record: RunRecord, until: number): Passed {
  const { network } = record;
  const names = network.flow.length;
  const sum: Passed = { forward: new Float64Array(names), backward: new Float64Array(names) };
  const volumes = new Float64Array(network.size);
  const rates = [new Float64Array(network.size), new Float64Array(network.quadratures)] as const;
  let inForce: Settings | undefined;
  for (let row = 0; row + 1 < record.length && record.time(row) < until; row++) {
    if (record.restarts(row + 1)) continue;
    const settings = record.settingsAt(row);
    if (settings !== inForce) network.apply(settings);
    inForce = settings;
    const from = record.time(row);
    const whole = record.time(row + 1) - from;
    const part = Math.min(whole, until - from);
    for (let k = 0; k < PLACES.length; k++) {
      const theta = (PLACES[k] * part) / whole;
      for (let i = 0; i < volumes.length; i++) volumes[i] = insideStep(record, row, i, theta);
      network.rates(from + theta * whole, volumes, ...rates);
      addFlows(sum, network.flow, WEIGHTS[k] * part);
    }
  }
  return sum;
}

function insideStep(record: RunRecord, row: number, basin: number, theta: number): number {
  const y0 = record.volume(row, basin);
  return denseValue(y0, record.volume(row + 1, basin), record.inner1(row, basin), record.inner2(row, basin), theta);
}

function addFlows(sum: Passed, flow: Float64Array, weight: number): void {
  for (let i = 0; i < flow.length; i++) {
    if (flow[i] >= 0) sum.forward[i] += weight * flow[i];
    else sum.backward[i] -= weight * flow[i];
  }
}
