/** Keys that stand in many parts of a file. Bounds are in SI; they keep a slip of units out, not an unusual site. */
import { about, type Field, type JsonSchema, oneOf, optional, quantity, word } from '../fields.ts';
import { object, pair, wholeList } from '../fields-of-many.ts';

/** What the keys' own sentences refer to by name in the schema file, so that each stands there once. */
const shared = {
  /** Elevations may be counted from the sea. */
  elevation: quantity('length', { min: -9000, max: 9000 }, 'an elevation'),
  station: quantity('length', { min: -1000, max: 1000 }),
  size: quantity('length', { above: 0, max: 1000 }),
  sizeOrNone: quantity('length', { min: 0, max: 1000 }),
  area: quantity('area', { min: 0, max: 1e5 }),
  hole: quantity('area', { min: 0, max: 1 }),
  share: quantity('fraction', { min: 0, max: 1 }),
  flow: quantity('flow', { min: 0, max: 10 }),
  coefficient: quantity('number', { min: 0, max: 1e6 }),
  time: quantity('time', { min: 0, max: 1e10 }),
};

const refer = <T>(name: keyof typeof shared, field: Field<T>): Field<T> => ({
  ...field,
  schema: { $ref: `#/$defs/${name}` },
});

/** The definitions referred to. */
export const DEFINITIONS: Readonly<Record<string, JsonSchema>> = Object.fromEntries(
  Object.entries(shared).map(([name, { schema }]) => [name, schema]),
);

export const elevation = refer('elevation', shared.elevation);
export const size = refer('size', shared.size);
export const sizeOrNone = refer('sizeOrNone', shared.sizeOrNone);
export const area = refer('area', shared.area);
export const hole = refer('hole', shared.hole);
export const share = refer('share', shared.share);
export const flow = refer('flow', shared.flow);
export const coefficient = refer('coefficient', shared.coefficient);
export const time = refer('time', shared.time);
const station = refer('station', shared.station);

export const dischargeCoefficient = about(
  'discharge coefficient on the ideal broad crest',
  quantity('number', { above: 0, max: 2 }),
);

const isText = (value: unknown) => typeof value === 'string';

/** One of the words, or else what the field reads. A text that is no such word is left to the field. */
export const wordOr = <const W extends string, T>(words: readonly W[], field: Field<T>) =>
  oneOf<W | T>(
    { takes: (value) => isText(value) && words.includes(value as W), field: word(...words) },
    { takes: () => true, field },
  );

export const profile = about(
  'ascending; the plan area is linear between the points',
  wholeList(pair('elevation, plan area', elevation, area), { min: 2 }),
);

export const crestLine = about(
  'the crest as it was surveyed',
  wholeList(pair('station, elevation', station, elevation), { min: 2 }),
);

export const crest = object({ crest: crestLine, cd: optional(dischargeCoefficient) });

export const leak = object({ elevation, area: about('effective, contraction included', hole) });

const displaced = wholeList(
  object({ from: elevation, to: elevation, fraction: quantity('fraction', { min: 0, below: 1 }) }),
);

export const level = wordOr(['empty'], elevation);

/** What every basin may hold beside its own keys. */
export const standing = {
  level: optional(about('at t = 0, laid over the start', level)),
  leak: optional(about('a hole', leak)),
};

export const basin = {
  profile,
  displaced: optional(about('rock and gravel: fractions of a layer, overlaps add', displaced)),
  ...standing,
};
