import { type Display, formatLevel } from '../../../sim/quantity/format.ts';
import type { DisplacedLayer } from '../../../sim/scenario/scenario.ts';
import { type Cut, leftAt, rightAt } from '../cut.ts';

import type { Scale } from '../scale.ts';
import type { PipeRoute, PoolScene, Scene } from '../scene.ts';
import type { LevelMark } from './levelMarks.ts';
import type { LabelRequest, Seat } from './request.ts';
import { overflowSpots } from './sceneObstacles.ts';
import type { Point } from './shapes.ts';
import type { LabelText } from './text.ts';
import { waterRoom } from './waterRoom.ts';

/** A part's anchor, its seats in order, and how soon it is seated. */
type Spot = Pick<LabelRequest, 'anchor' | 'seats' | 'priority' | 'water'>;

const OVER: readonly Seat[] = ['top rail', 'second rail', 'sky right'];
const ASIDE: readonly Seat[] = ['sky right', 'second rail', 'top rail', 'blank earth'];
const UNDER: readonly Seat[] = ['blank earth', 'bottom rail'];

type Levels = Readonly<Record<string, number>>;

/** Top of what is packed on a basin's floor, m; of a basin wholly filled no water is open. */
function groundOf(layers: readonly DisplacedLayer[], floor: number): number {
  return layers.filter(({ fraction }) => fraction > 0).reduce((top, { to }) => Math.max(top, to), floor);
}

class Spots {
  readonly found = new Map<string, Spot>();
  private readonly scale: Scale;

  constructor(scale: Scale) {
    this.scale = scale;
  }

  at(x: number, z: number): Point {
    return { x: this.scale.x(x), y: this.scale.y(z) };
  }

  add(id: string, priority: number, anchor: Point, seats: readonly Seat[], water?: LabelRequest['water']): void {
    this.found.set(id, { priority, anchor, seats, ...(water ? { water } : {}) });
  }

  /** A basin by its surface, at a share of its width. */
  addBasin(
    id: string,
    priority: number,
    cut: Cut,
    level: number,
    share: number,
    seats: readonly Seat[],
    layers: readonly DisplacedLayer[],
  ): void {
    const z = Math.max(level, cut.widths[0][0]);
    const [left, right] = [leftAt(cut, z), rightAt(cut, z)];
    const ground = groundOf(layers, cut.widths[0][0]);
    this.add(id, priority, this.at(left + share * (right - left), z), seats, waterRoom(cut, z, ground, this.scale));
  }
}

function addPool(spots: Spots, pool: PoolScene, level: number): void {
  const seats: Seat[] = ['second rail', 'top rail', 'sky right', 'inside water', 'blank earth'];
  spots.addBasin(pool.place, 3, pool.cut, level, 0.55, seats, pool.reach.displaced);
  for (const { place, cut, left, right, crest } of pool.stones) {
    spots.add(place, cut ? 4 : 8, spots.at((left + right) / 2, crest), ASIDE);
  }
}

/** The middle of the longest stretch of a pipe. */
function middleOf(route: PipeRoute): readonly [number, number] {
  let best: readonly [number, number] = route.spots[0];
  let longest = -1;
  for (let i = 1; i < route.spots.length; i++) {
    const [[x0, z0], [x1, z1]] = [route.spots[i - 1], route.spots[i]];
    const size = Math.hypot(x1 - x0, z1 - z0);
    if (size <= longest) continue;
    longest = size;
    best = [(x0 + x1) / 2, (z0 + z1) / 2];
  }
  return best;
}

function addPlumbing(spots: Spots, { pipes, riser }: Scene): void {
  const { main, bottomFeed, topFeed, tee, pump, checkValve, low } = pipes;
  const far = Math.max(...main.spots.map(([x]) => x));
  spots.add('plumbing.main', 5, spots.at(riser + 0.3 * (far - riser), low), UNDER);
  if (bottomFeed && topFeed) spots.add('plumbing.tee', 6, spots.at(...tee), UNDER);
  if (bottomFeed) spots.add('plumbing.bottomFeed', 6, spots.at(...(bottomFeed.valve ?? middleOf(bottomFeed))), UNDER);
  if (topFeed) spots.add('plumbing.topFeed', 6, spots.at(tee[0], Math.max(...topFeed.spots.map(([, z]) => z))), OVER);
  spots.add('pump', 6, spots.at(pump.x, (pump.suction + pump.top) / 2), ['bottom rail', 'blank earth']);
  spots.add('plumbing.main.checkValve', 7, spots.at(...checkValve), ['bottom rail', 'blank earth']);
}

