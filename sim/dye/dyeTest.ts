import { restoreNetwork } from '../results/inside.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { run } from '../simulate.ts';
import type { DyeTest } from './answer.ts';
import {
  firstFed,
  isJustStopped,
  NOT_FED,
  notInRunWords,
  outsideWords,
  passingWords,
  SWITCHED,
  unfedWords,
} from './fed.ts';
import { dyeFigures } from './figures.ts';
import { filterWithMedia, flowsOf, porosityAt, watersOf } from './filterState.ts';
import { figureWords, neverWords } from './words.ts';

/**
 * The dye test of a site's filter at a moment of its run: at the flows right after what is done at that moment, held.
 *
 * @param at s of the run; left out: its start where the filter is fed then, else once it is, the pump up to speed
 * @param record of the run; left out: the site is run
 * @throws RunFailure where the site is run and has no solution
 */
export function dyeTest(s: Scenario, at?: number, record?: RunRecord): DyeTest {
  const never = neverWords(s);
  const filter = filterWithMedia(s);
  if (never !== undefined || !filter) return { fed: false, at: at ?? null, says: never ?? '' };
  const of = record ?? run(s).record;
  const moment = at ?? firstFlowing(of);
  if (moment === undefined) return { fed: false, at: null, says: notInRunWords };
  if (!(moment >= of.time(0) && moment <= of.time(of.length - 1)))
    return { fed: false, at: moment, says: outsideWords };
  const { network } = of;
  restoreNetwork(of, moment, new Float64Array(network.size));
  const flows = flowsOf(network);
  const { ramp } = of.settingsAt(of.rowAt(moment));
  if (flows.bottom < NOT_FED || isJustStopped(ramp, moment))
    return { fed: false, at: moment, says: unfedWords(s, of, moment) };
  const volumes = watersOf(network, filter.media, porosityAt(filter.media, of, moment));
  const figures = dyeFigures(volumes, flows, Math.round(filter.media.tanks));
  const passing = passingWords(ramp, moment);
  return { ...figures, at: moment, says: `${passing} ${figureWords(s, figures)}`.trimStart() };
}

/** First moment at which the filter is fed by flows that last, or else by any, s; undefined where it never is. */
function firstFlowing(record: RunRecord): number | undefined {
  const first = firstFed(record, record.time(0));
  if (first === undefined) return undefined;
  const { ramp } = record.settingsAt(record.rowAt(first));
  return passingWords(ramp, first) === '' ? first : (firstFed(record, ramp.start + SWITCHED) ?? first);
}
