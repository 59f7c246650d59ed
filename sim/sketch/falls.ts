import { areaAt } from '../scenario/profile.ts';
import type { Draft } from './draft.ts';
import { FILTER, LOW_STRETCH, POOL, STREAM } from './layout.ts';
import { tidy } from './units.ts';

const level = (width: number, z: number) => [
  [0, tidy(z)],
  [tidy(width), tidy(z)],
];

/** The upflow filter: a box as wide as its lip asks for, mats on the rack and bags above them. */
export function filterPart(site: Draft): Record<string, unknown> {
  const { lip, lipWidth } = site;
  const width = Math.max(FILTER.leastWidth, lipWidth + FILTER.besideLip);
  const box = FILTER.length * width;
  const given = site.filter?.profile;
  const area = given ? areaAt(given, lip - FILTER.mediaTop) : box;
  const perimeter = tidy(2 * (FILTER.length + width));
  const sides = lip + site.number('sides');
  const { count, ...mat } = FILTER.mats;
  const bags = FILTER.rack - FILTER.mediaTop - count * mat.thickness;
  return {
    profile: [
      [tidy(lip - FILTER.floor), tidy(box)],
      [tidy(sides), tidy(box)],
    ],
    media: {
      bottom: tidy(lip - FILTER.rack),
      area: tidy(area),
      perimeter,
      layers: [
        ...Array.from({ length: count }, (_, i) => ({ name: `mat ${i + 1}`, ...mat })),
        { name: 'bags', thickness: tidy(bags), ...FILTER.bags },
      ],
    },
    lip: { crest: level(lipWidth, lip) },
    rim: { crest: level(perimeter, sides) },
  };
}

/** Bed at the upper end of the stream, or the pond's edge where there is none: what the upper pool falls to. */
export const belowPool = (site: Draft): number => site.pond.edge + site.number('slope') * site.number('stream');

/** The upper pool with its two stones, and the stream from it to the pond. */
export function watercoursePart(site: Draft): unknown[] {
  const stone = site.number('stone');
  const length = site.number('stream');
  const crest = (site.lip + belowPool(site)) / 2;
  const water = length > 0 ? belowPool(site) : site.pond.mark;
  const side = crest + site.number('sideStone');
  const area = tidy(site.number('poolArea'));
  const splash = site.number('splash');
  const pool = {
    name: 'upper pool',
    kind: 'pool',
    profile: [
      [tidy(crest - POOL.depth), area],
      [tidy(crest + site.number('poolEdge')), area],
    ],
    stones: [
      { name: 'main stone', main: true, crest: level(stone, crest), fall: tidy(crest - water), splash },
      { name: 'side stone', crest: level(stone * POOL.sideStone, side), fall: tidy(side - water), splash },
    ],
    rim: { crest: level(LOW_STRETCH, crest + site.number('poolEdge')) },
  };
  if (length <= 0) return [pool];
  const stream = {
    name: 'stream',
    kind: 'stream',
    length: site.raw('stream') ?? length,
    width: tidy(Math.max(STREAM.leastWidth, stone)),
    slope: site.figure('slope'),
    foot: tidy(site.pond.edge),
    edge: { height: STREAM.edge, length: tidy(LOW_STRETCH) },
  };
  return [pool, stream];
}
