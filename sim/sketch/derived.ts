/** What the reader finds in a part that the sketch made is told by the number that made it. */
import { isObject } from '../scenario/fields.ts';
import type { Assumption, Problem } from '../scenario/scenario.ts';
import type { Sketched } from './file.ts';
import { sketchNumber } from './numbers.ts';

/** The number to mend by the place of the trouble, the first that fits. */
const MENDS: readonly (readonly [place: RegExp, key: string])[] = [
  [/^pond\.rim|^pond\.overflow/, 'edge'],
  [/^pond\.displaced/, 'rock'],
  [/^pond\.shape\.shelves/, 'shelf'],
  [/^pond/, 'depth'],
  [/^intake/, 'intakeLip'],
  [/^vault/, 'depth'],
  [/^pump/, 'pump'],
  [/^plumbing\.main/, 'pipe.size'],
  [/^filter\.rim/, 'sides'],
  [/^plumbing|^filter/, 'lip'],
  [/^watercourse\[0\]\.stones/, 'poolEdge'],
  [/^watercourse\[1\]/, 'stream'],
  [/^watercourse/, 'lip'],
  [/^supply\.hose/, 'bucket'],
  [/^supply/, 'autofill'],
  [/^weather/, 'climate'],
];

/** Whether a place, or a list it lies in, was given beside the sketch. */
function isGiven(place: string, given: unknown): boolean {
  let part = given;
  for (const [, index, quoted, plain] of place.matchAll(/\[(\d+)\]|\["([^"]+)"\]|([^.[\]]+)/g)) {
    if (Array.isArray(part)) return true;
    const key = index ?? quoted ?? plain ?? '';
    if (!isObject(part) || !Object.hasOwn(part, key)) return false;
    part = part[key];
  }
  return true;
}

/** A problem as the sketch's user reads it; none where the sketch's own problems already stand for it. */
export function derivedProblem(problem: Problem, given: Sketched, own: readonly Problem[]): Problem | undefined {
  const { place, found, wanted } = problem;
  const { sketch: _sketch, ...beside } = given;
  if (isGiven(place, beside) || place === 'the file') return problem;
  if (own.length > 0) return undefined;
  const key = MENDS.find(([at]) => at.test(place))?.[1];
  // A key that nothing derived, and that is missing or not known in what was given.
  if (key === undefined || found === 'nothing') return problem;
  return {
    place: `sketch.${key}`,
    found: `${found} at ${place}`,
    wanted: `${sketchNumber(key)?.called} such that it is ${wanted}`,
  };
}

/** The assumptions of a site from a sketch: its numbers, then what the scenario's own defaults filled in. */
export function allAssumed(
  defaults: readonly Assumption[],
  numbers: readonly Assumption[],
  given: Sketched,
): readonly Assumption[] {
  const covered = numbers.flatMap(({ place }) => sketchNumber(place.slice('sketch.'.length))?.covers ?? []);
  const others = defaults.filter(({ place }) => !covered.includes(place));
  return [...numbers, ...others.map((each) => ({ ...each, from: fromOf(each.place, given) }))];
}

/** What stands in a part that the file itself gives is its own default. */
function fromOf(place: string, given: Sketched): Assumption['from'] {
  const part = place.slice(0, Math.max(0, place.lastIndexOf('.')));
  return part !== '' && isGiven(part, given) ? 'default' : 'sketch';
}
