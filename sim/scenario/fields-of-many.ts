/** Fields made of fields: objects by their keys, lists, rows of figures. */
import { type Field, isList, isObject, type JsonSchema, keyPlace, type Optional, show, type Tell } from './fields.ts';
import { nearest } from './nearest.ts';

// biome-ignore lint/suspicious/noExplicitAny: the keys' own types are recovered below
type Keys = Readonly<Record<string, Field<any>>>;
type OptionalKeys<K extends Keys> = { [N in keyof K]: K[N] extends Optional<unknown> ? N : never }[keyof K];
type ValueOf<F> = F extends Field<infer T> ? T : never;
type Flat<T> = { readonly [N in keyof T]: T[N] };

export type ObjectOf<K extends Keys> = Flat<
  { [N in Exclude<keyof K, OptionalKeys<K>>]: ValueOf<K[N]> } & { [N in OptionalKeys<K>]?: ValueOf<K[N]> }
>;

/** Keys of which exactly one, at least one or at most one must stand. */
export interface Choices {
  readonly exactlyOne?: readonly (readonly string[])[];
  readonly atLeastOne?: readonly (readonly string[])[];
  readonly atMostOne?: readonly (readonly string[])[];
}

/** An object of these keys and no others. */
export function object<const K extends Keys>(keys: K, choices: Choices = {}): Field<ObjectOf<K>> {
  const names = Object.keys(keys);
  return {
    wanted: `an object with ${names.join(', ')}`,
    schema: objectSchema(keys, choices),
    read: (value, place, tell) => {
      if (!isObject(value)) {
        tell(place === '' ? 'the file' : place, show(value), `an object with ${names.join(', ')}`);
        return undefined;
      }
      tellUnknown(value, names, place, tell);
      tellChoices(value, choices, place, tell);
      const read: Record<string, unknown> = {};
      for (const name of names) {
        const field = keys[name] as Field<unknown>;
        if (Object.hasOwn(value, name)) read[name] = field.read(value[name], keyPlace(place, name), tell);
        else if (!field.optional) tell(keyPlace(place, name), 'nothing', field.wanted);
      }
      return read as ObjectOf<K>;
    },
  };
}

function tellUnknown(value: object, names: readonly string[], place: string, tell: Tell): void {
  for (const key of Object.keys(value)) {
    if (names.includes(key)) continue;
    const near = nearest(key, names);
    const known = `one of ${names.join(', ')}`;
    tell(keyPlace(place, key), 'a key that is not known', near === undefined ? known : `"${near}", perhaps; ${known}`);
  }
}

function tellChoices(value: object, choices: Choices, place: string, tell: Tell): void {
  const standing = (names: readonly string[]) => names.filter((name) => Object.hasOwn(value, name));
  for (const names of [...(choices.exactlyOne ?? []), ...(choices.atLeastOne ?? [])]) {
    if (standing(names).length === 0) tell(place, `none of ${names.join(', ')}`, `one of ${names.join(', ')}`);
  }
  for (const names of [...(choices.exactlyOne ?? []), ...(choices.atMostOne ?? [])]) {
    const found = standing(names);
    if (found.length > 1) tell(place, found.join(' and '), `only one of ${names.join(', ')}`);
  }
}

function objectSchema(keys: Keys, choices: Choices): JsonSchema {
  const required = Object.keys(keys).filter((name) => !keys[name]?.optional);
  const need = (name: string) => ({ required: [name] });
  const all = [
    ...(choices.exactlyOne ?? []).map((names) => ({ oneOf: names.map(need) })),
    ...(choices.atLeastOne ?? []).map((names) => ({ anyOf: names.map(need) })),
    ...(choices.atMostOne ?? []).map((names) => ({ not: { required: names } })),
  ];
  return {
    type: 'object',
    properties: Object.fromEntries(Object.entries(keys).map(([name, field]) => [name, field.schema])),
    ...(required.length > 0 && { required }),
    additionalProperties: false,
    ...(all.length > 0 && { allOf: all }),
  };
}

/** Objects told apart by the text under one key. */
export function tagged<const K extends Readonly<Record<string, Field<unknown>>>>(
  tag: string,
  kinds: K,
): Field<ValueOf<K[keyof K]>> {
  const names = Object.keys(kinds);
  const wanted = `one of ${names.map((name) => `"${name}"`).join(', ')}`;
  return {
    wanted: `an object with "${tag}": ${wanted}`,
    schema: { oneOf: names.map((name) => kinds[name]?.schema) },
    read: (value, place, tell) => {
      if (!isObject(value)) {
        tell(place, show(value), `an object with "${tag}": ${wanted}`);
        return undefined;
      }
      const name = Object.hasOwn(value, tag) ? value[tag] : undefined;
      if (typeof name === 'string' && Object.hasOwn(kinds, name)) {
        return kinds[name]?.read(value, place, tell) as ValueOf<K[keyof K]>;
      }
      const near = typeof name === 'string' ? nearest(name, names) : undefined;
      tell(keyPlace(place, tag), show(name), near === undefined ? wanted : `"${near}", perhaps; ${wanted}`);
      return undefined;
    },
  };
}

export interface Count {
  readonly min?: number;
  readonly max?: number;
}

function countSentence({ min, max }: Count): string {
  if (min !== undefined && min === max) return `${min}`;
  if (min !== undefined) return `at least ${min}`;
  return max !== undefined ? `at most ${max}` : '';
}

/** A list, read item by item; an item that could not be read leaves its place empty. */
export function list<T>(item: Field<T>, count: Count = {}): Field<readonly T[]> {
  const number = countSentence(count);
  const wanted = `a list${number === '' ? '' : ` of ${number}`}, each ${item.wanted}`;
  return {
    wanted,
    schema: {
      type: 'array',
      items: item.schema,
      ...(count.min !== undefined && { minItems: count.min }),
      ...(count.max !== undefined && { maxItems: count.max }),
    },
    read: (value, place, tell) => {
      if (!isList(value) || value.length < (count.min ?? 0) || value.length > (count.max ?? Infinity)) {
        tell(place, isList(value) ? `a list of ${value.length}` : show(value), wanted);
        return undefined;
      }
      return Array.from(value, (each, i) => item.read(each, `${place}[${i}]`, tell)) as T[];
    },
  };
}

/** A list of which every item could be read, or nothing: rows of figures make no sense with gaps. */
export function wholeList<T>(item: Field<T>, count: Count = {}): Field<readonly T[]> {
  const loose = list(item, count);
  return {
    ...loose,
    read: (value, place, tell) => {
      const read = loose.read(value, place, tell);
      return read?.includes(undefined as T) ? undefined : read;
    },
  };
}

/** Two values in a row, as [elevation, area]. */
export function pair(names: string, first: Field<number>, second: Field<number>): Field<readonly [number, number]> {
  const wanted = `a pair [${names}]`;
  return {
    wanted,
    schema: {
      type: 'array',
      description: `[${names}]`,
      prefixItems: [first.schema, second.schema],
      minItems: 2,
      maxItems: 2,
    },
    read: (value, place, tell) => {
      if (!isList(value) || value.length !== 2) {
        tell(place, show(value), wanted);
        return undefined;
      }
      const a = first.read(value[0], `${place}[0]`, tell);
      const b = second.read(value[1], `${place}[1]`, tell);
      return a === undefined || b === undefined ? undefined : [a, b];
    },
  };
}
