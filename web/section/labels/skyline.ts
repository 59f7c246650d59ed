import type { Spot } from '../cut.ts';
import type { Scale } from '../scale.ts';
import { bedAt, type Scene, type StreamScene } from '../scene.ts';
import { type Box, type Point, type Segment, segmentsOf } from './shapes.ts';

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

type Seen = (column: number, top: number, bottom: number) => void;

/** Tells of each column that a segment passes the highest and lowest y it has there. */
function eachColumn([a, b]: Segment, { left, right }: Box, seen: Seen): void {
  const [from, to] = a.x <= b.x ? [a, b] : [b, a];
  if (to.x < left || from.x > right) return;
  const yAt = (x: number): number => from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y);
  const last = Math.floor((Math.min(to.x, right) - left) / COLUMN);
  for (let column = Math.max(0, Math.floor((from.x - left) / COLUMN)); column <= last; column++) {
    const start = left + column * COLUMN;
    const one = to.x === from.x ? from.y : yAt(Math.max(from.x, start));
    const other = to.x === from.x ? to.y : yAt(Math.min(to.x, start + COLUMN));
    seen(column, Math.min(one, other), Math.max(one, other));
  }
}

/** Boxes of open sky and bare earth, side by side over a frame. */
export function regionsOf({ upper, lower }: Outlines, frame: Box): { sky: Box[]; earth: Box[] } {
  const count = Math.ceil((frame.right - frame.left) / COLUMN);
  const tops = new Array<number>(count).fill(frame.bottom);
  const bottoms = new Array<number>(count).fill(-Infinity);
  for (const segment of upper) eachColumn(segment, frame, (i, top) => (tops[i] = Math.min(tops[i], top - CLEAR)));
  for (const segment of lower) {
    eachColumn(segment, frame, (i, _, bottom) => (bottoms[i] = Math.max(bottoms[i], bottom + CLEAR)));
  }
  const column = (i: number, top: number, bottom: number): Box[] => {
    const left = frame.left + i * COLUMN;
    return top < bottom ? [{ left, top, right: Math.min(frame.right, left + COLUMN), bottom }] : [];
  };
  return {
    sky: tops.flatMap((top, i) => column(i, frame.top, top)),
    // No line of the ground over it: nothing is known to be earth there.
    earth: bottoms.flatMap((bottom, i) => (bottom === -Infinity ? [] : column(i, bottom, frame.bottom))),
  };
}

/** Room over a stream's bed for its water and its stones where its file gives no edge, m. */
const OVER_BED = 0.1;

/** The upper edge of a stream's bank, from its head to its foot. */
export function bankTop(stream: StreamScene): Spot[] {
  const over = stream.reach.edge?.height ?? OVER_BED;
  return [stream.left, stream.right].map((x): Spot => [x, bedAt(stream, x) + over]);
}

/** Lines of a scene that bound sky and earth: the ground, vessels, stones and pipes above it. */
export function outlinesOf(scene: Scene, scale: Scale): Outlines {
  const at = ([x, z]: readonly [number, number]): Point => ({ x: scale.x(x), y: scale.y(z) });
  const ground = segmentsOf(scene.earth.map(at));
  const { filter, reaches, vault, pipes } = scene;
  const level = (from: number, to: number, z: number): Segment => [at([from, z]), at([to, z])];
  const bankLine = (stream: StreamScene): Segment => {
    const [head, foot] = bankTop(stream);
    return [at(head), at(foot)];
  };
  const tops: Segment[] = [
    level(vault.cut.left - vault.wall, vault.cut.left + vault.cut.width + vault.wall, vault.top),
  ];
  if (filter) tops.push(level(filter.cut.left - filter.wall, filter.brink.x, filter.rim));
  for (const reach of reaches) {
    if (reach.kind === 'stream') tops.push(bankLine(reach));
    else {
      const stones = reach.stones.map((s) => level(s.left, s.right, s.crest));
      tops.push(level(reach.cut.left, reach.brink.x, reach.rim), ...stones);
    }
  }
  tops.push(level(scene.pond.cut.left, scene.vault.cut.left, scene.pond.rim));
  const feeds = [pipes.topFeed, pipes.bottomFeed].flatMap((route) => (route ? segmentsOf(route.spots.map(at)) : []));
  return { upper: [...ground, ...tops, ...feeds], lower: ground };
}

/**
 * A box of open sky for a detail, as far to the right as it goes up to an end: so wide, and as high as the sky is
 * there less what is left for labels under it, if that is enough.
 *
 * @returns undefined where the sky is nowhere so high
 */
export function roomInSky(
  sky: readonly Box[],
  width: number,
  { least, most, below, end }: { least: number; most: number; below: number; end: number },
): Box | undefined {
  const columns = sky.filter((each) => each.right <= end).sort((a, b) => b.right - a.right);
  for (const { right } of columns) {
    const over = columns.filter((each) => each.right <= right && each.right > right - width + 1);
    const left = Math.min(...over.map((each) => each.left));
    if (right - left < width - COLUMN) return undefined;
    const top = Math.max(...over.map((each) => each.top));
    const free = Math.min(...over.map((each) => each.bottom)) - top;
    const height = Math.min(most, Math.max(least, free - below));
    if (height <= free) return { left: right - width, top, right, bottom: top + height };
  }
  return undefined;
}
