import { balanceOrFailure } from './balance.ts';
import { startVolumes } from './begin.ts';
import { March } from './march.ts';
import { assemble } from './network/assemble.ts';
import { LEDGER } from './network/ledger.ts';
import { settingsOf } from './network/start.ts';
import { wasteCourse } from './pondwater/course.ts';
import type { RunAnswer } from './results/answer.ts';
import { cautionsOf } from './results/cautions.ts';
import { askAll } from './results/checks/index.ts';
import { depositsAt } from './results/deposits.ts';
import { RunFailure } from './results/failure.ts';
import { ledgerOf } from './results/ledger.ts';
import { levelEvents, liftEvents } from './results/levelEvents.ts';
import { flowRanges, levelRanges, mediaRanges } from './results/ranges.ts';
import type { RunRecord } from './results/record.ts';
import type { Scenario } from './scenario/scenario.ts';

/** A run: what it answers, and the record from which every level and flow of it can be read. */
export interface Run {
  readonly answer: RunAnswer;
  readonly record: RunRecord;
}

/**
 * Simulates a site over its span and puts it through its trials and checks.
 *
 * @throws RunFailure where the run is capped or has no solution
 */
export function simulate(scenario: Scenario): Run {
  const march = run(scenario);
  const { record } = march;
  const answer = answerOf(scenario, march);
  const found = balanceOrFailure(scenario);
  const { checks, leftOut } = askAll({ scenario, balance: found instanceof RunFailure ? undefined : found }, record);
  const cautions = [...cautionsOf(scenario, found, answer), ...leftOut];
  return { answer: { ...answer, cautions, checks }, record };
}

/** The run alone, without trials and checks. */
export function run(scenario: Scenario): March {
  const network = assemble(scenario);
  const volumes = startVolumes(scenario, network);
  const pumpSpeed = scenario.pump.running ? scenario.pump.speed : 0;
  const march = new March(scenario, network, {
    settings: settingsOf(scenario, network, pumpSpeed),
    volumes,
    actions: scenario.actions,
    weather: true,
    cutOut: true,
    debris: 1,
    pumpSpeed,
  });
  march.to(scenario.span);
  march.finish();
  return march;
}

/** Without waste in the water or into it there is none at the end. */
function concentrationAtEnd(scenario: Scenario, record: RunRecord): number {
  if (scenario.load === 0 && scenario.concentration === 0) return 0;
  return wasteCourse(scenario, record).concentration[record.length - 1];
}

/** What the run itself answers; trials and checks come after it. */
export function answerOf(scenario: Scenario, march: March): RunAnswer {
  const { record } = march;
  const liftHead = record.network.parts.circuit.feeds.liftHead;
  const events = [...march.events, ...levelEvents(scenario, record), ...liftEvents(record, liftHead)];
  return {
    title: scenario.title,
    span: scenario.span,
    levels: levelRanges(record),
    flows: flowRanges(record),
    ledger: ledgerOf(record),
    energy: record.ledger(record.length - 1, LEDGER.energy),
    deposits: {
      ...Object.fromEntries((scenario.filter?.media?.layers ?? []).map((layer) => [layer.name, 0])),
      ...depositsAt(record, scenario.span),
    },
    concentration: concentrationAtEnd(scenario, record),
    media: mediaRanges(record),
    events: events.sort((a, b) => a.t - b.t),
    cautions: [],
    checks: [],
    assumed: scenario.assumed.map((a) => ({ ...a, band: a.band ? [...a.band] : null })),
    work: march.work,
  };
}
