import { type Random, randomStream } from '../../sim/random.ts';
import { closed, curve, type Mark, type Pixel, path, segment } from './marks.ts';

/** Box of a stone on the sheet, px. */
export interface StoneBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** How much lower the left end of the top lies than the right one, px; negative where it lies higher. */
  readonly fall?: number;
}

/** An edge is broken about so often, px. */
const BREAK = 13;
const TENSION = 0.16;

/**
 * A hand-cut stone: four corners cut back, edges broken and a little rough, its top level; shaded from the lower right.
 * The name is the seed: a stone looks the same each time.
 *
 * @param seen whether it stands beyond the cut, and is drawn with a finer line
 */
export function stoneMarks(name: string, box: StoneBox, seen = false): Mark[] {
  const random = randomStream(name, 'stone');
  const outline = outlineOf(box, random);
  const marks: Mark[] = [
    path(curve(outline, TENSION, true, Math.min(box.top, box.top + (box.fall ?? 0))), seen ? 'stone seen' : 'stone'),
  ];
  const shade = shading(box, random, seen);
  if (shade !== '') marks.push(path(shade, 'hatch'));
  return marks;
}

function outlineOf({ left, right, top, bottom, fall = 0 }: StoneBox, random: Random): Pixel[] {
  const w = right - left;
  const h = bottom - top;
  const cut = (): number => Math.min(0.22 * Math.min(w, h), 2 + 2 * random());
  const rough = Math.min(1.3, 0.028 * Math.max(w, h) + 0.25);
  const lean = (): number => (random() - 0.5) * Math.min(3, 0.1 * w);
  const [l0, l1, r0, r1] = [lean(), lean(), lean(), lean()];
  const corners: Pixel[] = [
    [left + Math.max(0, l0), top + fall],
    [right, top],
    [right - Math.max(0, r0) - 0.4, bottom + Math.min(0, r1)],
    [left + Math.max(0, l1), bottom],
  ];
  const points: Pixel[] = [];
  corners.forEach((corner, i) => {
    const next = corners[(i + 1) % 4];
    const length = Math.hypot(next[0] - corner[0], next[1] - corner[1]);
    if (length < 1e-6) return;
    const [from, to] = [cut() / length, 1 - cut() / length];
    const pieces = Math.max(1, Math.round(length / BREAK));
    for (let j = 0; j <= pieces; j++) {
      const share = from + ((to - from) * j) / pieces;
      // The crest keeps to its surveyed line.
      const off = i === 0 ? 0 : (random() - 0.5) * 2 * rough;
      points.push([
        corner[0] + share * (next[0] - corner[0]) + (off * (next[1] - corner[1])) / length,
        corner[1] + share * (next[1] - corner[1]) - (off * (next[0] - corner[0])) / length,
      ]);
    }
  });
  return points;
}

/** Strokes inward from the right and lower edges, and a line or two of bedding. */
function shading({ left, right, top, bottom }: StoneBox, random: Random, seen: boolean): string {
  const w = right - left;
  const h = bottom - top;
  if (w < 9 || h < 7) return '';
  let d = '';
  const long = (): number => Math.min(0.45 * w, 3 + 5 * random());
  const every = seen ? 3 : 2;
  for (let y = top + 4; y < bottom - 2; y += every) {
    const length = long() * (0.55 + (0.45 * (y - top)) / h);
    d += segment(right - 1.4 - length, y + 0.35 * length, right - 1.4, y);
  }
  for (let x = left + 0.3 * w; x < right - 5; x += every * 1.2) {
    const length = Math.min(0.3 * h, 2 + 3 * random());
    d += segment(x, bottom - 1.2, x + 0.35 * length, bottom - 1.2 - length);
  }
  if (w > 22 && h > 12 && !seen) {
    const y = top + (0.35 + 0.2 * random()) * h;
    const from = left + (0.12 + 0.15 * random()) * w;
    d += segment(from, y, from + (0.25 + 0.2 * random()) * w, y - 0.8 + 1.6 * random());
  }
  return d;
}

/** A pebble: a polygon of five to seven corners. */
export function pebble(x: number, y: number, r: number, random: Random, flat = 1): string {
  const corners = 5 + Math.floor(3 * random());
  const turn = random() * 2 * Math.PI;
  const points = Array.from({ length: corners }, (_, i): Pixel => {
    const angle = turn + (2 * Math.PI * (i + 0.35 * (random() - 0.5))) / corners;
    const out = r * (0.86 + 0.28 * random());
    return [x + out * Math.cos(angle), y + flat * out * Math.sin(angle)];
  });
  return closed(points);
}
