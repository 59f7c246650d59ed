import { about, flag, isObject, oneOf, optional, quantity, textLike, word } from '../fields.ts';
import { object } from '../fields-of-many.ts';
import { boreOf, PIPE_SIZES } from '../pipe-sizes.ts';
import { coefficient, elevation, hole, profile, share, sizeOrNone, standing } from './common.ts';

const count = optional(quantity('number', { min: 0, max: 1000 }));

export const nominal = textLike(
  `a nominal size, one of ${PIPE_SIZES.join(', ')}`,
  /^.{1,40}$/,
  (value) => boreOf(value) !== undefined,
);

const pipe = {
  diameter: optional(about('inside', quantity('length', { above: 0, max: 3 }))),
  size: optional(about(`nominal, one of ${PIPE_SIZES.join(', ')}`, nominal)),
  length: sizeOrNone,
  roughness: optional(quantity('length', { min: 0, max: 0.01 })),
  fittings: optional(
    object({ elbow90: count, elbow45: count, ballValve: count, checkSwing: count, entrance: count, exit: count }),
  ),
  k: optional(about('further losses, on this pipe’s velocity head', coefficient)),
};

const oneBore = { exactlyOne: [['diameter', 'size']] };

const checkValve = oneOf<boolean | 'unknown' | { readonly leak: number }>(
  { takes: isObject, field: object({ leak: about('effective area of a leaking valve', hole) }) },
  { takes: (value) => typeof value === 'string', field: word('unknown') },
  { takes: () => true, field: flag },
);

const feed = {
  ...pipe,
  valve: optional(about('opening: 1 − handle angle / 90°', share)),
  law: optional(word('ball', 'cock')),
};

export const plumbing = object(
  {
    main: object({ ...pipe, checkValve: optional(checkValve) }, oneBore),
    tee: optional(elevation),
    bottomFeed: optional(object({ ...feed, inlet: elevation }, oneBore)),
    topFeed: optional(
      object(
        { ...feed, outlet: elevation, to: optional(textLike('"filter", "pond" or the name of a pool or stream', /./)) },
        oneBore,
      ),
    ),
    profile: optional(about('the riser’s own shape, where the pipe’s route is known', profile)),
    ...standing,
  },
  { atLeastOne: [['bottomFeed', 'topFeed']] },
);
