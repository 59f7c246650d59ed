import { type Random, randomStream } from '../../sim/random.ts';
import { type Mark, type Pixel, path, segment, through } from './marks.ts';
import type { Scale } from './scale.ts';
import { bedAt, type Scene, type StreamScene } from './scene.ts';
import { pebble, stoneMarks } from './stone.ts';

/** Small stones on the bed, a few that stand out of the water, and the stone at the foot. */
export function bedMarks(stream: StreamScene, { units }: Scene, scale: Scale): Mark[] {
  const { left, right, reach, place } = stream;
  const random = randomStream(reach.name, 'bed');
  const from = scale.x(left) + 0.4 * units.u * scale.a;
  const to = scale.x(right);
  const at = (x: number): number => scale.y(bedAt(stream, left + (x - scale.x(left)) / scale.a));
  let d = '';
  for (let x = from; x < to - 0.44 * units.u * scale.a; x += 4 + 5 * random()) {
    const r = 1.2 + 1.1 * random();
    d += pebble(x, at(x) - 0.75 * r, r, random, 0.75);
  }
  const rocks: Mark[] = [];
  for (let x = from + 16; x < to - 52; x += 46 + 40 * random()) {
    const w = 9 + 9 * random();
    const h = 5 + 4 * random();
    const y = Math.max(at(x), at(x + w)) + 1;
    rocks.push(...stoneMarks(`${place} ${Math.round(x)}`, { left: x, right: x + w, top: y - h, bottom: y }));
  }
  const toe = {
    left: to - 0.42 * units.u * scale.a,
    right: to,
    top: scale.y(reach.foot),
    bottom: Math.max(scale.y(stream.under), scale.y(reach.foot) + 8),
    fall: at(to - 0.42 * units.u * scale.a) - scale.y(reach.foot),
  };
  const marks: Mark[] = [path(d, 'pebbles'), ...rocks, ...stoneMarks(`${place} foot`, toe)];
  return marks;
}

/** The edge of the stream's liner beyond the cut, with the bank under it; nothing where the file gives no edge. */
export function bankBeyond(stream: StreamScene, { units }: Scene, scale: Scale): Mark[] {
  const { left, right, reach } = stream;
  if (!reach.edge) return [];
  const { height } = reach.edge;
  const random = randomStream(reach.name, 'bank');
  const start = left + 0.34 * units.u;
  const end = right - 0.06 * units.u;
  const line = [
    scale.at([start, bedAt(stream, start) + height]),
    scale.at([end, bedAt(stream, end) + height]),
    scale.at([right, reach.foot]),
  ];
  return [path(through(line) + hachures(line[0], line[1], random), 'bank-beyond')];
}

/** Short strokes hanging from a line, as of a bank seen beyond. */
function hachures([x0, y0]: Pixel, [x1, y1]: Pixel, random: Random): string {
  let d = '';
  for (let x = x0 + 3; x < x1 - 3; x += 5 + 5 * random()) {
    const y = y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
    d += segment(x, y, x - 1, y + 2.5 + 2.5 * random());
  }
  return d;
}
