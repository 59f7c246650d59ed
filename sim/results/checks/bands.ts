import type { Assumption, Scenario } from '../../scenario/scenario.ts';
import type { Check } from '../answer.ts';
import { flowsAlike, withValue } from './withValue.ts';

/** How far a figure may be off, and why. */
export interface Band {
  /** In the figure's unit, either way. */
  readonly band: number;
  /** The assumed value that moves the figure most, and by how much; undefined where none moves it. */
  readonly most: { readonly assumption: Assumption; readonly moves: number } | undefined;
  /** Places with a band that hold no single figure and are left out. */
  readonly skipped: readonly string[];
}

/** Moves less than this are rounding, in the figure's unit. */
const NOTHING = 1e-7;

/**
 * Bands of several figures that one change of the site answers together: for each the root sum of squares of half its
 * change over the band of each assumed value, as independent errors add (JCGM 100:2008, 5.1.2), plus a fixed band of
 * the model itself.
 *
 * @param figures answers the figures of a site; undefined where a figure can't be had there
 * @param model fixed band of each figure
 * @param rests what the figures rest on: on the flows alone, or on weather and supply too
 */
export function bandsOf(
  s: Scenario,
  figures: (changed: Scenario) => readonly (number | undefined)[],
  model: readonly number[],
  rests: 'on flows' | 'on all' = 'on flows',
): Band[] {
  const sums = model.map(() => 0);
  const most: { assumption: Assumption; moves: number }[] = [];
  const skipped: string[] = [];
  let own: readonly (number | undefined)[] | undefined;
  for (const assumption of s.assumed) {
    if (assumption.band === undefined) continue;
    const [low, high] = assumption.band.map((value) => withValue(s, assumption.place, value));
    if (low === undefined && high === undefined) {
      skipped.push(assumption.place);
      continue;
    }
    // What the water never feels moves no flow: two runs saved.
    if (rests === 'on flows' && isOfSketch(assumption) && [low, high].every((end) => end && flowsAlike(end, s)))
      continue;
    const [atLow, atHigh] = [low, high].map((end) => (end === undefined ? [] : figures(end)));
    for (let k = 0; k < model.length; k++) {
      let moves = halfChange(atLow[k], atHigh[k]);
      if (moves === undefined) {
        own ??= figures(s);
        moves = wholeChange(own[k], atLow[k] ?? atHigh[k]);
      }
      if (moves < NOTHING) continue;
      sums[k] += moves * moves;
      if (moves > (most[k]?.moves ?? 0)) most[k] = { assumption, moves };
    }
  }
  return model.map((fixed, k) => ({ band: Math.sqrt(sums[k]) + fixed, most: most[k], skipped }));
}

const isOfSketch = ({ place }: Assumption): boolean => place.startsWith('sketch.');

/** The band of one figure; see `bandsOf`. */
export function bandOf(s: Scenario, figure: (changed: Scenario) => number | undefined, model: number): Band {
  return bandsOf(s, (changed) => [figure(changed)], [model])[0];
}

function halfChange(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : Math.abs(a - b) / 2;
}

/** Where one end of a band has no answer, the whole change to the other end stands for the half. */
function wholeChange(own: number | undefined, end: number | undefined): number {
  return own === undefined || end === undefined ? 0 : Math.abs(own - end);
}

/** What a check with this band says its figure rests on. */
export function restsOn({ most }: Band): Check['rests'] {
  return most ? { place: most.assumption.place, moves: most.moves } : null;
}
