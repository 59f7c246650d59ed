/** Every key of a part of the file as rows of fields, laid out by the schema, filled by what was typed. */
import type { JsonSchema } from '../../sim/scenario/fields.ts';
import { placeKeys, valueAt } from '../../sim/studies/place.ts';
import { keyName } from './key-names.ts';

export interface FieldRow {
  /** A pair is two figures in a row, as [station, elevation]. */
  readonly kind: 'field' | 'words' | 'flag' | 'pair' | 'heading';
  readonly place: string;
  readonly name: string;
  readonly depth: number;
  readonly value: unknown;
  /** What the schema says of it: what it is, and the unit of a bare number. */
  readonly about: string;
  readonly options: readonly string[];
  /** It may be left out. */
  readonly optional: boolean;
}

export interface PartFields {
  readonly rows: readonly FieldRow[];
  /** Keys the part may have and has not. */
  readonly missing: readonly { readonly place: string; readonly name: string; readonly about: string }[];
}

/** What stands as a part of its own in the drawing, and so not among its owner's rows. */
const OWN_PARTS = /^(watercourse\[\d+\]\.stones|plumbing\.(main|bottomFeed|topFeed))$/;
/** Of the file itself only its plain keys are a part, 'the run'. */
const RUN = '';

const plain = /^[A-Za-z_]\w*$/;

export function keyPlace(place: string, key: string | number): string {
  if (typeof key === 'number') return `${place}[${key}]`;
  if (!plain.test(key)) return `${place}[${JSON.stringify(key)}]`;
  return place === '' ? key : `${place}.${key}`;
}

/** @param schema the whole file's */
export function fieldsOf(schema: JsonSchema, file: unknown, place: string): PartFields {
  const walk = new Walk(schema);
  const value = valueAt(file, place);
  const part = walk.at(placeKeys(place), file);
  return { rows: walk.rows(part, value, place, 0), missing: walk.missing(part, value, place) };
}

/** A value of the kind a place takes, to start typing from. */
export function sampleFor(schema: JsonSchema, file: unknown, place: string): unknown {
  const walk = new Walk(schema);
  return walk.sample(walk.at(placeKeys(place), file));
}

class Walk {
  readonly #schema: JsonSchema;

  constructor(schema: JsonSchema) {
    this.#schema = schema;
  }

  /** The schema of a place, alternatives chosen by what stands on the way. */
  at(keys: readonly (string | number)[], file: unknown): JsonSchema {
    let part = this.#fit(this.#schema, file);
    let value = file;
    for (const key of keys) {
      value = (value as Record<string | number, unknown> | undefined)?.[key];
      part = this.#fit(this.#inner(part, key), value);
    }
    return part;
  }

