/** Where the answer to a question turns as one setting of a site moves over its range. */
import { balanceOrFailure } from '../balance.ts';
import { marksOf } from '../results/checks/drainBack.ts';
import { MOST_CHANNELED } from '../results/checks/limits.ts';
import { worstStop } from '../results/checks/runStops.ts';
import { RunFailure } from '../results/failure.ts';
import { readSite } from '../scenario/read.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { run } from '../simulate.ts';
import { stopTrial } from '../trials/stop.ts';
import { failingStretches, type Stretch } from './aim.ts';
import { type Setting, withSetting } from './setting.ts';

/** By how much a site keeps what a question asks, in the question's own unit; undefined where it has no answer. */
const MARGINS = {
  /** Room below the edge after the worse of the trial and the stops of the site's own run, over what is wanted, m. */
  stop: (s: Scenario) => {
    const below = stopTrial(s)?.below;
    if (below === undefined) return undefined;
    const { fail } = marksOf(s);
    // The run costs the more, and a site that fails its trial fails.
    return below < fail ? below - fail : Math.min(below, worstStop(s, run(s).record)?.below ?? below) - fail;
  },
  /** Channeled share under its limit. */
  filter: (s: Scenario) => {
    const found = balanceOrFailure(s);
    if (found instanceof RunFailure) return undefined;
    return (s.limits.channeling ?? MOST_CHANNELED) - (found.answer.channeled ?? 0);
  },
} as const satisfies Record<string, (s: Scenario) => number | undefined>;

export type Asked = keyof typeof MARGINS;

/**
 * Stretches of a setting's range on which the site would fail what is asked, or could not be read or balanced.
 *
 * @param file the site's file as a value
 * @param within how near a turn is found, in the setting's SI unit
 */
export function failingSettings(
  file: unknown,
  setting: Setting,
  asked: Asked,
  range: Stretch,
  within: number,
): Stretch[] {
  const margin = (value: number): number | undefined => {
    const reading = readSite(withSetting(file, setting, value));
    if (!reading.ok) return undefined;
    try {
      return MARGINS[asked](reading.scenario);
    } catch (error) {
      if (error instanceof RunFailure) return undefined;
      throw error;
    }
  };
  return failingStretches(margin, range, within);
}
