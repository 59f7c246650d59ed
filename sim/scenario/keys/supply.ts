import {
  about,
  type Field,
  flag,
  givenName,
  isList,
  isObject,
  notYet,
  oneOf,
  optional,
  quantity,
  word,
} from '../fields.ts';
import { list, object, pair, wholeList } from '../fields-of-many.ts';
import { coefficient, elevation, flow, share, size } from './common.ts';

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
  on: optional(about('at t = 0', flag)),
  meter: optional(about('its reading now', quantity('volume', { min: 0, max: 1e9 }))),
  volume: optional(
    about(
      'all it can give, as a tank truck’s load; without it, as long as it is open',
      quantity('volume', { above: 0, max: 1e9 }),
    ),
  ),
  rise: optional(about('of its end over the gauge', quantity('length', { min: -1000, max: 1000 }))),
  k: optional(about('loss coefficients, the jet’s own 1 included', coefficient)),
};
const tapPressure = about(
  'at the tap; with the tap shut it gives an upper bound',
  quantity('pressure', { min: 0, max: 1e8 }),
);
const measuredFlow = about('by a bucket test; it wins over the pressure', flow);

interface HoseKeys {
  readonly name?: string;
  readonly on?: boolean;
  readonly meter?: number;
  readonly volume?: number;
  readonly flow?: number;
  readonly pressure?: number;
  readonly length?: number;
  readonly bore?: number;
  readonly rise?: number;
  readonly k?: number;
}

/** A hose by its flow, or by the pressure at its tap where no flow is given. */
const hose = (name: Field<string>): Field<HoseKeys> =>
  oneOf<HoseKeys>(
    {
      takes: (value) => isObject(value) && Object.hasOwn(value, 'pressure') && !Object.hasOwn(value, 'flow'),
      field: object({ name, pressure: tapPressure, length: size, bore: size, ...hoseKeys }),
    },
    {
      takes: () => true,
      field: object({
        name,
        flow: measuredFlow,
        pressure: optional(tapPressure),
        length: optional(size),
        bore: optional(size),
        ...hoseKeys,
      }),
    },
  );
const hoses: Field<readonly HoseKeys[]> = list(hose(givenName));
const oneHose = hose(optional(givenName));

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
