import type { Scenario } from '../scenario/scenario.ts';
import { type CourseOptions, fillCourse } from './course.ts';

/** When to open the first hose to have the pond full by a moment. */
export interface Opening {
  /** Latest opening, s from the run's start; null where even an opening at once is too late, or it never is full. */
  readonly open: number | null;
  /** When it is full with that opening, or with an opening at once where that is too late; null: never. */
  readonly full: number | null;
}

/** An opening is found to this, s, in so many tries at most. */
const CLOSE = 1;
const TRIES = 60;

/**
 * The latest opening of the first hose with which the pond is full by a moment: a root of (full − moment) by the moment
 * of opening, which never falls. Nights through which the hoses are shut leave it standing; there the bracket is halved.
 *
 * @param by moment, s from the run's start
 * @throws RunFailure where a march fails
 */
export function openingFor(s: Scenario, by: number, options: CourseOptions = {}): Opening | undefined {
  const { fillMark } = s.pond;
  if (fillMark === undefined || !s.hoses.some(({ flow }) => flow > 0)) return undefined;
  const fullFrom = (open: number): number | undefined => fillCourse(s, fillMark, { ...options, open }).full;
  const atOnce = fullFrom(0);
  if (atOnce === undefined || atOnce > by) return { open: null, full: atOnce ?? null };
  let [low, full, high] = [0, atOnce, by];
  let next = low + (by - full);
  for (let i = 0; i < TRIES && high - low > CLOSE; i++) {
    const found = fullFrom(next);
    if (found !== undefined && found <= by) {
      low = next;
      full = found;
    } else high = next;
    // An opening moved by what is to spare is exact where no night lies between; else halves.
    const spare = low + (by - full);
    next = spare > low + CLOSE && spare < high - CLOSE ? spare : (low + high) / 2;
    if (by - full < CLOSE) break;
  }
  return { open: low, full };
}
