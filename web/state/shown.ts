/** The record that is drawn: the run, or a trial in its place. */
import type { RunAnswer, Series } from '../../sim/results/answer.ts';
import type { Answered, TrialShown } from '../engine/protocol.ts';
import { firstStop, type Stopping, stoppingAt } from './stopping.ts';

export interface Shown {
  readonly answer: RunAnswer;
  readonly series: Series;
  /** Name of the check whose trial it is; undefined for the run. */
  readonly trial: string | undefined;
  readonly stopping: Stopping | undefined;
}

export function shownRecord(run: Answered, trial: TrialShown | undefined): Shown {
  if (!trial) return { answer: run.answer, series: run.series, trial: undefined, stopping: stoppingOf(run.answer) };
  const { span, levels, flows, events, series, check } = trial;
  const answer: RunAnswer = { ...run.answer, span, levels, flows, events };
  return { answer, series, trial: check, stopping: stoppingOf(answer) };
}

function stoppingOf({ events, levels, span }: RunAnswer): Stopping | undefined {
  const at = firstStop(events);
  return at === undefined ? undefined : stoppingAt(at, levels.pond, span);
}
