import { about, givenName, optional, quantity } from '../fields.ts';
import { list, object } from '../fields-of-many.ts';
import { basin, crest, elevation, size, sizeOrNone } from './common.ts';

const layer = object(
  {
    name: optional(givenName),
    thickness: size,
    porosity: quantity('fraction', { above: 0, below: 1 }),
    grain: optional(about('grain diameter, or a mat’s fiber diameter', quantity('length', { above: 0, max: 1 }))),
    permittivity: optional(about('of a mat, ASTM D4491', quantity('rate', { above: 0, max: 1e6 }))),
    capture: optional(about('1/m', quantity('number', { min: 0, max: 1e4 }))),
    beta: optional(about('pore space lost by volume deposited', quantity('number', { above: 0, max: 100 }))),
    deposit: optional(about('what has settled in it at t = 0', quantity('volume', { min: 0, max: 1e4 }))),
  },
  { atLeastOne: [['grain', 'permittivity']] },
);

const force = quantity('force', { min: 0, max: 1e6 });

const media = object({
  bottom: elevation,
  area: quantity('area', { above: 0, max: 1e4 }),
  perimeter: size,
  gap: optional(about('between media and wall', quantity('length', { min: 0, max: 1 }))),
  layers: about('from the bottom up', list(layer, { min: 1 })),
  submergedWeight: optional(force),
  holdDown: optional(force),
  liftSlack: optional(sizeOrNone),
  removal: optional(quantity('rate', { min: 0, max: 1e3 })),
  tanks: optional(about('equal tanks in series the media stand for', quantity('number', { min: 1, max: 1000 }))),
});

export const filter = object({
  ...basin,
  media: optional(media),
  lip: crest,
  rim: crest,
});
