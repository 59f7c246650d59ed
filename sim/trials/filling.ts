import { fillCourse } from '../fill/course.ts';
import type { Schedule } from '../fill/schedule.ts';
import type { Hose, Scenario } from '../scenario/scenario.ts';
import type { Trial } from './trial.ts';

export interface FillingTrial extends Trial {
  /** Seconds from the opening of the first hose until the pond stands at its mark; null where it never does. */
  readonly time: number | null;
  /** Moment of the site's own clock at which the first hose is opened, s from the run's start. */
  readonly opened: number;
  readonly schedule: Schedule;
  /** Those that run at some time until then. */
  readonly hoses: readonly Hose[];
  /** All of them together, m³/s. */
  readonly flow: number;
  readonly never: 'weak' | 'shut' | 'long' | 'starves' | undefined;
}

/**
 * Fills the pond from its level, or from empty where the file names none, to its fill mark with the hoses as the file opens and shuts them by the clock, the pump
 * off, evaporation and leaks going on; undefined where there is no hose that runs or no mark.
 *
 * @throws RunFailure where the march fails
 */
export function fill(s: Scenario): FillingTrial | undefined {
  const { fillMark } = s.pond;
  if (fillMark === undefined || !s.hoses.some(({ flow }) => flow > 0)) return undefined;
  const { record, full, never, schedule } = fillCourse(s, fillMark);
  const until = full ?? record.time(record.length - 1);
  const hoses = s.hoses.filter((hose, i) => hose.flow > 0 && schedule.stretches[i].some(({ from }) => from <= until));
  if (hoses.length === 0) return undefined;
  const { opened } = schedule;
  const flow = hoses.reduce((sum, hose) => sum + hose.flow, 0);
  return { record, time: full === undefined ? null : Math.max(0, full - opened), opened, schedule, hoses, flow, never };
}