/** Where labels of a scene are anchored at given levels, by the place of their part. */
export function spotsOf(scene: Scene, scale: Scale, levels: Levels): Map<string, Spot> {
  const spots = new Spots(scale);
  const { filter, reaches, pond, vault, scenario } = scene;
  if (filter) {
    spots.addBasin('filter', 2, filter.cut, levels['filter'], 0.6, OVER, []);
    const media = filter.filter.media;
    if (media) spots.add('filter.media', 8, spots.at(filter.cut.left + 0.8 * filter.cut.width, media.bottom), UNDER);
  }
  for (const reach of reaches) {
    const level = levels[reach.reach.name];
    if (reach.kind === 'pool') addPool(spots, reach, level);
    else {
      const x = reach.left + 0.45 * (reach.right - reach.left);
      const z = reach.reach.foot + reach.reach.slope * (reach.right - x) + Math.max(0, level - reach.reach.foot);
      spots.add(reach.place, 4, spots.at(x, z), ['second rail', 'sky right', 'top rail', 'blank earth']);
    }
  }
  spots.addBasin(
    'pond',
    1,
    pond.cut,
    levels['pond'],
    0.6,
    ['inside water', 'bottom rail', 'blank earth', 'second rail', 'top rail'],
    scenario.pond.displaced,
  );
  spots.addBasin(
    'vault',
    5,
    vault.cut,
    levels['vault'],
    0.7,
    ['second rail', 'top rail', 'sky right', 'bottom rail'],
    [],
  );
  spots.add('intake', 8, spots.at(rightAt(pond.cut, vault.lip), vault.lip), [
    'blank earth',
    'bottom rail',
    'second rail',
  ]);
  if (scenario.pond.overflow) {
    const [, , end] = overflowSpots(scene, scenario.pond.overflow.elevation);
    spots.add('pond.overflow', 6, spots.at(...end), UNDER);
  }
  addPlumbing(spots, scene);
  return spots.found;
}

/** Where marks are anchored along their lines: one beside the other, so that each leader passes the others' dots. */
const markShare = (i: number): number => 0.92 - 0.08 * i;

/** Words of the pond's marks, toward the right ends of their lines. */
export function markRequests(
  { pond }: Scene,
  scale: Scale,
  marks: readonly LevelMark[],
  display: Display,
): LabelRequest[] {
  return marks.map(({ id, name, elevation }, i) => {
    const [left, right] = [leftAt(pond.cut, elevation), rightAt(pond.cut, elevation)];
    const anchor = { x: scale.x(left + markShare(i) * (right - left)), y: scale.y(elevation) };
    const text = `${name} ${formatLevel(elevation, display)}`;
    return {
      id,
      priority: 6,
      anchor,
      lines: [{ text, style: 'name' }],
      seats: ['sky right', 'second rail'],
    };
  });
}

/**
 * What labels of a scene ask for: their words, anchors and seats. Parts without words, or words without a part drawn,
 * ask for nothing.
 *
 * @param levels of the basins where anchors on water stand, m
 * @param asked places of the parts that the question asked is about; they are seated first
 */
export function sceneRequests(
  scene: Scene,
  scale: Scale,
  texts: readonly LabelText[],
  levels: Levels,
  asked: readonly string[] = [],
): LabelRequest[] {
  const spots = spotsOf(scene, scale, levels);
  return texts.flatMap((text) => {
    const spot = spots.get(text.id);
    return spot ? [{ ...text, ...spot, priority: asked.includes(text.id) ? 0 : spot.priority }] : [];
  });
}
