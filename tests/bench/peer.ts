import type { Network } from '../../sim/network/network.ts';
import { levelsOf, settingsOf } from '../../sim/network/start.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { extrapolate } from '../solver/odex.mjs';
import { marchOf } from './accuracy.ts';
import { time } from './measure.ts';

/** Time from a standing start over which the peer is measured, s: it is explicit, and a day would take it minutes. */
const SPAN = 600;

/**
 * The same rate function by the npm package odex (Gragg–Bulirsch–Stoer extrapolation), at the loosest tolerance that
 * comes as near to a tight run as ours does; how many times our time it takes.
 */
export function againstPeer(
  whole: Scenario,
  network: Network,
  volumes: Float64Array,
): { name: string; ms: number; spread: number; rates: number; error: number; peer: string; ratio: number } {
  const s: Scenario = { ...whole, span: SPAN, actions: [], weather: { evaporation: 0, rain: undefined } };
  const end = (tolerance: number): Float64Array => levelsOf(network, marchOf(s, network, volumes, tolerance).volumes);
  const exact = end(1e-4);
  const miss = (levels: Float64Array): number => Math.max(...levels.map((z, i) => Math.abs(z - exact[i])));
  const ours = miss(end(1));
  const timing = time(() => void marchOf(s, network, volumes));
  const run = marchOf(s, network, volumes);

  network.apply(settingsOf(s, network, 1));
  const f = new Float64Array(network.size);
  const g = new Float64Array(network.quadratures);
  const state = new Float64Array(network.size);
  const rate = (t: number, y: number[]): number[] => {
    state.set(y);
    network.rates(t, state, f, g);
    return Array.from(f);
  };
  const peer = (tolerance: number): number[] => extrapolate(rate, Array.from(volumes), SPAN, tolerance);
  let tolerance = 1e-3;
  while (tolerance > 1e-9 && miss(levelsOf(network, Float64Array.from(peer(tolerance)))) > ours) tolerance /= 10;
  const theirs = time(() => void peer(tolerance), 1000);
  return {
    name: 'peer-10min',
    ...timing,
    rates: run.work.rates,
    error: ours,
    peer: 'odex',
    ratio: theirs.ms / timing.ms,
  };
}
