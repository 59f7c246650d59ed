/**
 * What the page asks its worker and what comes back. Expected failures are data, because an error's class and fields
 * do not survive the way between the two.
 */

import type { DyeTest, DyeWatching } from '../../sim/dye/answer.ts';
import type { Opening } from '../../sim/fill/opening.ts';
import type { FillPlan } from '../../sim/fill/plan.ts';
import type { Fit, ReadingProblem, SetTo, SiteReading, Wish } from '../../sim/readings/index.ts';
import type { BalanceAnswer, LoggedEvent, Range, RunAnswer, Series } from '../../sim/results/answer.ts';
import type { JsonSchema } from '../../sim/scenario/fields.ts';
import type { Problem, Scenario } from '../../sim/scenario/scenario.ts';
import type { Stretch } from '../../sim/studies/aim.ts';
import type { Stops } from '../../sim/studies/quick.ts';
import type { Setting } from '../../sim/studies/setting.ts';
import type { Asked } from '../../sim/studies/turns.ts';
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

/** The day on which a site is filled: what is no part of the site itself. */
export interface FillDay {
  /** When the first hose is opened, 'YYYY-MM-DDTHH:MM' on the wall; undefined: as the file has it. */
  readonly opened?: string | undefined;
  /** Where the water stands then, m; undefined: as the file has it, or at the floor where it has nothing. */
  readonly water?: number | 'empty' | undefined;
  /** All hoses are shut every night, s after midnight. */
  readonly nights?: readonly [from: number, to: number] | undefined;
  /** Full by this time of day, s after midnight: the hose is opened as late as that allows. */
  readonly by?: number | undefined;
  /** IANA name of the zone whose clock hangs on the wall. */
  readonly zone?: string | undefined;
}

/** How a site comes to its fill mark; `part` tells what is computed at once, and what takes longer. */
export interface FillRequest {
  readonly want: 'fill';
  readonly text: string;
  readonly display: Display | undefined;
  readonly day: FillDay;
  readonly part: 'plan' | 'more';
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

/** Dye poured under the filter's rack at a moment of the run, s from its start. */
export interface DyeRequest {
  readonly want: 'dye';
  readonly text: string;
  readonly display: Display | undefined;
  readonly at: number;
}

/** What has settled in the media over the run. */
export interface DepositsRequest {
  readonly want: 'deposits';
  readonly text: string;
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
  | DepositsRequest;

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

export interface FillPlanned {
  kind: 'fill plan';
  /** null where the site has no fill mark, or no hose that gives anything. */
  plan: FillPlan | null;
  /** Where the water stands when the first hose is opened, m. */
  water: number;
  /** Asked for by a time of day; null where it was not. */
  opening: Opening | null;
}

export interface FillMore {
  kind: 'fill more';
  /** How far the moment may be off, s either way, and what moves it most; null where it is never full, or is already. */
  band: { readonly band: number; readonly most: string | undefined } | null;
  /** The same fill with the pump started at the mark; null where there is none. */
  pumped: FillPlan | null;
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

export interface DyeGiven {
  kind: 'dye';
  /** Residence times at the flows of the moment, held. */
  test: DyeTest;
  /** The dye carried by the run's own flows. */
  watch: DyeWatching;
}

export interface DepositsGiven {
  kind: 'deposits';
  /** Moments of the run, s. */
  t: Float64Array;
  /** Settled volume in each layer at these moments, m³, by its name; none where nothing settles. */
  layers: Record<string, Float64Array>;
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
  | DepositsGiven
  | Refused
  | Fault;

export interface Answering {
  /** Answers once the worker stands. `lock`: a name to hold for as long as the worker lives. */
  hello(lock: string | undefined): Promise<true>;
  ask(question: Question): Promise<Outcome>;
  /** What may wait until no question is open. */
  give(request: Request): Promise<Given>;
}
