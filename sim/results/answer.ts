/**
 * What a run and a running balance answer: plain data in SI units, the same object whether it goes to a file, a
 * page or a test. Times are seconds from the start of the run, levels elevations in m, flows m³/s, volumes m³.
 */

/** First and last value of a quantity, and its extremes with the moments of their first occurrence. */
export interface Range {
  start: number;
  end: number;
  min: { t: number; value: number };
  max: { t: number; value: number };
}

export interface LoggedEvent {
  t: number;
  what: string;
}

export interface LedgerIn {
  hose: number;
  rain: number;
  runoff: number;
  autofill: number;
}

export interface LedgerOut {
  evaporation: number;
  splash: number;
  rim: number;
  overflow: number;
  filterRim: number;
  /** Over pool rims and stream edges. */
  edges: number;
  leak: number;
  pumpedOut: number;
}

export interface Ledger {
  in: LedgerIn;
  out: LedgerOut;
  stored: { start: number; end: number };
  /** What the pump moved forward through the main. */
  pumped: number;
  /** |Δstored + out − in| over the greatest of in, out, pumped and stored at the start. */
  closure: number;
}

export type Verdict = 'pass' | 'tight' | 'fail' | 'told';
export type LimitOrigin = 'published' | 'common practice' | 'our default' | 'file';

export interface Check {
  name: string;
  verdict: Verdict;
  /** The figure the sentence states, SI; null where there is none to state (a fall never reached). */
  value: number | null;
  /** The fail mark, SI; null where nothing can fail. */
  limit: number | null;
  unit: string;
  /** Distance from the fail mark, positive on the good side; null with `limit`. */
  margin: number | null;
  band: number;
  /** The assumed value that moves the figure most: its place in the file and how far, either way, in `unit`; null: none. */
  rests: { place: string; moves: number } | null;
  where: 'run' | 'trial';
  /** Moment of the figure within its run or trial, s; null for a balance. */
  t: number | null;
  origin: LimitOrigin;
  /** Whole sentences in the display's units. */
  says: string;
  /** What would mend it, with computed figures; '' where nothing needs mending. */
  mend: string;
  /** The other places of a check that looks at many. */
  places: { name: string; verdict: Verdict; value: number | null; says: string }[];
}

export interface Work {
  steps: number;
  rejected: number;
  rates: number;
  jacobians: number;
}

export interface RunAnswer {
  title: string;
  span: number;
  levels: Record<string, Range>;
  flows: Record<string, Range>;
  ledger: Ledger;
  energy: number;
  /** Settled solids in each media layer at the end, m³ of settled volume; nothing settles from water without debris. */
  deposits: Record<string, number>;
  /** Of waste in the pond at the end, kg/m³; none without a load. */
  concentration: number;
  media: { channeled: Range; head: Range } | null;
  events: LoggedEvent[];
  /** Sentences to be told before the checks: a hopeless site, a start that moves. */
  cautions: string[];
  checks: Check[];
  assumed: {
    place: string;
    value: number | string | boolean;
    band: [number, number] | null;
    from: 'default' | 'sketch';
  }[];
  work: Work;
}

export interface BalanceAnswer {
  title: string;
  levels: Record<string, number>;
  flows: Record<string, number>;
  /** Bottom feed / main; null where the main is dry. */
  split: number | null;
  /** Gap / bottom feed; null where nothing goes up. */
  channeled: number | null;
  stones: Record<string, { share: number; head: number; criticalDepth: number; reach: number }>;
  duty: { flow: number; head: number; power: number; velocity: Record<'main' | 'bottom feed' | 'top feed', number> };
  contact: { emptyBed: number; pore: number } | null;
  mediaHead: number | null;
  lift: number | null;
}

/**
 * The columns of a run, one row at each step end and two where the run restarts, or evenly spaced.
 * All columns have the length of `t`; levels in m by basin name, flows in m³/s by flow name.
 */
export interface Series {
  t: Float64Array;
  levels: Record<string, Float64Array>;
  flows: Record<string, Float64Array>;
}
