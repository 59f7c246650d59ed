import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { dammedFalls } from './dammedFalls.ts';
import { fill } from './filling.ts';
import { firstStart } from './firstStart.ts';
import { type Kept, keptSite, overflowBlocked, SHOWER, stopPump, stopTrial, stopWithValveFailed } from './stop.ts';

/** The trial behind each check that has one, by the check's name. */
const TRIALS: Readonly<Record<string, (s: Scenario) => RunRecord | undefined>> = {
  'drain-back': (s) => stopTrial(s)?.record,
  'drain-back, valve failed': fromKept((kept) => stopWithValveFailed(kept).trial.record),
  'drain-back in rain': fromKept((kept) => stopPump(overflowBlocked(kept), { rain: SHOWER }).record),
  'first start': (s) => firstStart(s)?.record,
  'dammed falls': (s) => dammedFalls(s)?.record,
  filling: (s) => fill(s)?.record,
};

function fromKept(stop: (kept: Kept) => RunRecord): (s: Scenario) => RunRecord | undefined {
  return (s) => {
    const kept = keptSite(s);
    return kept && stop(kept);
  };
}

/**
 * The record that a check's figure and moment were read from, run again; undefined where the check has no trial.
 *
 * @throws RunFailure where the trial has no start to run from
 */
export function trialRecord(s: Scenario, check: string): RunRecord | undefined {
  return Object.hasOwn(TRIALS, check) ? TRIALS[check](s) : undefined;
}
