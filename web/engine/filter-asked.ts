/** What the page asks of the filter’s inside, and what comes back. */
import type { CareAnswer } from '../../sim/clogging/answer.ts';
import type { DyeTest, DyeWatching } from '../../sim/dye/answer.ts';
import type { Column } from '../../sim/results/csv.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

type Display = Scenario['display'];

/** Dye poured under the filter's rack at a moment of the run, s from its start. */
export interface DyeRequest {
  readonly want: 'dye';
  readonly text: string;
  readonly display: Display | undefined;
  readonly at: number;
  /** Another case of the site into which as much is poured, at a moment of its own run. */
  readonly kept?: { readonly scenario: Scenario; readonly at: number } | undefined;
}

/** What has settled in the media over the run. */
export interface DepositsRequest {
  readonly want: 'deposits';
  readonly text: string;
}

/** What the water brings along, beside the levels and flows of a run. */
export interface BroughtRequest {
  readonly want: 'brought';
  /** As it was run for what is on the screen, whatever has been typed since. */
  readonly scenario: Scenario;
  /** Moments of the run, s. */
  readonly t: Float64Array;
}

/** A dye in one case. */
export interface DyeIn {
  /** Residence times at the flows of the moment, held. */
  test: DyeTest;
  /** The dye carried by the run's own flows. */
  watch: DyeWatching;
}

export interface DyeGiven extends DyeIn {
  kind: 'dye';
  /** The same pour in the case kept, watched as long; null where that has no run, undefined where none was asked for. */
  kept: DyeIn | null | undefined;
}

export interface DepositsGiven {
  kind: 'deposits';
  /** Moments of the run, s. */
  t: Float64Array;
  /** Settled volume in each layer at these moments, m³, by its name; none where nothing settles. */
  layers: Record<string, Float64Array>;
}

export interface BroughtGiven {
  kind: 'brought';
  /** As long as the moments asked for; none where the water brings nothing. */
  columns: readonly Column[];
}

/** When the media are to be cleaned. */
export interface CareRequest {
  readonly want: 'care';
  readonly text: string;
  readonly display: Display | undefined;
}

export interface CareGiven {
  kind: 'care';
  care: CareAnswer;
}

/** Which of two cases keeps the pond cleaner. */
export interface CleanerRequest {
  readonly want: 'cleaner';
  readonly sites: readonly [kept: Scenario, now: Scenario];
}

export interface CleanerGiven {
  kind: 'cleaner';
  /** '' where nothing is removed from the water of either. */
  says: string;
}
