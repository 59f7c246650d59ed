/**
 * What the page asks its worker and what comes back. Expected failures are data, because an error's class and fields
 * do not survive the way between the two.
 */
import type { BalanceAnswer, RunAnswer, Series } from '../../sim/results/answer.ts';
import type { Problem, Scenario } from '../../sim/scenario/scenario.ts';

export type Display = Scenario['display'];

export interface Question {
  /** The site's file, as text. */
  text: string;
  /** Units to answer in; undefined: the file's own. */
  display: Display | undefined;
}

export interface Answered {
  kind: 'answered';
  scenario: Scenario;
  answer: RunAnswer;
  series: Series;
  /** The running balance; null where the site has none. */
  balance: BalanceAnswer | null;
}

/** The file has problems, and nothing was run. */
export interface Refused {
  kind: 'refused';
  problems: readonly Problem[];
}

/** The run could not be carried to its end; `time` in s from its start. */
export interface Unsolved {
  kind: 'unsolved';
  title: string;
  starts: string;
  why: 'capped' | 'no solution';
  time: number;
  part: string;
  message: string;
}

/** A fault of ours. */
export interface Fault {
  kind: 'fault';
  message: string;
}

export type Outcome = Answered | Refused | Unsolved | Fault;

export interface Answering {
  /** Answers once the worker stands. `lock`: a name to hold for as long as the worker lives. */
  hello(lock: string | undefined): Promise<true>;
  ask(question: Question): Promise<Outcome>;
}
