import type { Log, LogLine } from './reading.ts';

/** A stretch of the log in which nothing changes: between two lines that follow on each other. */
export interface Leg {
  /** s after the first line. */
  readonly from: number;
  readonly to: number;
  /** Whether the pump runs in it; a number: it was switched at an unknown moment, the how manieth such leg it is. */
  readonly pump: 'on' | 'off' | number;
  readonly turned?: 'on' | 'off' | undefined;
  /** Water that came in at its start, m³, and rain during it, m. */
  readonly added: number;
  readonly rain: number;
  /** Water came in of which nobody knows how much. */
  readonly unknown: boolean;
  /** Index of the reading that ends it; undefined where the line that ends it has none. */
  readonly reading: number | undefined;
}

export interface TrackReading {
  readonly line: number;
  /** s after the first line. */
  readonly t: number;
  /** Level against the first reading, up is positive, m. */
  readonly level: number;
  readonly on: boolean;
}

/** A log as the model goes through it. */
export interface Track {
  readonly readings: readonly TrackReading[];
  readonly legs: readonly Leg[];
  /** Legs in which the pump was switched at an unknown moment. */
  readonly switches: number;
  /** The reading that levels are counted from, m, as it was measured. */
  readonly zero: number;
  readonly sign: 1 | -1;
  /** s of the first line in the log's own time. */
  readonly start: number;
  /** No line says how the pump stood. */
  readonly silent: boolean;
}

/** The log from its first reading on; undefined where it has fewer than two. */
export function trackOf({ lines, measured }: Pick<Log, 'lines' | 'measured'>): Track | undefined {
  const first = lines.findIndex(({ level }) => level !== undefined);
  if (first < 0 || lines.filter(({ level }) => level !== undefined).length < 2) return undefined;
  const sign = measured === 'up' ? 1 : -1;
  const zero = lines[first].level as number;
  const start = lines[first].t;
  const silent = lines.every(({ pump }) => pump === undefined);
  const readings: TrackReading[] = [];
  const legs: Leg[] = [];
  let switches = 0;
  // Before a line says otherwise the pump stood as the first line that speaks of it has it.
  let on = (lines.find(({ pump }) => pump !== undefined)?.pump ?? 'on') === 'on';
  let before: LogLine | undefined;
  for (const line of lines.slice(first)) {
    const now = line.pump === undefined ? on : line.pump === 'on';
    if (before) {
      // A line without a level marks the very moment of the switch; between two readings nobody knows it.
      const unknownMoment = now !== on && line.level !== undefined;
      legs.push({
        from: before.t - start,
        to: line.t - start,
        pump: unknownMoment ? switches++ : on ? 'on' : 'off',
        turned: unknownMoment ? (now ? 'on' : 'off') : undefined,
        added: typeof before.added === 'number' ? before.added : 0,
        rain: typeof line.rain === 'number' ? line.rain : 0,
        unknown: before.added === 'unknown' || line.rain === 'unknown',
        reading: line.level === undefined ? undefined : readings.length,
      });
    }
    on = now;
    if (line.level !== undefined)
      readings.push({ line: line.line, t: line.t - start, level: sign * (line.level - zero), on: now });
    before = line;
  }
  return { readings, legs, switches, zero, sign, start, silent };
}
