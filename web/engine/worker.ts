import { expose, transfer } from 'comlink';
import { balance, readScenario, seriesOf, simulate } from '../../sim/index.ts';
import type { BalanceAnswer, Series } from '../../sim/results/answer.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Answering, Outcome, Question } from './protocol.ts';

function buffersOf(series: Series): ArrayBufferLike[] {
  return [series.t, ...Object.values(series.levels), ...Object.values(series.flows)].map((column) => column.buffer);
}

/** The balance stands beside the run; a site that runs and has no balance is shown without one. */
function balanceOf(scenario: Scenario): BalanceAnswer | null {
  try {
    return balance(scenario);
  } catch (error) {
    if (error instanceof RunFailure) return null;
    throw error;
  }
}

function run(scenario: Scenario): Outcome {
  try {
    const { answer, record } = simulate(scenario);
    return { kind: 'answered', scenario, answer, series: seriesOf(record), balance: balanceOf(scenario) };
  } catch (error) {
    if (!(error instanceof RunFailure)) throw error;
    const { kind: why, time, part, message } = error;
    return { kind: 'unsolved', title: scenario.title, starts: scenario.starts, why, time, part, message };
  }
}

function answer({ text, display }: Question): Outcome {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  return run(display ? { ...reading.scenario, display } : reading.scenario);
}

const answering: Answering = {
  hello(lock) {
    if (lock === undefined) return Promise.resolve(true);
    // Never released: the browser frees it when the worker ends, in whatever way, and so tells the page.
    return new Promise((resolve) => {
      navigator.locks.request(lock, () => {
        resolve(true);
        return new Promise(() => {});
      });
    });
  },
  async ask(question) {
    try {
      const outcome = answer(question);
      return outcome.kind === 'answered' ? transfer(outcome, buffersOf(outcome.series) as ArrayBuffer[]) : outcome;
    } catch (error) {
      return { kind: 'fault', message: error instanceof Error ? error.message : String(error) };
    }
  },
};

expose(answering);
