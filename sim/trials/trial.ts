import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';
import { settingsOf, withoutSupply } from '../network/start.ts';
import type { RunRecord } from '../results/record.ts';
import type { Action, CrestPoint, Deed, Scenario } from '../scenario/scenario.ts';

/** A short simulation of its own: its record can be opened like that of a run. */
export interface Trial {
  readonly record: RunRecord;
}

/** Settings of the file at t = 0 without weather and supply, the pump at a speed. */
export function trialSettings(s: Scenario, network: Network, speed: number): Settings {
  return withoutSupply(settingsOf(s, network, speed));
}

/** An action of a trial, done at its start. */
export function atOnce(deed: Deed): Action {
  return { timing: { at: 0 }, deed, place: 'trial' };
}

export function lowestPoint(crest: readonly CrestPoint[]): number {
  return Math.min(...crest.map(([, z]) => z));
}
