import { box, type Mark, path, segment } from './marks.ts';
import type { Scale } from './scale.ts';

/** Water standing in a basin: from a level down to a floor, between two ends, inside a clip. */
export interface Standing {
  readonly level: number;
  readonly floor: number;
  readonly left: number;
  readonly right: number;
  /** Ends of the surface itself, m. */
  readonly surface: readonly [from: number, to: number];
  readonly clip: string;
}

/** Bands of equal depth, m, and how many tints there are. */
const BAND = 0.15;
const TINTS = 6;
/** Lines under the surface: first gap px, its growth, first opacity, its fall, most of them. */
const LINING = { gap: 2.6, growth: 1.24, opacity: 0.62, fall: 0.86 } as const;

/** Water at rest as flat bands of depth from its surface down, lined under the surface, with its edge. */
export function standingMarks(water: Standing, scale: Scale): Mark[] {
  const { level, floor, left, right, clip } = water;
  if (!(level > floor)) return [];
  const x = scale.x(left);
  const width = scale.x(right) - x;
  const bottom = scale.y(floor);
  const marks: Mark[] = [];
  for (let band = 0; band < TINTS && level - band * BAND > floor; band++) {
    const top = scale.y(level - band * BAND);
    const end = band === TINTS - 1 ? bottom : Math.min(bottom, scale.y(level - (band + 1) * BAND));
    if (end > top) marks.push(path(box(x, top, width, end - top + (end < bottom ? 0.4 : 0)), `w${band + 1}`, { clip }));
  }
  marks.push(...lining(scale.y(level), bottom, x, width, clip, scale.strip ? 5 : 10));
  const [from, to] = water.surface;
  marks.push(path(segment(scale.x(from), scale.y(level), scale.x(to), scale.y(level)), 'surface', { clip }));
  return marks;
}

function lining(surface: number, bottom: number, x: number, width: number, clip: string, most: number): Mark[] {
  const marks: Mark[] = [];
  let { gap, opacity } = LINING as { gap: number; opacity: number };
  let y = surface + gap + 0.6;
  while (marks.length < most && y < bottom - 2) {
    marks.push(path(segment(x, y, x + width, y), 'lining', { clip, opacity: Math.round(opacity * 100) / 100 }));
    gap *= LINING.growth;
    opacity *= LINING.fall;
    y += gap;
  }
  return marks;
}
