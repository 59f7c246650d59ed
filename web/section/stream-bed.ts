import { randomStream } from '../../sim/random.ts';
import { closed, type Mark, type Pixel, path, segment } from './marks.ts';
import type { Scale } from './scale.ts';
import { bedAt, type Scene, type StreamScene } from './scene.ts';
import { pebble, stoneMarks } from './stone.ts';

/** Small stones on the bed, a few that stand out of the water, the stone at the foot, and the liner's edge beyond. */
export function bedMarks(stream: StreamScene, { units }: Scene, scale: Scale): Mark[] {
  const { left, right, reach, place } = stream;
  const random = randomStream(reach.name, 'bed');
  const from = scale.x(left) + 0.24 * units.u * scale.a;
  const to = scale.x(right);
  const at = (x: number): number => scale.y(bedAt(stream, left + (x - scale.x(left)) / scale.a));
  let d = '';
  for (let x = from; x < to - 0.34 * units.u * scale.a; x += 4 + 5 * random()) {
    const r = 1.2 + 1.1 * random();
    d += pebble(x, at(x) - 0.75 * r, r, random, 0.75);
  }
  const rocks: Mark[] = [];
  for (let x = from + 18; x < to - 42; x += 46 + 40 * random()) {
    const w = 9 + 9 * random();
    const h = 5 + 4 * random();
    const y = Math.max(at(x), at(x + w)) + 1;
    rocks.push(...stoneMarks(`${place} ${Math.round(x)}`, { left: x, right: x + w, top: y - h, bottom: y }));
  }
  const toe = {
    left: to - 0.32 * units.u * scale.a,
    right: to,
    top: scale.y(reach.foot),
    bottom: scale.y(stream.under),
  };
  const marks: Mark[] = [path(d, 'pebbles'), ...rocks, ...toeStone(place, toe, at)];
  const { edge } = reach;
  if (edge) {
    const line: [number, number, number, number] = [
      scale.x(left),
      scale.y(bedAt(stream, left) + edge.height),
      to,
      scale.y(reach.foot + edge.height),
    ];
    marks.push(path(segment(...line), 'edge-line'));
  }
  return marks;
}

/** The stone at a stream's foot, its top along the bed. */
function toeStone(
  place: string,
  box: { left: number; right: number; top: number; bottom: number },
  at: (x: number) => number,
): Mark[] {
  const rise = at(box.left) - box.top;
  if (Math.abs(rise) < 1.5) return stoneMarks(`${place} foot`, box);
  const bottom = Math.max(box.bottom, box.top + 8);
  const top: Pixel[] = [
    [box.left, box.top + rise],
    [box.right, box.top],
  ];
  return [path(closed([...top, [box.right - 1.5, bottom], [box.left + 2, bottom]]), 'stone')];
}
