import { findBalance } from './balance.ts';
import { March } from './march.ts';
import type { Network } from './network/network.ts';
import { layOwnLevels, levelsOf, pondStart, settingsOf, standingVolumes, withoutSupply } from './network/start.ts';
import { RunFailure } from './results/failure.ts';
import type { Scenario } from './scenario/scenario.ts';

const HOUR = 3600;
/** Overnight is over when no level has moved this much in an hour, m, or after a day. */
const AT_REST = 1e-4;
const LONGEST_NIGHT = 24;

/**
 * Volumes at t = 0 by the file's start rule, m³: the running balance (everything standing where there is none),
 * everything standing, or where the site comes to rest overnight with the pump off; with the basins' own levels laid over.
 */
export function startVolumes(s: Scenario, network: Network): Float64Array {
  const level = pondStart(s);
  let volumes: Float64Array;
  if (s.start === 'running') volumes = runningVolumes(s, network, level);
  else if (s.start === 'overnight') volumes = overnight(s, network, level);
  else volumes = standingVolumes(s, network, level);
  layOwnLevels(s, network, volumes);
  return volumes;
}

/** The running balance; a water course that finds none starts standing, which the cautions tell. */
function runningVolumes(s: Scenario, network: Network, level: number): Float64Array {
  try {
    return findBalance(s, network, level).volumes;
  } catch (error) {
    if (error instanceof RunFailure) return standingVolumes(s, network, level);
    throw error;
  }
}

/** Where the site comes to rest with the pump off and the pond held, from standing. */
function overnight(s: Scenario, network: Network, level: number): Float64Array {
  const settings = { ...withoutSupply(settingsOf(s, network, 0)), pondHeld: true };
  const march = new March(s, network, {
    settings,
    volumes: standingVolumes(s, network, level),
    actions: [],
    weather: false,
    cutOut: false,
    pumpSpeed: 0,
  });
  let before = levelsOf(network, march.volumes);
  for (let hour = 1; hour <= LONGEST_NIGHT; hour++) {
    march.to(hour * HOUR);
    const now = levelsOf(network, march.volumes);
    if (now.every((z, i) => Math.abs(z - before[i]) < AT_REST)) break;
    before = now;
  }
  return Float64Array.from(march.volumes);
}