  #inner(schema: JsonSchema, key: string | number): JsonSchema {
    if (typeof key === 'string') return (schema['properties'] as Record<string, JsonSchema> | undefined)?.[key] ?? {};
    const [first, second] = (schema['prefixItems'] as JsonSchema[] | undefined) ?? [];
    return (key === 0 ? first : second) ?? (schema['items'] as JsonSchema | undefined) ?? {};
  }

  /** References followed and the alternative taken that fits a value, else the first. */
  #fit(schema: JsonSchema, value: unknown): JsonSchema {
    const { $ref, anyOf, oneOf, description } = schema;
    if (typeof $ref === 'string') {
      const shared = (this.#schema['$defs'] as Record<string, JsonSchema>)[$ref.replace('#/$defs/', '')] ?? {};
      return { ...this.#fit(shared, value), ...(description !== undefined && { description }) };
    }
    const options = (anyOf ?? oneOf) as JsonSchema[] | undefined;
    if (!options) return schema;
    const fitting = options.map((each) => this.#fit(each, value));
    const chosen = fitting.find((each) => fits(each, value)) ?? fitting[0] ?? {};
    return { ...chosen, description: description ?? chosen['description'] };
  }

  /** What stands in a value and is no part of its own. */
  #entries(value: object, place: string): { key: string | number; inner: unknown; at: string }[] {
    const entries: [string | number, unknown][] = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
    return entries
      .map(([key, inner]) => ({ key, inner, at: keyPlace(place, key) }))
      .filter(({ key, inner, at }) => {
        return !OWN_PARTS.test(at) && !(place === RUN && typeof inner === 'object' && key !== 'water');
      });
  }

  rows(schema: JsonSchema, value: unknown, place: string, depth: number): FieldRow[] {
    if (typeof value !== 'object' || value === null) return [];
    const required = (schema['required'] as string[] | undefined) ?? [];
    return this.#entries(value, place).flatMap(({ key, inner, at }) => {
      const part = this.#fit(this.#inner(schema, key), inner);
      const optional = typeof key === 'number' ? !schema['prefixItems'] : !required.includes(key);
      const row = {
        place: at,
        name: typeof key === 'number' ? String(key + 1) : keyName(key),
        depth,
        optional,
        ...kindOf(part, inner),
      };
      return row.kind === 'pair' ? [row] : [row, ...this.rows(part, inner, at, depth + 1)];
    });
  }

  /** Keys that may stand there and don't: the part's own, then those of what stands in it, by its name. */
  missing(schema: JsonSchema, value: unknown, place: string, owner = ''): PartFields['missing'] {
    if (typeof value !== 'object' || value === null || schema['prefixItems']) return [];
    const properties = Array.isArray(value) ? {} : (schema['properties'] as Record<string, JsonSchema> | undefined);
    const own = Object.entries(properties ?? {})
      .filter(([key]) => !Object.hasOwn(value, key))
      .map(([key, each]) => ({
        place: keyPlace(place, key),
        name: owner === '' ? keyName(key) : `${owner}: ${keyName(key)}`,
        about: aboutOf(this.#fit(each, undefined)),
      }))
      .filter(({ about }) => !about.startsWith('not computed yet'));
    return [
      ...own,
      ...this.#entries(value, place).flatMap(({ key, inner, at }) => {
        const part = this.#fit(this.#inner(schema, key), inner);
        return this.missing(part, inner, at, nameOf(key, inner, owner));
      }),
    ];
  }

  sample(schema: JsonSchema): unknown {
    const { type, properties, required, items, prefixItems, minItems } = schema as Record<string, never>;
    if (schema['const'] !== undefined) return schema['const'];
    if (Array.isArray(schema['enum'])) return schema['enum'][0];
    if (type === 'object') {
      const of = (key: string): unknown => this.sample(this.#fit(properties[key] ?? {}, undefined));
      return Object.fromEntries(((required as string[] | undefined) ?? []).map((key) => [key, of(key)]));
    }
    if (prefixItems) return (prefixItems as JsonSchema[]).map((each) => this.sample(this.#fit(each, undefined)));
    if (type === 'array') return Array.from({ length: minItems ?? 1 }, () => this.sample(this.#fit(items, undefined)));
    if (type === 'boolean') return true;
    return type === 'string' ? '' : 0;
  }
}

const typeOf = (value: unknown): string => (Array.isArray(value) ? 'array' : value === null ? 'null' : typeof value);

function fits(schema: JsonSchema, value: unknown): boolean {
  if (schema['const'] !== undefined) return schema['const'] === value;
  if (Array.isArray(schema['enum'])) return schema['enum'].includes(value);
  if (schema['type'] !== undefined && schema['type'] !== typeOf(value)) return false;
  const tags = Object.entries((schema['properties'] as Record<string, JsonSchema> | undefined) ?? {});
  return tags.every(
    ([key, each]) => each['const'] === undefined || (value as Record<string, unknown>)[key] === each['const'],
  );
}

/** What a list's entry is called is its own name, else the list's with its number. */
function nameOf(key: string | number, inner: unknown, owner: string): string {
  if (typeof key === 'string') return keyName(key);
  const name = valueAt(inner, 'name');
  return typeof name === 'string' ? name : `${owner} ${key + 1}`.trim();
}

const aboutOf = (schema: JsonSchema): string =>
  typeof schema['description'] === 'string' ? schema['description'] : '';

function kindOf(schema: JsonSchema, value: unknown): Pick<FieldRow, 'kind' | 'value' | 'about' | 'options'> {
  const about = aboutOf(schema);
  if (schema['prefixItems'] && Array.isArray(value) && value.length === 2)
    return { kind: 'pair', value, about, options: [] };
  if (typeof value === 'object' && value !== null) return { kind: 'heading', value, about, options: [] };
  if (typeof value === 'boolean') return { kind: 'flag', value, about, options: [] };
  if (Array.isArray(schema['enum'])) return { kind: 'words', value, about, options: schema['enum'] as string[] };
  return { kind: 'field', value, about, options: [] };
}
