import { restoreNetwork } from '../results/inside.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { run } from '../simulate.ts';
import type { DyeTest } from './answer.ts';
import { dyeFigures } from './figures.ts';
import { filterWithMedia, flowsOf, porosityAt, watersOf } from './filterState.ts';
import { figureWords, NOT_FED, neverWords, notInRunWords, unfedWords } from './words.ts';

/**
 * The dye test of a site's filter at a moment of its run: at the flows right after what is done at that moment, held.
 *
 * @param at s of the run; left out: its start where the filter is fed then, else the first moment at which it is
 * @param record of the run; left out: the site is run
 * @throws RunFailure where the site is run and has no solution
 */
export function dyeTest(s: Scenario, at?: number, record?: RunRecord): DyeTest {
  const never = neverWords(s);
  const filter = filterWithMedia(s);
  if (never !== undefined || !filter) return { fed: false, at: at ?? null, says: never ?? '' };
  const of = record ?? run(s).record;
  const moment = at ?? firstFed(of);
  if (moment === undefined) return { fed: false, at: null, says: notInRunWords };
  const { network } = of;
  restoreNetwork(of, moment, new Float64Array(network.size));
  const flows = flowsOf(network);
  if (flows.bottom < NOT_FED) {
    const settings = of.settingsAt(of.rowAt(moment));
    return { fed: false, at: moment, says: unfedWords(s, network, settings, moment) };
  }
  const volumes = watersOf(network, filter.media, porosityAt(filter.media, of, moment));
  const figures = dyeFigures(volumes, flows, Math.round(filter.media.tanks));
  return { ...figures, at: moment, says: figureWords(s, figures) };
}

/** First moment of a record at which the filter is fed, s; undefined where it never is. */
function firstFed(record: RunRecord): number | undefined {
  const { bottom } = record.network.parts.circuit.flow;
  for (let row = 0; row < record.length; row++) {
    if (record.flow(row, bottom) >= NOT_FED) return record.time(row);
  }
  return undefined;
}
