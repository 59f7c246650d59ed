/**
 * The definition of a scenario file: every key, its units and bounds. The reader and scenario.schema.json both come
 * from it. What the keys mean is said beside the types of `scenario.ts`.
 */
import { parseMoment } from '../quantity/index.ts';
import {
  about,
  heading,
  type JsonSchema,
  notYet,
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
  debris: notYet('clogging of the media by debris'),
  load: notYet('the load of waste into the pond'),
  concentration: notYet('the concentration of waste in the pond'),
  weather: optional(weather),
  supply: optional(supply),
  limits: optional(limits),
  actions: optional(actions),
  sketch: notYet('a site from a sketch'),
});

/** A file whose every key has been read: SI figures, nothing filled in. */
export type SiteFile = Value<typeof site>;
/** The same while it may still have problems. */
export type PartlyFile = Partly<SiteFile>;

/** The definition as JSON Schema, draft 2020-12. */
export function jsonSchema(): JsonSchema {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'A tumblebay scenario: one site and what is done on it',
    description: 'Figures are SI (the unit stands in each description); a text gives another unit, as "3 ft 6 in".',
    ...site.schema,
    $defs: DEFINITIONS,
  };
}
