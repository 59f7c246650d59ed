/**
 * What the page asks its worker and what comes back. Expected failures are data, because an error's class and fields
 * do not survive the way between the two.
 */

import type { Fit, ReadingProblem, SetTo, SiteReading, Wish } from '../../sim/readings/index.ts';
import type { BalanceAnswer, LoggedEvent, Range, RunAnswer, Series } from '../../sim/results/answer.ts';
import type { JsonSchema } from '../../sim/scenario/fields.ts';
import type { Problem, Scenario } from '../../sim/scenario/scenario.ts';
import type { Stretch } from '../../sim/studies/aim.ts';
import type { Stops } from '../../sim/studies/quick.ts';
import type { Setting } from '../../sim/studies/setting.ts';
import type { Asked } from '../../sim/studies/turns.ts';
import type { FillDay, FillMore, FillPlanned, FillRequest } from './fill-asked.ts';
import type {
  BroughtGiven,
  BroughtRequest,
  CareGiven,
  CareRequest,
  CleanerGiven,
  CleanerRequest,
  DepositsGiven,
  DepositsRequest,
  DyeGiven,
  DyeRequest,
} from './filter-asked.ts';
import type { LeakGiven, LeakRequest } from './log-asked.ts';
import type { MapGiven, MapRequest } from './map-asked.ts';

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
  /** The whole file, where the text holds a sketch; else null. */
  plain: unknown;
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
  /** The day on which it is filled, where the trial is the filling. */
  readonly fill?: FillDay | undefined;
}

/** What rulers, watch and bucket say of the site. */
export interface ReadBackRequest {
  readonly want: 'read back';
  readonly text: string;
  readonly display: Display | undefined;
  readonly readings: readonly SiteReading[];
}

/** The valves' setting that brings about what is wished of the water. */
export interface SetToRequest {
  readonly want: 'set to';
  readonly text: string;
  readonly display: Display | undefined;
  readonly wish: Wish;
}

/** The stop with the check valve otherwise than the site has it. */
export interface OtherValveRequest {
  readonly want: 'other valve';
  readonly text: string;
}

/** The running balances of several sites at once. */
export interface BalancesRequest {
  readonly want: 'balances';
  readonly texts: readonly string[];
  readonly display: Display | undefined;
}

/** Every key a file may have. */
export interface SchemaRequest {
  readonly want: 'schema';
}

export type Request =
  | TurnsRequest
  | TrialRequest
  | OtherValveRequest
  | SchemaRequest
  | BalancesRequest
  | FillRequest
  | ReadBackRequest
  | SetToRequest
  | LeakRequest
  | MapRequest
  | DyeRequest
  | CareRequest
  | CleanerRequest
  | DepositsRequest
  | BroughtRequest;

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

/** null where a file has problems, or its site no balance. */
export type BalanceGiven = { readonly scenario: Scenario; readonly balance: BalanceAnswer } | null;

export interface BalancesGiven {
  kind: 'balances';
  of: readonly BalanceGiven[];
}

export interface SchemaGiven {
  kind: 'schema';
  schema: JsonSchema;
}

/** Places of the file as it was typed, and what is put there; undefined takes the key away. */
export type FileEdits = readonly (readonly [place: string, value: unknown])[];

export interface ReadBackGiven {
  kind: 'read back';
  result:
    | (Omit<Fit, 'scenario' | 'edits' | 'posterior'> & { readonly edits: FileEdits })
    | { readonly ok: false; readonly problems: readonly ReadingProblem[] };
}

export interface SetToGiven {
  kind: 'set to';
  result: SetTo;
  edits: FileEdits;
}

export type Given =
  | Turns
  | TrialShown
  | OtherValve
  | SchemaGiven
  | BalancesGiven
  | FillPlanned
  | FillMore
  | ReadBackGiven
  | SetToGiven
  | LeakGiven
  | MapGiven
  | DyeGiven
  | CareGiven
  | CleanerGiven
  | DepositsGiven
  | BroughtGiven
  | Refused
  | Fault;

export interface Answering {
  /** Answers once the worker stands. `lock`: a name to hold for as long as the worker lives. */
  hello(lock: string | undefined): Promise<true>;
  ask(question: Question): Promise<Outcome>;
  /** What may wait until no question is open. */
  give(request: Request): Promise<Given>;
}
