import type { Scenario } from '../../scenario/scenario.ts';
import {
  type FailedStop,
  type Kept,
  type PondRise,
  type StopTroubles,
  stopWithValveFailed,
} from '../../trials/stop.ts';
import type { Check } from '../answer.ts';
import { type Band, restsOn } from './bands.ts';
import { judgeAtLeast, judged, type Marks, told, waysSentence } from './check.ts';
import { drainBackMends } from './drainBackMends.ts';
import { bandWords, riseWords, sentences, shutWords, waysWords } from './drainBackWords.ts';

/** The pond must not run over: our default. */
const MARKS: Marks = { fail: 0, pass: 0, origin: 'our default' };

/**
 * The stop without a check valve that holds. It fails where the pond runs over and the valve is missing, unknown or
 * leaks; with a sound one it is told what would happen if that failed.
 */
export function failedValveCheck(kept: Kept, { trial, troubles }: FailedStop, band: Band): Check {
  const { scenario } = kept;
  const sound = scenario.plumbing.main.checkValve.kind === 'sound';
  const verdict = judgeAtLeast(trial.below, band.band, MARKS);
  const stop = (changed: Kept): PondRise => stopWithValveFailed(changed).trial;
  const mending = { kept, stop, now: trial, wanted: band.band };
  const parts = {
    name: 'drain-back, valve failed',
    value: trial.below,
    unit: 'm',
    band: band.band,
    rests: restsOn(band),
    t: trial.highest.t,
    origin: MARKS.origin,
    says: sentences(
      sound && verdict === 'fail' ? 'It floods if the check valve fails.' : '',
      `${openingWords(scenario, troubles)} the pond ${riseWords(trial, scenario.display)}.`,
      waysWords(scenario, trial),
      bandWords(scenario, band),
    ),
    mend: verdict === 'pass' ? '' : waysSentence(drainBackMends(mending)),
  };
  return sound ? told(parts) : judged({ ...parts, verdict, limit: MARKS.fail, margin: trial.below - MARKS.fail });
}

function openingWords({ plumbing }: Scenario, troubles: StopTroubles): string {
  const shut = shutWords(troubles);
  switch (plumbing.main.checkValve.kind) {
    case 'sound':
      return `When the pump stops with the check valve failed${shut},`;
    case 'none':
      return `When the pump stops with no check valve${shut},`;
    case 'unknown':
      return `Nobody knows whether a check valve holds; when the pump stops with one that fails${shut},`;
    case 'leaking':
      return `When the pump stops with the check valve, which leaks, failed${shut},`;
  }
}
