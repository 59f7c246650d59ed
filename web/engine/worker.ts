import { expose, transfer } from 'comlink';
import type { Series } from '../../sim/index.ts';
import { answerTo, givenFor } from './answers.ts';
import type { Answering, Fault } from './protocol.ts';

function buffersOf(series: Series): ArrayBuffer[] {
  const columns = [series.t, ...Object.values(series.levels), ...Object.values(series.flows)];
  return columns.map((column) => column.buffer as ArrayBuffer);
}

/** The answer with its series handed over instead of copied, or a fault of ours as data. */
async function handOver<T extends object>(answer: () => T | Promise<T>): Promise<T | Fault> {
  try {
    const outcome = await answer();
    return 'series' in outcome ? transfer(outcome, buffersOf(outcome.series as Series)) : outcome;
  } catch (error) {
    return { kind: 'fault', message: error instanceof Error ? error.message : String(error) };
  }
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
  ask(question) {
    return handOver(() => answerTo(question));
  },
  give(request) {
    return handOver(() => givenFor(request));
  },
};

expose(answering);
