/** What a person notes of a pond's level over some days, as it was read out of a text. SI. */
import type { Problem } from '../scenario/scenario.ts';

/** Whether a greater figure is a lower level (measured down from the edge) or a higher one (a ruler standing in the water). */
export type Measured = 'down' | 'up';

/** A line of a log; a line without a level tells when the pump was switched or water came in. */
export interface LogLine {
  /** Number of the line in the text, from 1. */
  readonly line: number;
  /** s, since 1970 on the site's own calendar, or since the start of the log. */
  readonly t: number;
  /** Figure read, m, as it was measured. */
  readonly level?: number | undefined;
  /** How the pump stood when the line was taken down. */
  readonly pump?: 'on' | 'off' | undefined;
  /** Water that was added right after the reading, m³; 'unknown' where no figure was given. */
  readonly added?: number | 'unknown' | undefined;
  /** Rain since the line before, m. */
  readonly rain?: number | 'unknown' | undefined;
}

/** What could not be taken: the whole line, or a part of it. */
export interface LogProblem extends Problem {
  /** 0: the text as a whole. */
  readonly line: number;
  readonly left: 'line' | 'part' | 'all';
}

export interface Log {
  /** Whether times are moments of a calendar; else they count from the start. */
  readonly dated: boolean;
  /** Whether some line has a date without a time of day, which is taken as noon. */
  readonly noons: boolean;
  readonly measured: Measured;
  /** In order of time. */
  readonly lines: readonly LogLine[];
  /** Evaporation as the log states it, m/s: the ends of a band. */
  readonly evaporation: readonly [low: number, high: number] | undefined;
  readonly problems: readonly LogProblem[];
}
