/** What the worker does for each question and request. */
import { balance, readScenario, simulate } from '../../sim/index.ts';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import { marksOf } from '../../sim/results/checks/drainBack.ts';
import { fillingCheck } from '../../sim/results/checks/filling.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { flowRanges, levelRanges } from '../../sim/results/ranges.ts';
import { refinedSeries } from '../../sim/results/series.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { jsonSchema } from '../../sim/scenario/schema.ts';
import { expandSketch } from '../../sim/sketch/expand.ts';
import { quickAnswer, stopsOf } from '../../sim/studies/quick.ts';
import { failingSettings } from '../../sim/studies/turns.ts';
import { trialRecord } from '../../sim/trials/index.ts';
import { keptSite, stopPump, stopWithValveFailed } from '../../sim/trials/stop.ts';
import { fillGiven, fillRecord } from './fill-answers.ts';
import type { Answered, BalanceGiven, Display, Given, Outcome, Question, Request, TrialRequest } from './protocol.ts';

/** Straight lines between the rows of what is drawn follow every level to this, m. */
const DRAWN = 1e-4;

/** The balance stands beside the run; a site that runs and has no balance is shown without one. */
function balanceOf(scenario: Scenario): BalanceAnswer | null {
  try {
    return balance(scenario);
  } catch (error) {
    if (error instanceof RunFailure) return null;
    throw error;
  }
}

const plainOf = ({ sketched }: Scenario): unknown =>
  sketched === undefined ? null : expandSketch(sketched, { listed: false }).file;

function inFull(scenario: Scenario): Answered {
  const { answer, record } = simulate(scenario);
  return {
    kind: 'answered',
    depth: 'full',
    scenario,
    answer,
    series: refinedSeries(record, DRAWN),
    balance: balanceOf(scenario),
    stops: stopsOf(scenario, record) ?? null,
    plain: plainOf(scenario),
  };
}

function quickly(scenario: Scenario, about: Question['about']): Answered {
  const { answer, record, stops, balance } = quickAnswer(scenario);
  const filling = about === 'filling' ? fillingCheck({ scenario, balance: undefined }) : undefined;
  return {
    kind: 'answered',
    depth: 'quick',
    scenario,
    answer: { ...answer, checks: filling ? [filling] : [] },
    series: refinedSeries(record, DRAWN),
    balance: balance ?? null,
    stops: stops ?? null,
    plain: plainOf(scenario),
  };
}

export function answerTo({ text, display, depth, about }: Question): Outcome {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  const scenario = display ? { ...reading.scenario, display } : reading.scenario;
  try {
    return depth === 'quick' ? quickly(scenario, about) : inFull(scenario);
  } catch (error) {
    if (!(error instanceof RunFailure)) throw error;
    const { kind: why, time, part, message } = error;
    return { kind: 'unsolved', title: scenario.title, starts: scenario.starts, why, time, part, message };
  }
}

/** What few pages ask is fetched by the worker when it is first asked. */
export async function givenFor(request: Request): Promise<Given> {
  switch (request.want) {
    case 'turns': {
      const { text, setting, asked, range, within } = request;
      return {
        kind: 'turns',
        failing: failingSettings(expandSketch(JSON.parse(text), { listed: false }).file, setting, asked, range, within),
      };
    }
    case 'trial':
      return trialFor(request);
    case 'other valve':
      return otherValve(request.text);
    case 'schema':
      return { kind: 'schema', schema: jsonSchema() };
    case 'balances':
      return { kind: 'balances', of: request.texts.map((text) => balanceGiven(text, request.display)) };
    case 'care':
      return (await import('./filter-answers.ts')).careGiven(request);
    case 'cleaner':
      return (await import('./filter-answers.ts')).cleanerGiven(request);
    case 'fill':
      return fillGiven(request);
    case 'read back':
      return (await import('./reading-answers.ts')).readBackGiven(request);
    case 'set to':
      return (await import('./reading-answers.ts')).setToGiven(request);
    case 'leak':
      return (await import('./log-answers.ts')).leakGiven(request);
    case 'map':
      return (await import('./map-answers.ts')).mapGiven(request);
    case 'dye':
      return (await import('./filter-answers.ts')).dyeGiven(request);
    case 'deposits':
      return (await import('./filter-answers.ts')).depositsGiven(request);
    case 'brought':
      return (await import('./filter-answers.ts')).broughtGiven(request);
  }
}

function balanceGiven(text: string, display: Display | undefined): BalanceGiven {
  const reading = readScenario(text);
  if (!reading.ok) return null;
  const scenario = display ? { ...reading.scenario, display } : reading.scenario;
  const found = balanceOf(scenario);
  return found && { scenario, balance: found };
}

function trialFor({ text, check, fill }: TrialRequest): Given {
  const reading = readScenario(text);
  const record = !reading.ok
    ? undefined
    : fill && check === 'filling'
      ? fillRecord(reading.scenario, fill)
      : trialRecord(reading.scenario, check);
  if (!record) return { kind: 'fault', message: `The check ‘${check}’ has no trial to be looked at.` };
  const last = record.length - 1;
  const events = check.startsWith('drain-back') ? [{ t: 0, what: 'pump off' }] : [];
  return {
    kind: 'trial',
    check,
    span: record.time(last),
    series: refinedSeries(record, DRAWN),
    levels: levelRanges(record),
    flows: flowRanges(record),
    events,
  };
}

function otherValve(text: string): Given {
  const reading = readScenario(text);
  const kept = reading.ok ? keptSite(reading.scenario) : undefined;
  if (!kept) return { kind: 'fault', message: 'The file names no level at which the pond is kept.' };
  const { kind } = kept.scenario.plumbing.main.checkValve;
  const holds = kind === 'sound' || kind === 'unknown';
  const { record, below } = holds ? stopWithValveFailed(kept).trial : stopPump(kept, { check: { kind: 'sound' } });
  return {
    kind: 'other valve',
    valve: holds ? 'failed' : 'sound',
    series: refinedSeries(record, DRAWN),
    // A pond that only fails with its valve must not run over; one whose valve holds must keep the room asked for.
    fails: below < (holds ? 0 : marksOf(kept.scenario).fail),
  };
}
