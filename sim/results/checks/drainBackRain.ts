import { formatLength } from '../../quantity/index.ts';
import { type Kept, overflowBlocked, SHOWER, stopPump } from '../../trials/stop.ts';
import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import { told } from './check.ts';
import { riseWords } from './drainBackWords.ts';

/** The stop at the start of a heavy shower, leaves on the overflow pipe; undefined where that can't be followed. */
export function rainCheck(kept: Kept): Check | undefined {
  const { display, pond } = kept.scenario;
  try {
    const trial = stopPump(overflowBlocked(kept), { rain: SHOWER });
    const rain = `${formatLength(SHOWER, display)} of rain in the hour after the stop`;
    return told({
      name: 'drain-back in rain',
      value: trial.below,
      unit: 'm',
      t: trial.highest.t,
      origin: 'our default',
      says: `With ${rain}${pond.overflow ? ' and the overflow pipe blocked' : ''} the pond ${riseWords(trial, display)}.`,
    });
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}
