import { about, type Field, flag, givenName, isList, notYet, oneOf, optional, quantity, word } from '../fields.ts';
import { list, type ObjectOf, object, pair, wholeList } from '../fields-of-many.ts';
import { elevation, flow, share } from './common.ts';

const rate = quantity('depthRate', { min: 0, max: 1e-3 });

export const weather = object({
  evaporation: optional(
    oneOf<number | readonly number[]>(
      { takes: isList, field: about('by month, January first', wholeList(rate, { min: 12, max: 12 })) },
      { takes: () => true, field: rate },
    ),
  ),
  rain: optional(
    about(
      'depth of each month, January first',
      wholeList(quantity('length', { min: 0, max: 10 }), { min: 12, max: 12 }),
    ),
  ),
  file: notYet('weather from a file'),
  generate: notYet('generated weather'),
});

const hoseKeys = {
  flow,
  on: optional(about('at t = 0', flag)),
  meter: optional(about('its reading now', quantity('volume', { min: 0, max: 1e9 }))),
  pressure: notYet('a hose by its pressure; measure its flow with a bucket and give that'),
  length: notYet('a hose by its pressure'),
  bore: notYet('a hose by its pressure'),
  rise: notYet('a hose by its pressure'),
  k: notYet('a hose by its pressure'),
};
const hoseName = givenName;
const oneHose = object({ name: optional(hoseName), ...hoseKeys });
type HoseKeys = ObjectOf<{ name: typeof hoseName & { optional: true } } & typeof hoseKeys>;
const hoses: Field<readonly HoseKeys[]> = list(object({ name: hoseName, ...hoseKeys }));

export const supply = object({
  hose: optional(
    oneOf<HoseKeys | readonly HoseKeys[]>({ takes: isList, field: hoses }, { takes: () => true, field: oneHose }),
  ),
  autofill: optional(
    object({
      flow,
      set: about('no flow from this level up', elevation),
      low: about('full flow from this level down', elevation),
      in: optional(word('pond', 'vault')),
    }),
  ),
});

const margin = quantity('length', { min: -10, max: 100 });

export const limits = object({
  'drain-back': optional(about('[fail, pass]', pair('fail, pass', margin, margin))),
  channeling: optional(share),
  headroom: optional(
    oneOf<number | readonly [number, number]>(
      { takes: isList, field: about('[fail, pass]', pair('fail, pass', margin, margin)) },
      { takes: () => true, field: margin },
    ),
  ),
  velocity: optional(quantity('speed', { above: 0, max: 100 })),
});
