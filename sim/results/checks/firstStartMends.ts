import { formatFlow, formatLength, formatVolume } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { type FirstStartHelp, type FirstStartTrial, firstStart } from '../../trials/firstStart.ts';
import { RunFailure } from '../failure.ts';
import { leastSteps, lowestOf, rulerStep } from './variants.ts';

/** Hoses are looked for in steps of 5 L/min (1 gpm), to 20 of them; vaults are deepened by 50 mm (2 in). */
const HOSE = { metric: 5e-3 / 60, us: 0.003785411784 / 60 };
const MOST_HOSE = 20;
const DEEPER = { metric: 0.05, us: 0.0508 };
const MOST_DEEPER = 20;

/**
 * What keeps the vault up on a first start, each found by starting again with it.
 *
 * @param wanted vault level to be kept, m
 * @param added water that has to be added in the end, m³
 */
export function firstStartMends(
  s: Scenario,
  trial: FirstStartTrial,
  wanted: number,
  added: number | undefined,
): string[] {
  const ways = [withHose(s, wanted), withMoreWater(s, trial, wanted), withDeeperVault(s, wanted)];
  const found = ways.filter((way) => way !== '');
  if (found.length > 0 || added === undefined) return found;
  return [
    'start in stages: stop the pump before the vault is at its minimum, fill the pond to its mark and start again, ' +
      `until ${formatVolume(added, s.display)} have been added`,
  ];
}

function lowestVault(s: Scenario, help: FirstStartHelp): number {
  try {
    return firstStart(s, help)?.lowestVault.value ?? Number.NEGATIVE_INFINITY;
  } catch (error) {
    if (error instanceof RunFailure) return Number.NEGATIVE_INFINITY;
    throw error;
  }
}

/** The site's own hoses where they give enough, else the hose that would. */
function withHose(s: Scenario, wanted: number): string {
  const own = s.hoses.reduce((sum, hose) => sum + hose.flow, 0);
  if (own > 0 && lowestVault(s, { hose: own }) >= wanted)
    return `let the hose run from the start (${formatFlow(own, s.display)})`;
  const step = HOSE[s.display];
  const steps = leastSteps((n) => lowestVault(s, { hose: n * step }) >= wanted, MOST_HOSE);
  return steps === undefined ? '' : `let hoses of ${formatFlow(steps * step, s.display)} run from the start`;
}

function withMoreWater(s: Scenario, { start, water }: FirstStartTrial, wanted: number): string {
  const step = rulerStep(s.display);
  const spill = Math.min(lowestOf(s.pond.rim.crest), s.pond.overflow?.elevation ?? Number.POSITIVE_INFINITY);
  const most = Math.floor((spill - start) / step);
  if (most < 1) return '';
  const steps = leastSteps((n) => lowestVault(s, { level: start + n * step }) >= wanted, most);
  if (steps === undefined) return '';
  const more = (firstStart(s, { level: start + steps * step })?.water ?? water) - water;
  return (
    `fill the pond ${formatLength(steps * step, s.display)} over its mark first ` +
    `(${formatVolume(more, s.display)} more)`
  );
}

function withDeeperVault(s: Scenario, wanted: number): string {
  const step = DEEPER[s.display];
  const holds = (n: number): boolean => lowestVault(deepened(s, n * step), {}) >= wanted - n * step;
  const steps = leastSteps(holds, MOST_DEEPER);
  return steps === undefined ? '' : `make the vault and its pump ${formatLength(steps * step, s.display)} deeper`;
}

/** The site with the vault's floor and the pump in it so much lower, m. */
function deepened(s: Scenario, by: number): Scenario {
  const [[floor, area], ...above] = s.vault.profile;
  return {
    ...s,
    vault: { ...s.vault, profile: [[floor - by, area], ...above] },
    pump: { ...s.pump, suction: s.pump.suction - by, minimum: s.pump.minimum - by },
  };
}
