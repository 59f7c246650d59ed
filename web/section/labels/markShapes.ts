import { box, type Mark, path, segment, through, words } from '../marks.ts';
import type { Dimension } from './dimension.ts';
import type { Box, Point } from './shapes.ts';

export const lineOf = (points: readonly Point[]): string => through(points.map(({ x, y }) => [x, y] as const));

export const areaOf = ({ left, top, right, bottom }: Box): string => box(left, top, right - left, bottom - top);

/** Between strokes of a hatching, px. */
const EVERY = 6;

/** Oblique strokes over a box, cut at its borders. */
export function hatchOf({ left, top, right, bottom }: Box): string {
  const tall = bottom - top;
  let d = '';
  for (let foot = left - tall; foot < right; foot += EVERY) {
    const from = Math.max(foot, left);
    const to = Math.min(foot + tall, right);
    if (to > from) d += segment(from, bottom - (from - foot), to, bottom - (to - foot));
  }
  return d;
}

export const dimensionMarks = ({ line, ticks, extensions, text, at }: Dimension): Mark[] => [
  path([line, ...extensions].map(lineOf).join(''), 'leader'),
  path(ticks.map(lineOf).join(''), 'tick'),
  words(at.x, at.y, text, 'label figure halo'),
];

/** Where the letter stands beside the frame on the drawing. */
export const letterBox = ({ left, top }: Box): Box => ({
  left: left - 14,
  top: top - 2,
  right: left - 4,
  bottom: top + 11,
});
