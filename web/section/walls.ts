import { randomStream } from '../../sim/random.ts';
import type { Mark } from './marks.ts';
import type { Scale } from './scale.ts';
import type { WallScene } from './scene.ts';
import { stoneMarks } from './stone.ts';

/** Usual height of a course, px. */
const COURSE = 19;

/** A dry wall of stones, course on course with joints of a pixel, each stone a little out of line. */
export function wallMarks(wall: WallScene, scale: Scale): Mark[] {
  const random = randomStream(wall.name, 'wall');
  const top = scale.y(wall.top);
  const bottom = scale.y(wall.foot);
  const left = scale.x(wall.left);
  const right = scale.x(wall.right);
  const courses = Math.max(1, Math.round((bottom - top) / (scale.closeUp ? 2.4 * COURSE : COURSE)));
  const cuts = Array.from({ length: courses + 1 }, (_, i) => {
    const shift = i > 0 && i < courses ? (random() - 0.5) * 0.35 : 0;
    return top + ((bottom - top) * (i + shift)) / courses;
  });
  return cuts.slice(1).flatMap((y, i) => {
    const out = (random() - 0.5) * 0.22 * (right - left);
    const box = {
      left: left + 0.1 * (right - left) * random(),
      right: right + Math.min(0, out),
      top: cuts[i],
      bottom: y - 1,
    };
    return box.bottom - box.top > 2 ? stoneMarks(`${wall.name} ${i}`, box) : [];
  });
}
