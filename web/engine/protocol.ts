/**
 * What the page asks its worker and what comes back. Expected failures are data, because an error's class and fields
 * do not survive the way between the two.
 */
import type { BalanceAnswer, LoggedEvent, Range, RunAnswer, Series } from '../../sim/results/answer.ts';
import type { JsonSchema } from '../../sim/scenario/fields.ts';
import type { Problem, Scenario } from '../../sim/scenario/scenario.ts';
import type { Stretch } from '../../sim/studies/aim.ts';
import type { Stops } from '../../sim/studies/quick.ts';
import type { Setting } from '../../sim/studies/setting.ts';
import type { Asked } from '../../sim/studies/turns.ts';

export type Display = Scenario['display'];

/** What somebody wants to know: does the pond hold what runs back; when will it be full; what happens in the filter. */
export type Subject = Asked | 'filling';

/** While a hand moves a figure: the run, the pump stops, the balance. At rest: every trial and check, bands, mends. */
export type Depth = 'quick' | 'full';

export interface Question {
  /** The site's file, as text. */
  readonly text: string;
  /** Units to answer in; undefined: the file's own. */
  readonly display: Display | undefined;
  readonly depth: Depth;
  readonly about: Subject;
}

export interface Answered {
  kind: 'answered';
  depth: Depth;
  scenario: Scenario;
  /** Quick: without cautions, and only the check that answers the question. */
  answer: RunAnswer;
  series: Series;
  /** The running balance; null where the site has none. */
  balance: BalanceAnswer | null;
  /** null where the file names no level to keep. */
  stops: Stops | null;
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

/** Where the answer turns as one setting moves. */
export interface TurnsRequest {
  readonly want: 'turns';
  readonly text: string;
  readonly setting: Setting;
  readonly asked: Asked;
  readonly range: Stretch;
  readonly within: number;
}

/** The record behind a check's figure. */
export interface TrialRequest {
  readonly want: 'trial';
  readonly text: string;
  readonly check: string;
}

/** The stop with the check valve otherwise than the site has it. */
export interface OtherValveRequest {
  readonly want: 'other valve';
  readonly text: string;
}

/** Every key a file may have. */
export interface SchemaRequest {
  readonly want: 'schema';
}

export type Request = TurnsRequest | TrialRequest | OtherValveRequest | SchemaRequest;

export interface Turns {
  kind: 'turns';
  failing: readonly Stretch[];
}

export interface TrialShown {
  kind: 'trial';
  check: string;
  span: number;
  series: Series;
  levels: Record<string, Range>;
  flows: Record<string, Range>;
  events: LoggedEvent[];
}

export interface OtherValve {
  kind: 'other valve';
  /** 'failed' where the site's own holds, 'sound' where it has none that does. */
  valve: 'failed' | 'sound';
  /** From the stop on, at t = 0. */
  series: Series;
  /** By the mark of the check that looks at it. */
  fails: boolean;
}

export interface SchemaGiven {
  kind: 'schema';
  schema: JsonSchema;
}

export type Given = Turns | TrialShown | OtherValve | SchemaGiven | Fault;

export interface Answering {
  /** Answers once the worker stands. `lock`: a name to hold for as long as the worker lives. */
  hello(lock: string | undefined): Promise<true>;
  ask(question: Question): Promise<Outcome>;
  /** What may wait until no question is open. */
  give(request: Request): Promise<Given>;
}
