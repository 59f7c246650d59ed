import type { Network } from '../network/network.ts';
import { levelsOf, settingsOf } from '../network/start.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { steadyVolumes } from '../steady.ts';

/** The pond level is narrowed to this, m. */
const NARROW = 1e-6;

/**
 * Highest level at which the pond is kept with the pump running, m: the fill mark or the float's set level, whichever
 * is the higher; undefined where the file names neither.
 *
 * @throws RunFailure where a float in the vault has no running balance to feel
 */
export function keptLevel(s: Scenario, network: Network): number | undefined {
  const float = floatLevel(s, network);
  const levels = [s.pond.fillMark, float].filter((z) => z !== undefined);
  return levels.length > 0 ? Math.max(...levels) : undefined;
}

/** Pond level at which the float shuts, m. */
export function floatLevel(s: Scenario, network: Network): number | undefined {
  const { autofill } = s;
  if (autofill === undefined) return undefined;
  return autofill.in === 'pond' ? autofill.set : pondOverVault(s, network, autofill.set);
}

/**
 * Pond level whose running balance has the vault at a level: higher by what the screen costs. A screen so blind that
 * the vault never gets there lets the float run until the pond spills; that level is the answer then.
 */
function pondOverVault(s: Scenario, network: Network, vaultLevel: number): number {
  const settings = settingsOf(s, network, s.pump.speed);
  const { vault } = network.parts.circuit;
  const short = (pond: number): number =>
    levelsOf(network, steadyVolumes(s, network, settings, pond))[vault] - vaultLevel;
  const spill = Math.min(...s.pond.rim.crest.map(([, z]) => z), s.pond.overflow?.elevation ?? Number.POSITIVE_INFINITY);
  let low = vaultLevel;
  let lowShort = short(low);
  if (lowShort >= 0 || low >= spill) return low;
  let high = Math.min(spill, low - 1.5 * lowShort);
  let highShort = short(high);
  if (highShort < 0) {
    high = spill;
    highShort = short(high);
    if (highShort < 0) return spill;
  }
  // Regula falsi, the standing end's weight halved where it stands twice (Illinois).
  let side = 0;
  while (high - low > NARROW) {
    const mid = low - (lowShort * (high - low)) / (highShort - lowShort);
    const midShort = short(mid);
    if (Math.abs(midShort) < NARROW) return mid;
    if (midShort < 0) {
      low = mid;
      lowShort = midShort;
      if (side < 0) highShort /= 2;
      side = -1;
    } else {
      high = mid;
      highShort = midShort;
      if (side > 0) lowShort /= 2;
      side = 1;
    }
  }
  return high;
}
