import { March } from '../march.ts';
import { assemble } from '../network/assemble.ts';
import { levelsOf, pondStart, standingVolumes } from '../network/start.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { trialSettings } from './trial.ts';

const MINUTE = 60;

/**
 * The level that moves most within a minute from everything standing still, the pump off: its basin and change, m.
 *
 * @throws RunFailure where the march fails
 */
export function standingMoves(s: Scenario): { basin: string; change: number } {
  const network = assemble(s);
  const march = new March(s, network, {
    settings: trialSettings(s, network, 0),
    volumes: standingVolumes(s, network, pondStart(s)),
    actions: [],
    weather: false,
    cutOut: false,
    pumpSpeed: 0,
  });
  const before = levelsOf(network, march.volumes);
  march.to(MINUTE);
  const changes = levelsOf(network, march.volumes).map((z, i) => z - before[i]);
  const most = changes.reduce((at, change, i) => (Math.abs(change) > Math.abs(changes[at]) ? i : at), 0);
  return { basin: network.parts.basins[most].name, change: changes[most] };
}
