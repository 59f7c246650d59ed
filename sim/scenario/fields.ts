/**
 * The words in which a file is defined: each field knows how it is read, how it is described to people, and its
 * JSON Schema. The reader and the kept schema file therefore cannot part.
 */
import { DIMENSIONS, type DimensionName, parseQuantity, unitsSentence } from '../quantity/index.ts';

export type JsonSchema = { readonly [key: string]: unknown };

/** Where a problem goes: the place in the file, what was found, what is wanted. */
export type Tell = (place: string, found: string, wanted: string) => void;

export interface Field<T> {
  /** The value in SI, or undefined after telling what is wrong with it. Objects come back with what could be read. */
  readonly read: (value: unknown, place: string, tell: Tell) => T | undefined;
  /** What is wanted here, as the end of a sentence. */
  readonly wanted: string;
  readonly schema: JsonSchema;
  readonly optional?: boolean;
}

export type Value<F> = F extends Field<infer T> ? T : never;

export type Optional<T> = Field<T> & { readonly optional: true };

/** A file that may still have problems: any part of it may be missing, but a list of figures is whole or absent. */
export type Partly<T> = T extends readonly number[] | readonly (readonly number[])[]
  ? T
  : T extends readonly (infer U)[]
    ? readonly (Partly<U> | undefined)[]
    : T extends object
      ? { readonly [K in keyof T]?: Partly<T[K]> | undefined }
      : T;

/** A value as a problem quotes it. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length > 4 ? `a list of ${value.length}` : clip(JSON.stringify(value));
  if (typeof value === 'object' && value !== null) return 'an object';
  return clip(typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? typeof value));
}

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

/** The place of a key: `pump.curve`, or `limits["drain-back"]` where the key is no plain word. */
export function keyPlace(place: string, key: string): string {
  if (/^[A-Za-z_]\w*$/.test(key)) return place === '' ? key : `${place}.${key}`;
  return `${place}[${clip(JSON.stringify(key))}]`;
}

export const optional = <T>(field: Field<T>): Optional<T> => ({ ...field, optional: true });

/** The same field with a sentence about it in the schema. */
export const about = <F extends Field<unknown>>(description: string, field: F): F => ({
  ...field,
  schema: { ...field.schema, description: unitNote(description, field.schema) },
});

function unitNote(description: string, schema: JsonSchema): string {
  return typeof schema.description === 'string' ? `${description} (${schema.description})` : description;
}

export interface Bounds {
  readonly min?: number;
  readonly max?: number;
  readonly above?: number;
  readonly below?: number;
}

function boundsSentence({ min, max, above, below }: Bounds): string {
  if (min !== undefined && max !== undefined) return ` from ${min} to ${max}`;
  const low = above !== undefined ? ` above ${above}` : min !== undefined ? ` of at least ${min}` : '';
  const high = below !== undefined ? ` below ${below}` : max !== undefined ? ` of at most ${max}` : '';
  return low !== '' && high !== '' ? `${low} and${high}` : low + high;
}

function within(value: number, { min, max, above, below }: Bounds): boolean {
  return (
    Number.isFinite(value) &&
    !(min !== undefined && value < min) &&
    !(max !== undefined && value > max) &&
    !(above !== undefined && value <= above) &&
    !(below !== undefined && value >= below)
  );
}

/** A number in SI or a text with a unit that fits. The bounds are in the SI unit. */
export function quantity(
  dimension: DimensionName,
  bounds: Bounds = {},
  title: string = DIMENSIONS[dimension].title,
): Field<number> {
  const { si, units } = DIMENSIONS[dimension];
  const wanted = `${title}${boundsSentence(bounds)}${si === '' ? '' : ` ${si}`}: ${unitsSentence(dimension)}`;
  const numeric = { type: 'number', ...schemaBounds(bounds) };
  const described = si === '' ? {} : { description: si };
  const hasUnits = Object.keys(units).length > 0;
  return {
    wanted,
    schema: hasUnits ? { anyOf: [numeric, { type: 'string' }], ...described } : { ...numeric, ...described },
    read: (value, place, tell) => {
      const parsed = typeof value === 'string' ? parseQuantity(value, dimension) : { ok: true as const, value };
      if (!parsed.ok) tell(place, parsed.found, wanted);
      else if (typeof parsed.value === 'number' && within(parsed.value, bounds)) return parsed.value;
      else tell(place, show(value), wanted);
      return undefined;
    },
  };
}

