import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import type { RunRecord } from '../record.ts';
import { ASKERS } from './askers.ts';
import type { CheckInput } from './check.ts';
import { withSketchBands } from './sketchBands.ts';

/**
 * Puts a site through its trials and checks. A check whose trial comes to no end is left out, and why is told.
 *
 * @param run record of the run, whose own pump stops are judged too
 */
export function askAll(input: CheckInput, run: RunRecord | undefined): { checks: Check[]; leftOut: string[] } {
  const checks: Check[] = [];
  const leftOut: string[] = [];
  for (const { name, ask } of ASKERS) {
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
