import {
  type Display,
  formatDuration,
  formatFlow,
  formatHead,
  formatLength,
  formatPercent,
  formatSpeed,
  formatVolume,
} from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { firstStart } from '../../trials/firstStart.ts';
import { keptSite } from '../../trials/stop.ts';
import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import { assumptionWords } from './assumptionWords.ts';
import { type Band, bandsOf, restsOn } from './bands.ts';
import type { CheckInput } from './check.ts';
import { dammedFallsCheck } from './dammedFalls.ts';
import { rainCheck } from './drainBackRain.ts';
import { dutyCheck } from './duty.ts';
import { fallsCheck } from './falls.ts';
import { fillingCheck } from './filling.ts';
import { headroomCheck } from './headroom.ts';
import { lossCheck } from './loss.ts';
import { reachCheck } from './reach.ts';
import { splitCheck } from './split.ts';
import { turnoverCheck } from './turnover.ts';
import { balanceOf } from './variants.ts';
import { velocityCheck } from './velocity.ts';
import { volumeCheck } from './volume.ts';

/** Checks whose figure is had from one balance or one short trial, and may so be asked again for every assumption. */
const QUICK: readonly (readonly [name: string, ask: (input: CheckInput) => Pick<Check, 'value'> | undefined])[] = [
  ['drain-back in rain', ({ scenario }) => inRain(scenario)],
  ['first start', ({ scenario }) => vaultSpare(scenario)],
  ['dammed falls', ({ scenario }) => dammedFallsCheck(scenario)],
  ['falls', fallsCheck],
  ['split', splitCheck],
  ['headroom', headroomCheck],
  ['reach', reachCheck],
  ['velocity', velocityCheck],
  ['duty', dutyCheck],
  ['turnover', turnoverCheck],
  ['volume', volumeCheck],
  ['filling', fillingCheck],
  ['loss', lossCheck],
];

/** What is left over the pump's minimum on a dry first start: without the ways to mend it, which take many starts. */
function vaultSpare(scenario: Scenario): Pick<Check, 'value'> | undefined {
  const trial = firstStart(scenario);
  return trial && { value: trial.lowestVault.value - scenario.pump.minimum };
}

function inRain(scenario: Scenario): Check | undefined {
  const kept = keptSite(scenario);
  return kept && rainCheck(kept);
}

/** A band under this share of the figure is not worth a sentence. */
const SLIGHT = 0.005;

/**
 * The checks of a site from a sketch, each with the band that the assumed numbers give its figure and the one that moves
 * it most: the site is asked again at both ends of every band. One that holds by less than its band is tight. A
 * site without a sketch keeps its checks as they are.
 */
export function withSketchBands({ scenario }: CheckInput, checks: readonly Check[]): Check[] {
  if (!scenario.sketched) return [...checks];
  const asked = QUICK.filter(([name]) => typeof checks.find((check) => check.name === name)?.value === 'number');
  const figures = (changed: Scenario): (number | undefined)[] => {
    // Of the changed site only the figures are wanted, not how good they are in turn.
    const input = { scenario: { ...changed, assumed: [], sketched: undefined }, balance: balanceOf(changed) };
    return asked.map(([, ask]) => figureOf(() => ask(input)));
  };
  // The reach's own band is that of the box, which is among the assumptions.
  const models = asked.map(([name]) => (name === 'reach' ? 0 : (checks.find((each) => each.name === name)?.band ?? 0)));
  const bands = bandsOf(scenario, figures, models, 'on all');
  const byName = new Map(asked.map(([name], i) => [name, bands[i]] as const));
  return checks.map((check) => {
    const band = byName.get(check.name);
    return band === undefined ? check : banded(check, band, scenario);
  });
}

function figureOf(ask: () => Pick<Check, 'value'> | undefined): number | undefined {
  try {
    return ask()?.value ?? undefined;
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}

function banded(check: Check, found: Band, scenario: Scenario): Check {
  const { band, most } = found;
  if (most === undefined || band < SLIGHT * Math.abs(check.value ?? 0)) return { ...check, band };
  const good = `The figure is good to ± ${figureWords(band, check, scenario.display)}`;
  const rests = `, most of it for ${assumptionWords(scenario, most.assumption)}, which is assumed.`;
  const verdict = check.verdict === 'pass' && check.margin !== null && check.margin < band ? 'tight' : check.verdict;
  return { ...check, band, rests: restsOn(found), verdict, says: `${check.says} ${good}${rests}` };
}

function figureWords(value: number, { name, unit, value: figure }: Check, display: Display): string {
  switch (unit) {
    case 'm':
      return name === 'reach' ? formatHead(value, display) : formatLength(value, display);
    case 'm3':
      return formatVolume(value, display);
    case 'm3/s':
      return formatFlow(value, display, figure ?? value);
    case 'm/s':
      return formatSpeed(value, display);
    case 's':
      return formatDuration(value);
    default:
      return formatPercent(value);
  }
}
