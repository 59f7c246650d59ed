import type { Scenario } from '../../scenario/scenario.ts';
import type { Kept, PondRise, StopTroubles } from '../../trials/stop.ts';
import type { Check } from '../answer.ts';
import type { Band } from './bands.ts';
import { judgeAtLeast, judged, type Marks, told, waysSentence } from './check.ts';
import { drainBackMends } from './drainBackMends.ts';
import { bandWords, riseWords, sentences, waysWords } from './drainBackWords.ts';

/** The pond must not run over: our default. */
const MARKS: Marks = { fail: 0, pass: 0, origin: 'our default' };

/**
 * The stop without a check valve that holds. It fails where the pond runs over and the valve is missing, unknown or
 * leaks; with a sound one it is told what would happen if that failed.
 */
export function failedValveCheck(
  kept: Kept,
  { trial, troubles }: { trial: PondRise; troubles: StopTroubles },
  band: Band,
): Check {
  const { scenario } = kept;
  const sound = scenario.plumbing.main.checkValve.kind === 'sound';
  const verdict = judgeAtLeast(trial.below, band.band, MARKS);
  const mending = { kept, troubles, now: trial, wanted: band.band };
  const parts = {
    name: 'drain-back, valve failed',
    value: trial.below,
    unit: 'm',
    band: band.band,
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
  const shut = troubles.topValve === 0 ? ' and the top valve shut at that moment' : '';
  switch (plumbing.main.checkValve.kind) {
    case 'sound':
      return `With the check valve failed${shut}`;
    case 'none':
      return `With no check valve${shut}`;
    case 'unknown':
      return `Nobody knows whether a check valve holds; without one${shut}`;
    case 'leaking':
      return `With the check valve, which leaks, failed${shut}`;
  }
}
