import { about, flag, isList, isObject, oneOf, optional, quantity, word } from '../fields.ts';
import { list, object, pair, wholeList } from '../fields-of-many.ts';
import { area, basin, coefficient, crest, elevation, flow, share, size, sizeOrNone } from './common.ts';

const shape = object(
  {
    plan: optional(
      about('rectangle 1, ellipse π/4, freeform 0.82 of the box', word('rectangle', 'ellipse', 'freeform')),
    ),
    factor: optional(about('area over length × width', quantity('fraction', { above: 0, max: 1 }))),
    length: about('at the brim', size),
    width: about('at the brim', size),
    depth: size,
    brim: optional(about('elevation of the brim, 0 if left out', elevation)),
    slope: optional(about('run per rise of every bank', quantity('fraction', { min: 0, max: 20 }))),
    shelves: optional(list(object({ depth: about('under the brim', size), width: size }))),
    gravel: optional(about('a layer from the floor up, 0.4 of it water', sizeOrNone)),
  },
  { exactlyOne: [['plan', 'factor']] },
);

export const pond = object(
  {
    ...basin,
    profile: optional(basin.profile),
    shape: optional(shape),
    fillMark: optional(about('where the crew means to keep it, pump running', elevation)),
    rim: about('the lowest stretch of the liner’s edge', crest),
    overflow: optional(object({ elevation, diameter: size })),
    plantCover: optional(about('fraction of the surface', share)),
    runoff: optional(object({ area, coefficient: share })),
  },
  { exactlyOne: [['profile', 'shape']], atLeastOne: [['level', 'fillMark']] },
);

export const intake = object({
  width: size,
  elevation: about('of its lip', elevation),
  blockage: optional(share),
});

export const vault = object(basin);

const head = quantity('length', { min: 0, max: 1000 });
const watts = quantity('power', { min: 0, max: 1e6 });
const points = wholeList(pair('flow, head', flow, head), { min: 2 });
const box = object({
  flow: quantity('flow', { above: 0, max: 10 }),
  head: quantity('length', { above: 0, max: 1000 }),
});

export const curve = about(
  'the maker’s points from flow 0 up, or the two maxima on the box',
  oneOf<readonly (readonly [number, number])[] | { readonly flow: number; readonly head: number }>(
    { takes: isList, field: points },
    { takes: isObject, field: box },
  ),
);

/** Beyond full speed as far as a drive may be set. */
const onSpeed = quantity('fraction', { min: 0.1, max: 1.2 });

export const pump = object(
  {
    curve,
    power: optional(
      oneOf<number | readonly (readonly [number, number])[]>(
        { takes: isList, field: wholeList(pair('flow, power', flow, watts), { min: 2 }) },
        { takes: () => true, field: watts },
      ),
    ),
    efficiency: optional(about('wire to water', quantity('fraction', { above: 0, max: 1 }))),
    suction: about('draws air below it', elevation),
    minimum: about('full flow above it', elevation),
    standingLoss: optional(about('K on the main’s velocity head, the pump standing', coefficient)),
    running: optional(about('at t = 0', flag)),
    speed: optional(about('while it is on, of the full speed that its curve is for', onSpeed)),
    cutOut: optional(object({ below: elevation, restart: elevation })),
  },
  { atMostOne: [['power', 'efficiency']] },
);
