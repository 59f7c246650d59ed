import type { Scenario } from '../../scenario/scenario.ts';
import {
  AT_REST,
  type FailedStop,
  type Kept,
  keptSite,
  type PondRise,
  type StopTroubles,
  stopPump,
  stopWithValveFailed,
} from '../../trials/stop.ts';
import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import type { RunRecord } from '../record.ts';
import { type Band, bandsOf, restsOn } from './bands.ts';
import { judgeAtLeast, judged, type Marks, waysSentence } from './check.ts';
import { failedValveCheck } from './drainBackFailed.ts';
import { drainBackMends } from './drainBackMends.ts';
import { rainCheck } from './drainBackRain.ts';
import {
  bandWords,
  failedWords,
  keptWords,
  marksWords,
  riseWords,
  runWords,
  sentences,
  stopWords,
  thumbWords,
  waysWords,
} from './drainBackWords.ts';
import { edgeForRun, worstStop } from './runStops.ts';

/** Room wanted below the edge, m: our default. NRCS 378 asks 0.3 m of embankments, and there is no figure for liners. */
const FAIL = 0.025;
const PASS = 0.05;
/**
 * What the model itself may be off, m. With a check valve it is the head over stones that run below 20 mm, where
 * surface tension changes the coefficient by 10 % and the head by 7 %: of a rise of 30 mm, 2 mm. Without one, also
 * where along its way the main line lies: 30 m all above or all below the pond moves the rise by some 5 mm.
 */
const MODEL = { sound: 0.002, failed: 0.005 };

/** Every site's pump stops: as it is, with the check valve failed, and in rain; none where no level is kept. */
export function drainBackChecks(scenario: Scenario, run: RunRecord | undefined): Check[] {
  const found = attempt(scenario);
  if (found === 'nothing to ask') return [];
  if (found === 'no balance') return [withoutBalance(scenario)];
  const { kept, failed } = found;
  const [band, failedBand] = bandsOf(scenario, figuresWith(failed.troubles), [
    holdsBack(scenario) ? MODEL.sound : MODEL.failed,
    MODEL.failed,
  ]);
  return [drainBackCheck(found, band, run), failedValveCheck(kept, failed, failedBand), rainCheck(kept)].filter(
    (check) => check !== undefined,
  );
}

interface Stops {
  readonly kept: Kept;
  readonly trial: PondRise;
  readonly failed: FailedStop;
}

function attempt(s: Scenario): Stops | 'nothing to ask' | 'no balance' {
  try {
    const kept = keptSite(s);
    if (kept === undefined) return 'nothing to ask';
    return { kept, trial: stopPump(kept), failed: stopWithValveFailed(kept) };
  } catch (error) {
    if (error instanceof RunFailure) return 'no balance';
    throw error;
  }
}

function figuresWith(troubles: StopTroubles): (s: Scenario) => (number | undefined)[] {
  return (changed) => {
    try {
      const kept = keptSite(changed);
      return kept === undefined ? [] : [stopPump(kept).below, stopPump(kept, troubles).below];
    } catch (error) {
      if (error instanceof RunFailure) return [];
      throw error;
    }
  };
}

function holdsBack({ plumbing }: Scenario): boolean {
  const { kind } = plumbing.main.checkValve;
  return kind === 'sound' || kind === 'unknown';
}

export function marksOf({ limits }: Scenario): Marks {
  const given = limits['drain-back'];
  return given ? { fail: given[0], pass: given[1], origin: 'file' } : { fail: FAIL, pass: PASS, origin: 'our default' };
}

function drainBackCheck({ kept, trial, failed }: Stops, band: Band, run: RunRecord | undefined): Check {
  const { scenario } = kept;
  const { display } = scenario;
  const marks = marksOf(scenario);
  const inRun = run && worstStop(scenario, run);
  const worse = inRun !== undefined && inRun.below < trial.below - AT_REST ? inRun : undefined;
  const stands = worse ?? trial;
  const verdict = judgeAtLeast(stands.below, band.band, marks);
  const wanted = Math.max(marks.pass, marks.fail + band.band);
  const leaks = scenario.plumbing.main.checkValve.kind === 'leaking';
  const ways = (): string[] =>
    worse ? [edgeForRun(worse, wanted, display)] : drainBackMends({ kept, stop: stopPump, now: trial, wanted });
  return judged({
    name: 'drain-back',
    verdict,
    value: stands.below,
    limit: marks.fail,
    margin: stands.below - marks.fail,
    unit: 'm',
    band: band.band,
    rests: restsOn(band),
    where: worse ? 'run' : 'trial',
    t: stands.highest.t,
    origin: marks.origin,
    says: sentences(
      `${worse ? runWords(scenario, worse) : stopWords(scenario)} ${riseWords(stands, display)} ${marksWords(marks, display)}.`,
      failedWords(scenario, failed, worse ? ' from the level kept' : ''),
      leaks ? 'A check valve that leaks lets filter and pipe run empty in time: it counts as a failed one.' : '',
      worse ? '' : keptWords(scenario, kept.level),
      worse ? '' : waysWords(scenario, trial, holdsBack(scenario) ? 'With a valve that holds, ' : ''),
      bandWords(scenario, band),
      thumbWords(display),
    ),
    mend: verdict === 'pass' ? '' : waysSentence(ways()),
  });
}

function withoutBalance(s: Scenario): Check {
  const { fail, origin } = marksOf(s);
  return judged({
    name: 'drain-back',
    verdict: 'fail',
    value: null,
    limit: fail,
    margin: null,
    unit: 'm',
    origin,
    says: 'The site finds no running balance from which its pump could be stopped, so what runs back is not known.',
  });
}
