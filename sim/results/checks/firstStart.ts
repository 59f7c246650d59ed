import { formatDuration, formatLength, formatVolume } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { type FirstStartTrial, firstStart, waterToAdd } from '../../trials/firstStart.ts';
import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import { judgeAtLeast, judged, type Marks, waysSentence } from './check.ts';
import { firstStartMends } from './firstStartMends.ts';

/** What the model may be off, m: dry stone, foam and media soak up water that it does not count. Our estimate. */
const MODEL = 0.005;

/** Whether a dry water course can be filled from a full pond before the pump draws air, and what has to be added. */
export function firstStartCheck(scenario: Scenario): Check | undefined {
  const trial = orElse(() => firstStart(scenario), undefined);
  if (trial === undefined) return undefined;
  const { minimum } = scenario.pump;
  const { value, t } = trial.lowestVault;
  const marks: Marks = { fail: minimum, pass: minimum, origin: 'file' };
  const verdict = judgeAtLeast(value, MODEL, marks);
  const added = orElse(() => waterToAdd(scenario, trial), undefined);
  return judged({
    name: 'first start',
    verdict,
    value,
    limit: minimum,
    margin: value - minimum,
    unit: 'm',
    band: MODEL,
    t,
    origin: marks.origin,
    says: `${vaultSays(scenario, trial)} ${pondSays(scenario, trial, added)}`,
    mend: verdict === 'pass' ? '' : waysSentence(firstStartMends(scenario, trial, minimum + MODEL, added)),
  });
}

function orElse<T>(ask: () => T, otherwise: T): T {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RunFailure) return otherwise;
    throw error;
  }
}

function vaultSays({ pump, display }: Scenario, { lowestVault, starves }: FirstStartTrial): string {
  const over = lowestVault.value - pump.minimum;
  const when = formatDuration(lowestVault.t);
  if (over >= 0)
    return `On a dry first start the vault falls to ${formatLength(over, display)} above the pump’s minimum, after ${when}.`;
  return (
    `On a dry first start the pump draws air: the vault is at its minimum after ${formatDuration(starves ?? 0)} and ` +
    `falls to ${formatLength(-over, display)} below it after ${when}.`
  );
}

function pondSays({ display }: Scenario, { start, lowestPond }: FirstStartTrial, added: number | undefined): string {
  const fall = `The pond falls ${formatLength(start - lowestPond.value, display)} from its mark`;
  if (added === undefined) return `${fall}.`;
  return `${fall}, and ${formatVolume(added, display)} have to be added to have it there with the pump running.`;
}
