import { formatDuration, formatLength, formatVolume } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { type DammedTrial, dammedFalls } from '../../trials/dammedFalls.ts';
import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import { told } from './check.ts';

/** Less than a tenth of a liter has passed no edge, m³. */
const NOTHING = 1e-4;

/** How long the pump has water when leaves dam the falls wholly, and what is then left for the fish. */
export function dammedFallsCheck(scenario: Scenario): Check | undefined {
  try {
    const trial = dammedFalls(scenario);
    if (trial === undefined) return undefined;
    return told({
      name: 'dammed falls',
      value: trial.starves,
      unit: 's',
      t: trial.starves,
      origin: 'our default',
      says: says(scenario, trial),
    });
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}

function says({ display }: Scenario, { dammed, starves, deepest, lost }: DammedTrial): string {
  const what = dammed === 'lip' ? 'the spillway lip' : `‘${dammed}’`;
  const passes = lost > NOTHING ? `${formatVolume(lost, display)} have run over an edge upstream` : '';
  const left = `${formatLength(deepest, display)} of water are left at the deepest`;
  const wedge = 'A dammed run keeps less than this: a wedge, not an even depth.';
  if (starves === null) {
    const aside = passes === '' ? 'the water finds another way down' : `${passes}`;
    return `With ${what} dammed wholly the vault does not come to the pump’s minimum within 24 h: ${aside}, and ${left}. ${wedge}`;
  }
  const after = passes === '' ? left : `${passes} and ${left}`;
  return `With ${what} dammed wholly the vault is at the pump’s minimum after ${formatDuration(starves)}: by then ${after}. ${wedge}`;
}
