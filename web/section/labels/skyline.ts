import type { Scale } from '../scale.ts';
import type { Scene } from '../scene.ts';
import { type Box, boxRound, type Point, type Segment, segmentsOf } from './shapes.ts';

/** Width of a column of sky or earth, px. */
const COLUMN = 12;
/** Kept free between a region and what bounds it, px. */
const CLEAR = 3;

/** What stands up from the ground or bounds it from above, as lines on the sheet. */
export interface Outlines {
  /** Everything under which there is no more sky. */
  readonly upper: readonly Segment[];
  /** Everything above which there is no bare earth. */
  readonly lower: readonly Segment[];
}

/** Highest and lowest y of a segment between two x; undefined where it isn't there. */
function between([a, b]: Segment, from: number, to: number): [top: number, bottom: number] | undefined {
  const [left, right] = a.x <= b.x ? [a, b] : [b, a];
  if (right.x < from || left.x > to) return undefined;
  const yAt = (x: number): number => left.y + ((x - left.x) / (right.x - left.x)) * (right.y - left.y);
  if (right.x === left.x) return [Math.min(a.y, b.y), Math.max(a.y, b.y)];
  const [one, other] = [yAt(Math.max(from, left.x)), yAt(Math.min(to, right.x))];
  return [Math.min(one, other), Math.max(one, other)];
}

/** Boxes of open sky and bare earth, side by side over a frame. */
export function regionsOf({ upper, lower }: Outlines, frame: Box): { sky: Box[]; earth: Box[] } {
  const sky: Box[] = [];
  const earth: Box[] = [];
  for (let left = frame.left; left < frame.right; left += COLUMN) {
    const right = Math.min(frame.right, left + COLUMN);
    const tops = upper.flatMap((segment) => between(segment, left, right)?.[0] ?? []);
    const bottoms = lower.flatMap((segment) => between(segment, left, right)?.[1] ?? []);
    const top = Math.min(frame.bottom, ...tops) - CLEAR;
    const bottom = bottoms.length > 0 ? Math.max(...bottoms) + CLEAR : frame.bottom;
    if (top > frame.top) sky.push({ left, top: frame.top, right, bottom: top });
    if (bottom < frame.bottom) earth.push({ left, top: bottom, right, bottom: frame.bottom });
  }
  return { sky, earth };
}

/** Lines of a scene that bound sky and earth: the ground, vessels, stones and pipes above it. */
export function outlinesOf(scene: Scene, scale: Scale): Outlines {
  const at = ([x, z]: readonly [number, number]): Point => ({ x: scale.x(x), y: scale.y(z) });
  const ground = segmentsOf(scene.earth.map(at));
  const { filter, reaches, vault, pipes } = scene;
  const level = (from: number, to: number, z: number): Segment => [at([from, z]), at([to, z])];
  const tops: Segment[] = [
    level(vault.cut.left - vault.wall, vault.cut.left + vault.cut.width + vault.wall, vault.top),
  ];
  if (filter) tops.push(level(filter.cut.left - filter.wall, filter.brink.x, filter.rim));
  for (const reach of reaches) {
    if (reach.kind === 'stream')
      tops.push(level(reach.left, reach.right, reach.brink.z + reach.reach.slope * reach.reach.length));
    else
      tops.push(
        level(reach.cut.left, reach.brink.x, reach.rim),
        ...reach.stones.map((s) => level(s.left, s.right, s.crest)),
      );
  }
  tops.push(level(scene.pond.cut.left, scene.vault.cut.left, scene.pond.rim));
  const feeds = [pipes.topFeed, pipes.bottomFeed].flatMap((route) => (route ? segmentsOf(route.spots.map(at)) : []));
  return { upper: [...ground, ...tops, ...feeds], lower: ground };
}

/**
 * A box of open sky for a detail, as far to the right as it goes: so wide, and as high as the sky is there.
 *
 * @returns undefined where the sky is nowhere so high
 */
export function roomInSky(sky: readonly Box[], width: number, least: number, most: number): Box | undefined {
  const columns = [...sky].sort((a, b) => b.right - a.right);
  for (const { right } of columns) {
    const over = columns.filter((each) => each.right <= right && each.right > right - width + 1);
    const round = boxRound(
      over.flatMap((each) => [
        { x: each.left, y: each.top },
        { x: each.right, y: each.top },
      ]),
    );
    if (round.right - round.left < width - COLUMN) return undefined;
    const bottom = Math.min(...over.map((each) => each.bottom));
    const height = Math.min(most, bottom - round.top);
    if (height >= least) return { left: right - width, top: round.top, right, bottom: round.top + height };
  }
  return undefined;
}
