import type { FillPlan } from '../../sim/fill/plan.ts';
import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Stops } from '../../sim/studies/quick.ts';

/** A part of a printed sheet: a table, steps in their order, sentences; what it lacks is said in words. */
export interface Block {
  readonly title: string;
  readonly heads?: readonly string[];
  readonly rows?: readonly (readonly string[])[];
  readonly steps?: readonly string[];
  readonly says?: readonly string[];
}

/** The point all heights of a sheet are told from. */
export interface Benchmark {
  readonly name: string;
  /** m above the site's datum. */
  readonly elevation: number;
  /** What the rod reads on it, m; undefined: not set up yet. */
  readonly reading: number | undefined;
}

/** What a sheet is written from. Figures are shown in the scenario's units, in which its answers speak, too. */
export interface SheetFacts {
  readonly scenario: Scenario;
  /** In full, with its checks. */
  readonly answer?: RunAnswer | undefined;
  readonly balance?: BalanceAnswer | null | undefined;
  readonly stops?: Stops | null | undefined;
  readonly fill?: FillPlan | null | undefined;
  /** The file the scenario was read from: only there the pond has a length and a width. */
  readonly file?: unknown;
  readonly benchmark: Benchmark;
}

export const lowestOf = (crest: readonly (readonly [number, number])[]): number => Math.min(...crest.map(([, z]) => z));

export const edgeOf = ({ pond }: Scenario): number => lowestOf(pond.rim.crest);

export const EDGE = 'the lowest point of the liner’s edge';

export const edgeBenchmark = (s: Scenario): Benchmark => ({ name: EDGE, elevation: edgeOf(s), reading: undefined });

/** What a check says of a site, in its own words; undefined where it had nothing to ask. */
export const saidBy = ({ answer }: SheetFacts, name: string): string | undefined =>
  answer?.checks.find((check) => check.name === name)?.says;
