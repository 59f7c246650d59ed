/**
 * The definition of a scenario file: every key, its units and bounds. The reader and scenario.schema.json both come
 * from it. What the keys mean is said beside the types of `scenario.ts`.
 */
import { parseMoment } from '../quantity/index.ts';
import {
  about,
  heading,
  type JsonSchema,
  optional,
  type Partly,
  quantity,
  text,
  textLike,
  type Value,
  word,
} from './fields.ts';
import { object } from './fields-of-many.ts';
import { actions } from './keys/actions.ts';
import { DEFINITIONS } from './keys/common.ts';
import { filter } from './keys/filter.ts';
import { plumbing } from './keys/plumbing.ts';
import { intake, pond, pump, vault } from './keys/pond.ts';
import { sketch } from './keys/sketch.ts';
import { limits, supply, weather } from './keys/supply.ts';
import { watercourse } from './keys/watercourse.ts';

const starts = textLike(
  'a local clock time "YYYY-MM-DDTHH:MM" of the calendar',
  /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/,
  (value) => parseMoment(value) !== undefined,
);

export const site = object({
  title: optional(heading),
  notes: optional(text),
  display: optional(about('how it is shown, never how it is computed', word('us', 'metric'))),
  starts: optional(about('local clock time of t = 0', starts)),
  place: optional(
    object({
      latitude: optional(quantity('angle', { min: -90, max: 90 })),
      elevation: optional(quantity('length', { min: -500, max: 9000 })),
    }),
  ),
  water: optional(object({ temperature: optional(quantity('temperature', { min: 0, max: 40 })) })),
  span: about('how long is simulated', quantity('time', { above: 0, max: 3660 * 86400 })),
  start: optional(word('running', 'standing', 'overnight')),
  pond,
  intake,
  vault,
  pump,
  plumbing,
  filter: optional(filter),
  watercourse: optional(watercourse),
  debris: optional(about('settled solids per volume of pond water', quantity('fraction', { min: 0, max: 0.01 }))),
  load: optional(about('of waste into the pond', quantity('massRate', { min: 0, max: 1 }))),
  concentration: optional(about('of waste at t = 0', quantity('concentration', { min: 0, max: 1000 }))),
  weather: optional(weather),
  supply: optional(supply),
  limits: optional(limits),
  actions: optional(actions),
});

/** A file whose every key has been read: SI figures, nothing filled in. */
export type SiteFile = Value<typeof site>;
/** The same while it may still have problems. */
export type PartlyFile = Partly<SiteFile>;

/** The definition of a whole site as JSON Schema, draft 2020-12. */
export function jsonSchema(): JsonSchema {
  const { properties, ...rest } = site.schema as { properties: JsonSchema };
  return { ...HEAD, ...rest, properties: { ...properties, sketch: sketch.schema }, $defs: DEFINITIONS };
}

/** The definition of every file: a whole site, or a sketch with any parts of a site beside it. */
export function fileSchema(): JsonSchema {
  const whole = site.schema as { properties: JsonSchema };
  const sketched = {
    ...partial(site.schema),
    properties: { ...(partial(whole) as typeof whole).properties, sketch: sketch.schema },
    required: ['sketch'],
  };
  return {
    ...HEAD,
    if: { required: ['sketch'] },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: { $ref: '#/$defs/sketched' },
    else: { $ref: '#/$defs/site' },
    $defs: { ...DEFINITIONS, site: site.schema, sketched },
  };
}

const HEAD = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'A tumblebay scenario: one site and what is done on it',
  description: 'Figures are SI (the unit stands in each description); a text gives another unit, as "3 ft 6 in".',
};

/** An object of which any part may be left out, for a sketch gives the rest; a list is given whole. */
function partial({ required: _required, allOf: _choices, ...schema }: JsonSchema): JsonSchema {
  const { properties, anyOf } = schema as { properties?: Record<string, JsonSchema>; anyOf?: readonly JsonSchema[] };
  return {
    ...schema,
    ...(properties && {
      properties: Object.fromEntries(Object.entries(properties).map(([key, each]) => [key, partial(each)])),
    }),
    ...(anyOf && { anyOf: anyOf.map(partial) }),
  };
}
