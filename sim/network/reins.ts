import type { Scenario } from '../scenario/scenario.ts';
import type { Trigger } from '../solver/trigger.ts';
import type { Agenda } from './agenda.ts';
import type { Hoses } from './hoses.ts';
import type { PumpSwitch } from './pumpSwitch.ts';
import type { Settings } from './settings.ts';
import type { Sky } from './weather.ts';

/** A trigger with its name in the log and what it does. */
export interface Switch {
  readonly trigger: Trigger;
  readonly name: string;
  /** Its action's place in the file; undefined for what is no action. */
  readonly rank: number | undefined;
  readonly act: (t: number) => void;
}

/** What a deed of the file may turn while a site runs. */
export interface Reins {
  readonly scenario: Scenario;
  readonly settings: Settings;
  readonly agenda: Agenda;
  readonly sky: Sky;
  readonly pump: PumpSwitch;
  readonly hoses: Hoses;

  set(change: Partial<Settings>): void;
  log(t: number, what: string): void;
  indexOf(basin: string): number;

  /** Sets a switch; armed where the level has yet to get there. Returns it. */
  watch(basin: string, level: number, direction: 1 | -1, name: string, act: (t: number) => void, rank?: number): Switch;

  /** Whether a switch's level is already reached or passed. */
  holds(s: Switch): boolean;

  /** Takes away the switch of a name, if there is one. */
  drop(name: string): void;

  /** Puts the sky's rates in force; without weather, storms alone. */
  refreshSky(t: number): void;

  /** Lets the pump's speed run to where it is driven now, over three seconds from wherever it is; on, if it does so already. */
  ramp(t: number): void;
}
