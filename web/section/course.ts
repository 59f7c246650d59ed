import type { Pool, Scenario, Stream } from '../../sim/scenario/scenario.ts';
import { greatestWidth, makeCut, rightAt } from './cut.ts';
import {
  type Course,
  crestWidth,
  type Fall,
  type FilterScene,
  lowest,
  type PoolScene,
  type ReachScene,
  type StoneScene,
  type StreamScene,
  type Units,
} from './scene.ts';

/** How far a basin reaches back under the brink that spills into it: the wall of stones stands there. */
const UNDER_BRINK = 0.36;

/** Lays filter, pools and streams one behind the other, each beginning under the brink of the one before. */
export function layCourse(s: Scenario, units: Units): Course {
  const { u } = units;
  const riser = 0.75 * u;
  const falls: Fall[] = [];
  const reaches: ReachScene[] = [];
  let x = s.filter ? 1.5 * u : 1.6 * u;
  let filter: FilterScene | undefined;
  if (s.filter) {
    filter = layFilter(s.filter, x, units);
    x = filter.brink.x - 0.3 * u;
    falls.push({ name: 'lip', brink: filter.brink, under: filter.brink.z - 0.06 * units.v, into: 0 });
  }
  s.watercourse.forEach((reach, i) => {
    const place = `watercourse[${i}]`;
    const laid = reach.kind === 'pool' ? layPool(reach, place, x, units) : layStream(reach, place, x, units);
    reaches.push(laid);
    falls.push({ name: reach.name, brink: laid.brink, under: laid.under, into: i + 1 });
    x = laid.brink.x - UNDER_BRINK * u;
  });
  return { filter, reaches, falls, riser, end: x };
}

function layFilter(filter: NonNullable<Scenario['filter']>, x: number, { u }: Units): FilterScene {
  const cut = makeCut(filter.profile, x, 0.5);
  const wall = 0.055 * u;
  const z = lowest(filter.lip.crest);
  const brink = { x: x + cut.width + wall + 0.32 * u, z, width: crestWidth(filter.lip.crest), flow: 'lip' };
  return { filter, cut, wall, rim: lowest(filter.rim.crest), brink };
}

function layPool(reach: Pool, place: string, left: number, units: Units): PoolScene {
  const cut = makeCut(reach.profile, left, 0.3);
  const main = Math.max(
    0,
    reach.stones.findIndex((stone) => stone.main),
  );
  const along = reach.stones[main].along ?? Math.min(0.42 * units.u, 0.45 * greatestWidth(reach.profile));
  const crest = lowest(reach.stones[main].crest);
  const right = rightAt(cut, crest) + 0.65 * along;
  const lower = Math.min(crest - reach.profile[0][0], 0.24 * units.v);
  const others = reach.stones.length - 1;
  // Seen beyond the main one, further and further left, within the pool's right half.
  const step = others > 0 ? Math.min(0.75 * along, (0.55 * cut.width) / others) : 0;
  let beyond = 0;
  const stones = reach.stones.map((stone, i): StoneScene => {
    const z = lowest(stone.crest);
    const shift = i === main ? 0 : 0.45 * along + step * beyond++;
    const length = i === main ? along : Math.min(along, 1.3 * Math.max(step, 0.3 * along));
    const brink = { x: right - shift, z, width: crestWidth(stone.crest), flow: stone.name };
    return {
      place: `${place}.stones[${i}]`,
      stone,
      cut: i === main,
      left: right - shift - length,
      right: right - shift,
      crest: z,
      under: z - (i === main ? lower : 0.75 * lower),
      brink,
    };
  });
  const { brink, under } = stones[main];
  return { kind: 'pool', place, reach, cut, rim: lowest(reach.rim.crest), stones, brink, under };
}

function layStream(reach: Stream, place: string, left: number, { u, v }: Units): StreamScene {
  const right = left + Math.max(reach.length, 0.5 * u);
  const brink = { x: right, z: reach.foot, width: reach.width, flow: reach.name };
  return { kind: 'stream', place, reach, left, right, brink, under: reach.foot - 0.16 * v };
}
