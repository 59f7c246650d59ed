import type { Banded } from '../readings/readBack.ts';
import type { PondFacts } from './facts.ts';
import type { Shift } from './shifts.ts';

/** Where a loss is to be looked for first. */
export type Where = 'pond' | 'falls' | 'both' | 'unknown';

/** What a log says of a pond: plain data, SI, bands of 90 %. */
export interface LeakAnswer {
  readonly verdict: 'loses' | 'holds' | 'cannot tell' | 'gains';
  readonly where: Where;
  /** Loss beside evaporation and the splash the site states, at the level of the first reading, m/s of level. */
  readonly loss: Banded;
  /** The same as a flow, m³/s. */
  readonly flow: Banded;
  /** Of it what the pond loses by itself, and what the running pump adds; undefined: the log has no such time. */
  readonly standing: Banded | undefined;
  readonly running: Banded | undefined;
  /** The least loss that such a log shows in nineteen of twenty, m/s; and what may be lost unseen. */
  readonly limit: number;
  readonly most: number;
  /** A hole that the pond falls to: how far below the first reading, m. */
  readonly hole: Banded | undefined;
  /** Criterion of a loss that hangs on no level less that of a hole; undefined: too few readings to ask. */
  readonly gain: number | undefined;
  /** Open water's evaporation as the fit has it, mean over the log, m/s. */
  readonly evaporation: Banded & { readonly from: PondFacts['evaporationFrom'] };
  readonly beside: readonly (Shift & { readonly line: number; readonly from: number; readonly off: number })[];
  /** Readings scatter so many times more than a careful ruler's. */
  readonly scatter: number;
  /** One reading more, so many s after the last, would decide, if no water is added until then; undefined: none would. */
  readonly decides: number | undefined;
  readonly plot: LogPlot;
  /** What the log's time and place say in words. */
  readonly facts: {
    readonly silent: boolean;
    readonly noons: boolean;
    readonly autofill: boolean;
    readonly starts: string;
    readonly dated: boolean;
  };
  readonly pumpTimes: { readonly on: boolean; readonly off: boolean };
  readonly readings: number;
}

/** Levels against time, m as they would be read up from the first reading; times in s from it. */
export interface LogPlot {
  readonly dots: readonly {
    readonly t: number;
    readonly level: number;
    readonly line: number;
    readonly counts: boolean;
  }[];
  readonly fall: readonly (readonly [t: number, level: number])[];
  readonly dry: readonly (readonly [t: number, level: number])[];
  /** Figure of the first reading as it was measured, and whether greater is lower. */
  readonly zero: number;
  readonly sign: 1 | -1;
}
