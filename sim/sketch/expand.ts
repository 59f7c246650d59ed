/** A sketch to a plain scenario file: a site from a tape, a bucket and the pump's box. */
import { isObject, type Tell } from '../scenario/fields.ts';
import { readSketch } from '../scenario/keys/sketch.ts';
import type { Assumption, Problem } from '../scenario/scenario.ts';
import { assumedIn } from './assumed.ts';
import { Draft } from './draft.ts';
import { fileOf, type Sketched } from './file.ts';
import type { SketchValue } from './number.ts';
import { tellSketch } from './sense.ts';

export interface Expansion {
  /** The plain file, the parts beside the sketch laid over; a file without a sketch as it came. */
  readonly file: unknown;
  /** What is wrong with the sketch; the file then stands on stand-ins and is good for reading the parts beside alone. */
  readonly problems: readonly Problem[];
  /** What was assumed for want of a number. */
  readonly assumed: readonly Assumption[];
}

export const holdsSketch = (raw: unknown): raw is Sketched => isObject(raw) && Object.hasOwn(raw, 'sketch');

/**
 * Expands a file that holds a sketch. Figures come out as they were typed, or in SI; elevations count from the water
 * line, pump running, unless a part beside the sketch has the pond elsewhere. Never throws on any value.
 *
 * @param listed whether what was assumed is listed: it takes many times as long as the expansion itself
 */
export function expandSketch(raw: unknown, { listed = true } = {}): Expansion {
  if (!holdsSketch(raw)) return { file: raw, problems: [], assumed: [] };
  const problems: Problem[] = [];
  const tell: Tell = (place, found, wanted) => problems.push({ place, found, wanted });
  const read = readSketch(raw.sketch, tell);
  const sound = problems.length === 0;
  const typed = sound ? read : new Map([...STAND_INS, ...whole(read, problems)]);
  const site = new Draft(raw, typed);
  if (sound) tellSketch(site, tell);
  return { file: fileOf(site, raw), problems, assumed: listed && problems.length === 0 ? assumedIn(raw, typed) : [] };
}

/** The numbers without those of which something could not be read. */
function whole(
  read: ReadonlyMap<string, SketchValue>,
  problems: readonly Problem[],
): readonly (readonly [string, SketchValue])[] {
  const spoiled = (key: string) =>
    problems.some(({ place }) => `${place}.`.replace('[', '.').startsWith(`sketch.${key}.`));
  return [...read].filter(([key]) => !spoiled(key));
}

/** What stands in for required numbers that could not be read, so that the parts beside can be read all the same. */
const STAND_INS: readonly (readonly [string, SketchValue])[] = [
  ['length', 4],
  ['width', 3],
  ['depth', 0.6],
  ['pump', { flow: 0.003, head: 9 }],
];

/** The same file with another figure at a number of its sketch, `sketch.pipe.length`. */
export function withNumber(raw: Sketched, place: string, value: number): Sketched {
  const put = (part: unknown, [key = '', ...rest]: readonly string[]): unknown => {
    const keys = isObject(part) ? part : {};
    return { ...keys, [key]: rest.length === 0 ? value : put(keys[key], rest) };
  };
  return put(raw, place.split('.')) as Sketched;
}
