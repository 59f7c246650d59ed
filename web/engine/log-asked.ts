/** What the page asks of a log of levels, and what comes back. */
import type { LeakAnswer, LogPlot, LogProblem, Measured } from '../../sim/log/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** Whether the site leaks, by a log of its levels. */
export interface LeakRequest {
  readonly want: 'leak';
  readonly text: string;
  readonly display: Scenario['display'] | undefined;
  readonly log: string;
  /** undefined: as the log's head has it, else down from the edge. */
  readonly measured: Measured | undefined;
}

export interface LeakGiven {
  kind: 'leak';
  problems: readonly LogProblem[];
  /** null where the log says nothing. */
  said: {
    readonly verdict: LeakAnswer['verdict'];
    readonly lead: string;
    readonly rest: readonly string[];
    /** What does not go with the rest, by the line it stands in. */
    readonly beside: readonly { readonly line: number; readonly says: string }[];
    readonly plot: LogPlot;
    /** Clock time of the first reading; undefined where times count from the start. */
    readonly starts: string | undefined;
  } | null;
}
