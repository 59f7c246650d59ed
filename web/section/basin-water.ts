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

/** From one line to the next in a band of depth where lines stand for tints, px. */
const APART = [8.5, 6.6, 5.2, 4.2, 3.4, 2.8];

/**
 * Level lines the closer the deeper the water: what tells depths in black and white.
 *
 * @param surface of the water, px
 * @param perMeter px of a meter of depth
 */
export function depthLines(surface: number, bottom: number, x: number, width: number, perMeter: number): string {
  let d = '';
  let y = surface;
  const next = (): number => y + APART[Math.min(APART.length - 1, Math.floor((y - surface) / (BAND * perMeter)))];
  for (y = next(); y < bottom; y = next()) d += segment(x, y, x + width, y);
  return d;
}

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
  const surface = scale.y(level);
  if (scale.hatched) marks.push(path(depthLines(surface, bottom, x, width, scale.k * scale.a), 'depth', { clip }));
  else marks.push(...lining(surface, bottom, x, width, clip, scale.strip ? 5 : 10));
  const [from, to] = water.surface;
  marks.push(path(segment(scale.x(from), surface, scale.x(to), surface), 'surface', { clip }));
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
