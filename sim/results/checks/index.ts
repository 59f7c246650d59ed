import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import type { RunRecord } from '../record.ts';
import { channelingCheck } from './channeling.ts';
import type { CheckInput } from './check.ts';
import { dammedFallsCheck } from './dammedFalls.ts';
import { drainBackChecks } from './drainBack.ts';
import { dutyCheck } from './duty.ts';
import { fallsCheck } from './falls.ts';
import { fillingCheck } from './filling.ts';
import { firstStartCheck } from './firstStart.ts';
import { headroomCheck } from './headroom.ts';
import { lossCheck } from './loss.ts';
import { reachCheck } from './reach.ts';
import { withSketchBands } from './sketchBands.ts';
import { splitCheck } from './split.ts';
import { turnoverCheck } from './turnover.ts';
import { velocityCheck } from './velocity.ts';
import { volumeCheck } from './volume.ts';

type Asker = (input: CheckInput, run: RunRecord | undefined) => Check | Check[] | undefined;

/** What every site is asked, in the order in which it is told. */
const ASKERS: readonly (readonly [name: string, ask: Asker])[] = [
  ['drain-back', ({ scenario }, run) => drainBackChecks(scenario, run)],
  ['first start', ({ scenario }) => firstStartCheck(scenario)],
  ['dammed falls', ({ scenario }) => dammedFallsCheck(scenario)],
  ['falls', fallsCheck],
  ['split', splitCheck],
  ['channeling', channelingCheck],
  ['headroom', headroomCheck],
  ['reach', reachCheck],
  ['velocity', velocityCheck],
  ['duty', dutyCheck],
  ['turnover', turnoverCheck],
  ['volume', volumeCheck],
  ['filling', fillingCheck],
  ['loss', lossCheck],
];

/**
 * Puts a site through its trials and checks. A check whose trial comes to no end is left out, and why is told.
 *
 * @param run record of the run, whose own pump stops are judged too
 */
export function askAll(input: CheckInput, run: RunRecord | undefined): { checks: Check[]; leftOut: string[] } {
  const checks: Check[] = [];
  const leftOut: string[] = [];
  for (const [name, ask] of ASKERS) {
    try {
      checks.push(...[ask(input, run) ?? []].flat());
    } catch (error) {
      if (!(error instanceof RunFailure)) throw error;
      // Without a running balance that has been told once, for all the checks that rest on it.
      if (input.balance) leftOut.push(`The check ‘${name}’ is left out (${error.words}).`);
    }
  }
  return { checks: withSketchBands(input, checks), leftOut };
}
