/** Sites drawn at a width, with all that their words are asked and answered in. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { balance, RunFailure, readScenario, type Scenario, seriesOf, simulate } from '../../sim/index.ts';
import type { Display } from '../../sim/quantity/index.ts';
import type { BalanceAnswer, RunAnswer, Series } from '../../sim/results/answer.ts';
import { flowRanges, levelRanges } from '../../sim/results/ranges.ts';
import { run } from '../../sim/simulate.ts';
import { measureText, type Subject, type WordsRequest } from '../../web/section/labels/index.ts';
import { sceneOf } from '../../web/section/layout.ts';
import { scaleOf } from '../../web/section/scale.ts';
import { settingsAt } from '../../web/section/settings.ts';
import { momentAt } from '../../web/state/moment.ts';
import { siteFile } from '../network/randomSite.ts';

const folder = fileURLToPath(new URL('../../scenarios/', import.meta.url));

export interface Known {
  readonly name: string;
  readonly scenario: Scenario;
  readonly answer: Pick<RunAnswer, 'levels' | 'flows' | 'events'>;
  readonly balance: BalanceAnswer | undefined;
  readonly series: Series;
}

export function scenarioOf(text: string): Scenario {
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

function balanceFor(scenario: Scenario): BalanceAnswer | undefined {
  try {
    return balance(scenario);
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}

export function demoSites(): Known[] {
  const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
  return files.map((name) => {
    const scenario = scenarioOf(readFileSync(folder + name, 'utf8'));
    const { answer, record } = simulate(scenario);
    return { name, scenario, answer, balance: balanceFor(scenario), series: seriesOf(record) };
  });
}

/** Random valid sites, always the same ones, run without trials. */
export function randomSites(count: number): Known[] {
  return fc.sample(siteFile, { seed: 20310602, numRuns: count }).map((file, i) => {
    const scenario = scenarioOf(JSON.stringify(file));
    const { record, control } = run(scenario);
    const answer = { levels: levelRanges(record), flows: flowRanges(record), events: [...control.events] };
    return { name: `random ${i}`, scenario, answer, balance: balanceFor(scenario), series: seriesOf(record) };
  });
}

export function subjectAt({ scenario, answer, balance, series }: Known, t: number, display: Display): Subject {
  return { scenario, answer, balance, moment: momentAt(series, t), display };
}

/** What the words of a site are asked for at a width: its water as it runs, or as it stands at the start. */
export function wordsRequest(site: Known, width: number, display: Display): WordsRequest {
  const scene = sceneOf(site.scenario);
  const scale = scaleOf(scene, width);
  const start = subjectAt(site, 0, display);
  const levels = { ...start.moment.levels, ...site.balance?.levels };
  const flows = { ...start.moment.flows, ...site.balance?.flows };
  const settings = settingsAt(site.scenario, [], 0);
  const subject = { ...start, moment: { t: 0, levels, flows } };
  return { scene, scale, subject, running: { levels, flows, settings, flowScale: 620 }, measure: measureText };
}
