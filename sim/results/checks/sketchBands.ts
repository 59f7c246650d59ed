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
import type { Check } from '../answer.ts';
import { RunFailure } from '../failure.ts';
import { QUICK } from './askers.ts';
import { assumptionWords } from './assumptionWords.ts';
import { type Band, bandsOf, restsOn } from './bands.ts';
import type { CheckInput } from './check.ts';
import { balanceOf } from './variants.ts';

/** A band under this share of the figure is not worth a sentence. */
const SLIGHT = 0.005;

/**
 * The checks of a site from a sketch, each with the band that the assumed numbers give its figure and the one that moves
 * it most: the site is asked again at both ends of every band. One that holds by less than its band is tight. A
 * site without a sketch keeps its checks as they are.
 */
export function withSketchBands({ scenario }: CheckInput, checks: readonly Check[]): Check[] {
  if (!scenario.sketched) return [...checks];
  const asked = QUICK.filter(({ name }) => typeof checks.find((check) => check.name === name)?.value === 'number');
  const figures = (changed: Scenario): (number | undefined)[] => {
    // Of the changed site only the figures are wanted, not how good they are in turn.
    const input = { scenario: { ...changed, assumed: [], sketched: undefined }, balance: balanceOf(changed) };
    return asked.map(({ figure }) => figureOf(() => figure(input)));
  };
  // The reach's own band is that of the box, which is among the assumptions.
  const models = asked.map(({ name }) =>
    name === 'reach' ? 0 : (checks.find((each) => each.name === name)?.band ?? 0),
  );
  const bands = bandsOf(scenario, figures, models, 'on all');
  const byName = new Map(asked.map(({ name }, i) => [name, bands[i]] as const));
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
