import { firstStart } from '../../trials/firstStart.ts';
import { keptSite } from '../../trials/stop.ts';
import type { Check } from '../answer.ts';
import type { RunRecord } from '../record.ts';
import { channelingCheck } from './channeling.ts';
import type { CheckInput } from './check.ts';
import { cleaningCheck } from './cleaning.ts';
import { dammedFallsCheck } from './dammedFalls.ts';
import { drainBackChecks } from './drainBack.ts';
import { rainCheck } from './drainBackRain.ts';
import { dutyCheck } from './duty.ts';
import { fallsCheck } from './falls.ts';
import { fillingCheck } from './filling.ts';
import { firstStartCheck } from './firstStart.ts';
import { headroomCheck } from './headroom.ts';
import { lossCheck } from './loss.ts';
import { reachCheck } from './reach.ts';
import { splitCheck } from './split.ts';
import { turnoverCheck } from './turnover.ts';
import { velocityCheck } from './velocity.ts';
import { volumeCheck } from './volume.ts';

export interface Asker {
  readonly name: string;
  /** @param run record of the run, whose own pump stops are judged too */
  readonly ask: (input: CheckInput, run: RunRecord | undefined) => Check | Check[] | undefined;
}

/** A check whose figure is had from one balance or one short trial, and may so be asked again for every assumption. */
export interface QuickAsker {
  readonly name: string;
  readonly figure: (input: CheckInput) => Pick<Check, 'value'> | undefined;
}

const quick = (name: string, ask: (input: CheckInput) => Check | undefined): Asker & QuickAsker => ({
  name,
  ask,
  figure: ask,
});

/** What every site is asked, in the order in which it is told. */
export const ASKERS: readonly Asker[] = [
  { name: 'drain-back', ask: ({ scenario }, run) => drainBackChecks(scenario, run) },
  { name: 'first start', ask: ({ scenario }) => firstStartCheck(scenario) },
  quick('dammed falls', ({ scenario }) => dammedFallsCheck(scenario)),
  quick('falls', fallsCheck),
  quick('split', splitCheck),
  { name: 'channeling', ask: channelingCheck },
  { name: 'cleaning', ask: cleaningCheck },
  quick('headroom', headroomCheck),
  quick('reach', reachCheck),
  quick('velocity', velocityCheck),
  quick('duty', dutyCheck),
  quick('turnover', turnoverCheck),
  quick('volume', volumeCheck),
  quick('filling', fillingCheck),
  quick('loss', lossCheck),
];

const isQuick = (asker: Asker): asker is Asker & QuickAsker => 'figure' in asker;

export const QUICK: readonly QuickAsker[] = [
  { name: 'drain-back in rain', figure: ({ scenario }) => inRain(scenario) },
  { name: 'first start', figure: ({ scenario }) => vaultSpare(scenario) },
  ...ASKERS.filter(isQuick),
];

/** What is left over the pump's minimum on a dry first start: without the ways to mend it, which take many starts. */
function vaultSpare(scenario: CheckInput['scenario']): Pick<Check, 'value'> | undefined {
  const trial = firstStart(scenario);
  return trial && { value: trial.lowestVault.value - scenario.pump.minimum };
}

function inRain(scenario: CheckInput['scenario']): Check | undefined {
  const kept = keptSite(scenario);
  return kept && rainCheck(kept);
}