function schemaBounds({ min, max, above, below }: Bounds): JsonSchema {
  return {
    ...(min !== undefined && { minimum: min }),
    ...(max !== undefined && { maximum: max }),
    ...(above !== undefined && { exclusiveMinimum: above }),
    ...(below !== undefined && { exclusiveMaximum: below }),
  };
}

/** A field whose values pass a test of their own. */
function plain<T>(wanted: string, schema: JsonSchema, test: (value: unknown) => value is T): Field<T> {
  return {
    wanted,
    schema,
    read: (value, place, tell) => {
      if (test(value)) return value;
      tell(place, show(value), wanted);
      return undefined;
    },
  };
}

export const flag: Field<boolean> = plain('true or false', { type: 'boolean' }, (value) => typeof value === 'boolean');

export const text: Field<string> = plain('a text', { type: 'string' }, (value) => typeof value === 'string');

/** A text that passes `test`. */
export function textLike(
  wanted: string,
  pattern: RegExp,
  test: (value: string) => boolean = () => true,
): Field<string> {
  return plain(
    wanted,
    { type: 'string', pattern: pattern.source },
    (value): value is string => typeof value === 'string' && pattern.test(value) && test(value),
  );
}

/** A name that fits a drawing: 60 characters at most, not all of them blanks. */
export const givenName: Field<string> = textLike('a name of 60 characters at most', /^(?=.{1,60}$).*\S/);

/** A heading that fits a page: 120 characters at most. */
export const heading: Field<string> = textLike('a text of 120 characters at most', /^[\s\S]{0,120}$/);

export function word<const W extends string>(...words: readonly W[]): Field<W> {
  return plain(
    words.map((each) => `"${each}"`).join(' or '),
    words.length === 1 ? { const: words[0] } : { enum: words },
    (value): value is W => words.includes(value as W),
  );
}

/** The first field that takes values of this kind reads it: each with a test on the value's kind alone. */
export function oneOf<T>(...kinds: readonly { takes: (value: unknown) => boolean; field: Field<T> }[]): Field<T> {
  const wanted = kinds.map(({ field }) => field.wanted).join('; or ');
  return {
    wanted,
    schema: { anyOf: kinds.map(({ field }) => field.schema) },
    read: (value, place, tell) => {
      const kind = kinds.find(({ takes }) => takes(value));
      if (!kind) {
        tell(place, show(value), wanted);
        return undefined;
      }
      const { field } = kind;
      return field.read(value, place, (where, found, want) =>
        tell(where, found, want === field.wanted ? wanted : want),
      );
    },
  };
}

/** Nothing of anything, with a unit or without. */
const ZERO = /^[+-]?0+(\.0*)?(\s*[A-Za-z%][A-Za-z0-9/]*)?$/;

/** A key that is understood and not computed yet: it may stand with 0, and is refused by name with anything else. */
export function notYet(what: string): Optional<0> {
  const wanted = `nothing or 0; not computed yet: ${what}`;
  const isZero = (value: unknown) => value === 0 || (typeof value === 'string' && ZERO.test(value));
  return optional({
    wanted,
    schema: {
      anyOf: [{ const: 0 }, { type: 'string', pattern: ZERO.source }],
      description: `not computed yet: ${what}`,
    },
    read: (value, place, tell) => {
      if (isZero(value)) return 0;
      tell(place, show(value), wanted);
      return undefined;
    },
  });
}

export const isList = (value: unknown): value is unknown[] => Array.isArray(value);
export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
