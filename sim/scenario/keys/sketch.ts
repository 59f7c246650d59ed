/** The keys of a sketch: each read by the table of its numbers, with its sensible range and the nearest sense. */
import { DIMENSIONS, type DimensionName, parseQuantity, unitsSentence } from '../../quantity/index.ts';
import type { SketchNumber, SketchValue } from '../../sketch/number.ts';
import { SKETCH_NUMBERS } from '../../sketch/numbers.ts';
import { displayOf, shown } from '../../sketch/shown.ts';
import { tidy } from '../../sketch/units.ts';
import { about, type Field, isList, isObject, oneOf, optional, quantity, show, type Tell, word } from '../fields.ts';
import { list, object, pair } from '../fields-of-many.ts';
import { size, wordOr } from './common.ts';
import { nominal } from './plumbing.ts';
import { curve } from './pond.ts';

/** A figure within the range of its number; out of it the nearest sense is told. */
function measure(each: SketchNumber, dimension: DimensionName): Field<number> {
  const [least, most] = each.range ?? [-Infinity, Infinity];
  // Three feet typed are the three feet of the range, to the last digit or not.
  const slack = 1e-9 * Math.abs(most);
  const { title } = DIMENSIONS[dimension];
  const range = (display: 'us' | 'metric') =>
    `from ${shown(least, dimension, display)} to ${shown(most, dimension, display)}`;
  const wanted = `${each.called}, ${title} ${range('metric')}`;
  const units = Object.keys(DIMENSIONS[dimension].units).length === 0 ? '' : `: ${unitsSentence(dimension)}`;
  return {
    wanted: `${wanted}${units}`,
    schema: quantity(dimension, { min: tidy(least), max: tidy(most) }).schema,
    read: (value, place, tell) => {
      const parsed = typeof value === 'string' ? parseQuantity(value, dimension) : { ok: true as const, value };
      if (!parsed.ok) tell(place, parsed.found, `${wanted}${units}`);
      else if (typeof parsed.value !== 'number' || !Number.isFinite(parsed.value))
        tell(place, show(value), `${wanted}${units}`);
      else if (parsed.value >= least - slack && parsed.value <= most + slack) return parsed.value;
      else {
        const display = displayOf(value);
        const nearest = shown(parsed.value < least ? least : most, dimension, display);
        tell(place, show(value), `${each.called} ${range(display)}; the nearest that makes sense is ${nearest}`);
      }
      return undefined;
    },
  };
}

const shelf = object({ depth: about('under the water line', size), width: size });
type Shelf = { readonly depth: number; readonly width: number };

const shelves = oneOf<readonly Shelf[]>(
  { takes: isList, field: list(shelf) },
  { takes: isObject, field: mapped(shelf, (one) => [one]) },
  { takes: () => true, field: mapped(word('none'), () => []) },
);

function mapped<A, B>(field: Field<A>, make: (value: A) => B): Field<B> {
  return {
    ...field,
    read: (value, place, tell) => {
      const read = field.read(value, place, tell);
      return read === undefined ? undefined : make(read);
    },
  };
}

const bucketPair = pair(
  'volume of the bucket, seconds to fill it',
  quantity('volume', { above: 0, max: 10 }),
  quantity('time', { above: 0, max: 86400 }),
);

function bucket(each: SketchNumber): Field<SketchValue> {
  const flow = measure(each, 'flow');
  const inPair: Field<SketchValue> = {
    ...bucketPair,
    read: (value, place, tell) => {
      const read = bucketPair.read(value, place, tell);
      if (!read) return undefined;
      const [least, most] = each.range ?? [0, Infinity];
      const q = read[0] / read[1];
      if (q >= least && q <= most) return read;
      const display = displayOf(value);
      const nearest = shown(q < least ? least : most, 'flow', display);
      tell(
        place,
        `${show(value)}, ${shown(q, 'flow', display)}`,
        `a hose’s flow; the nearest that makes sense is ${nearest}`,
      );
      return undefined;
    },
  };
  return oneOf<SketchValue>({ takes: isList, field: inPair }, { takes: () => true, field: flow });
}

function fieldOf(each: SketchNumber): Field<unknown> {
  if (each.key === 'pump') return curve;
  if (each.key === 'pipe.size') return nominal;
  if (each.key === 'shelf') return shelves;
  if (each.key === 'bucket') return bucket(each);
  if (each.dimension === undefined) return word(...(each.words ?? []));
  const figure = measure(each, each.dimension);
  return each.words ? wordOr(each.words, figure) : figure;
}

/** Required keys stay so; the others may be left out. Keys with a point in them stand in a part of their own. */
function keysOf(numbers: readonly SketchNumber[], under: string): Record<string, Field<unknown>> {
  const keys: Record<string, Field<unknown>> = {};
  for (const each of numbers.filter(({ key }) => key.startsWith(under))) {
    const [name = '', deeper] = each.key.slice(under.length).split('.');
    if (deeper !== undefined) keys[name] ??= optional(object(keysOf(numbers, `${under}${name}.`)));
    else {
      const field = about(each.asks, fieldOf(each));
      keys[name] = each.fallback ? optional(field) : field;
    }
  }
  return keys;
}

export const sketch: Field<Readonly<Record<string, unknown>>> = object(keysOf(SKETCH_NUMBERS, ''));

/** What was read, by the numbers' own keys. */
export function readSketch(value: unknown, tell: Tell): ReadonlyMap<string, SketchValue> {
  const read = sketch.read(value, 'sketch', tell) ?? {};
  const found = new Map<string, SketchValue>();
  for (const { key } of SKETCH_NUMBERS) {
    const at = key.split('.').reduce<unknown>((part, name) => (isObject(part) ? part[name] : undefined), read);
    if (at !== undefined) found.set(key, at as SketchValue);
  }
  return found;
}
