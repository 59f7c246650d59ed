import type { Balance } from '../balance.ts';
import { treatedFlow } from '../laws/removal.ts';
import { bedVolume } from '../network/media.ts';
import { lossesOf } from '../results/checks/loss.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { PondWater } from './answer.ts';
import { waterSays } from './words.ts';

/** Below this a flow counts as none, m³/s. */
const NO_FLOW = 1e-9;

/**
 * How a running site treats its water, taken as one well mixed volume: what is removed in a pass is 1 − exp(−k t) of
 * what goes through the media, t their empty bed contact time; what goes by the top feed or round them comes back as
 * it went. No water-quality test.
 */
export function pondWater(s: Scenario, balance: Balance): PondWater {
  const { flows } = balance.answer;
  const volume = balance.volumes.reduce((sum, v) => sum + v, 0);
  const media = s.filter?.media;
  const through = Math.max(0, flows.media ?? 0);
  const most = media ? media.removal * bedVolume(media) : 0;
  const out = new Float64Array(2);
  treatedFlow(through, most, out);
  const treated = out[0];
  const { splash, leak, edges } = lossesOf(s, balance, 0);
  const leaves = treated + splash + leak + edges;
  const figures: Omit<PondWater, 'says'> = {
    volume,
    removal: through > NO_FLOW ? treated / through : 0,
    turnover: flows.main > NO_FLOW ? volume / flows.main : null,
    treatedTurnover: treated > NO_FLOW ? volume / treated : null,
    halfLife: treated > NO_FLOW ? (Math.LN2 * volume) / treated : null,
    leastHalfLife: most > NO_FLOW ? (Math.LN2 * volume) / most : null,
    steady: leaves > NO_FLOW ? s.load / leaves : null,
  };
  return { ...figures, says: waterSays(s, figures) };
}
