import { about, flag, optional, quantity, textLike, word } from '../fields.ts';
import { list, object, tagged } from '../fields-of-many.ts';
import {
  basin,
  crest,
  crestLine,
  dischargeCoefficient,
  elevation,
  share,
  size,
  sizeOrNone,
  standing,
} from './common.ts';

const name = textLike(
  'a name of 60 characters at most',
  /^(?=.{1,60}$).*\S/,
  (value) => value === value.trim() && value !== '__proto__',
);

const stone = object({
  name,
  main: optional(flag),
  crest: crestLine,
  cd: optional(dischargeCoefficient),
  along: optional(about('its length along the flow', size)),
  nose: optional(about('radius of its upstream edge', sizeOrNone)),
  seep: optional(object({ k: about('m²/s', quantity('number', { min: 0, max: 10 })), foot: optional(elevation) })),
  fall: optional(sizeOrNone),
  splash: optional(about('fraction that lands in no water', quantity('fraction', { min: 0, max: 0.01 }))),
  blockage: optional(share),
});

const pool = object({
  name,
  kind: word('pool'),
  ...basin,
  stones: list(stone, { min: 1 }),
  rim: crest,
});

const stream = object({
  name,
  kind: word('stream'),
  length: size,
  width: size,
  slope: quantity('fraction', { above: 0, max: 2 }),
  manning: optional(about('n, s/m^(1/3)', quantity('number', { above: 0, max: 2 }))),
  foot: about('bed at the lower end', elevation),
  blockage: optional(share),
  edge: optional(object({ height: size, length: size, cd: optional(dischargeCoefficient) })),
  ...standing,
});

export const watercourse = about('from the filter’s lip down to the pond', list(tagged('kind', { pool, stream })));
