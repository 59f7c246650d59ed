/**
 * A hundred marks for a hundred parts of the bottom feed: as many as go each way, every one moving as fast as the water
 * round it, on the drawing's own scale.
 */
import type { Bed } from '../section/bed.ts';
import { closed, type Pixel } from '../section/marks.ts';
import type { Scale } from '../section/scale.ts';
import type { FilterScene } from '../section/scene.ts';
import { dartsInGap } from '../section/vessel.ts';
import { type Passage, watchedAt } from './passage.ts';

export const ALL = 100;

export type Way = 'through' | 'round';

/** A stretch straight up or down at one speed. */
interface Piece {
  readonly from: number;
  readonly to: number;
  /** In truth, s. */
  readonly lasts: number;
}

/** How a mark that goes one way runs, over and over. */
export interface Course {
  readonly way: Way;
  readonly pieces: readonly Piece[];
  /** From rack to free water, or back, in truth, s. */
  readonly within: number;
  /** On to the lip or into the space below, where marks only keep the way; as long as it takes on the screen, in truth, s. */
  readonly beyond: number;
  /** Where the way of a mark that left the media at a place ends. */
  readonly end: Pixel;
  readonly marks: readonly Carried[];
}

/** One mark: its place across, px, and how far ahead of the first it runs, in rounds. */
export interface Carried {
  readonly x: number;
  readonly ahead: number;
}

/** All courses of a moment, and how many times as fast as in truth they are run. */
export interface Courses {
  readonly factor: number;
  /** px per meter. */
  readonly scale: number;
  readonly courses: readonly Course[];
}

/** Part of its time within the media that a mark takes beyond them. */
const BEYOND = 0.18;
/** Room between a mark and the net of a bag, px. */
const ROOM = 7;

export function coursesOf(
  filter: FilterScene,
  passage: Passage,
  level: number,
  bed: Bed,
  scale: Scale,
  factor = watchedAt(passage),
): Courses {
  const inGap = dartsInGap(passage.through, passage.round, ALL);
  const [left, right] = [scale.x(filter.cut.left), scale.x(filter.cut.left + filter.cut.width)];
  const { gap, lifted } = bed;
  const wide = right - left - 2 * gap - 2 * ROOM;
  const courses: Course[] = [];
  const end = endOf(filter, passage, level, scale);
  if (passage.throughTime !== undefined && inGap < ALL) {
    const pieces = passage.layers
      .filter(({ from, to, speed }) => to > from && speed > 0)
      .map(({ from, to, speed }) => ({
        from: scale.y(from + lifted),
        to: scale.y(to + lifted),
        lasts: (to - from) / speed,
      }));
    const count = ALL - inGap;
    const marks = Array.from({ length: count }, (_, i) => ({
      x: left + gap + ROOM + wide * ((0.31 + 0.618034 * i) % 1),
      ahead: (i + 0.5) / count,
    }));
    courses.push(courseOf('through', passage, pieces, end, marks));
  }
  if (passage.roundTime !== undefined && inGap > 0) {
    const [from, to] = [passage.layers[0].from, Math.max(...passage.layers.map((layer) => layer.to))];
    const pieces = [{ from: scale.y(from + lifted), to: scale.y(to + lifted), lasts: passage.roundTime }];
    const across = acrossGap(gap);
    const marks = Array.from({ length: inGap }, (_, i) => ({
      x: i % 2 === 0 ? left + across(i >> 1) : right - across(i >> 1),
      ahead: (i + 0.5) / inGap,
    }));
    courses.push(courseOf('round', passage, pieces, end, marks));
  }
  return { factor, scale: scale.a, courses };
}

/** Room that a lozenge takes across, px. */
const LOZENGE = 8;

/** Where across the gap the marks of one side run: in as many files as it has room for. */
function acrossGap(gap: number): (i: number) => number {
  const files = Math.max(1, Math.floor(gap / LOZENGE));
  return (i) => (gap * ((i % files) + 0.5)) / files;
}

function courseOf(way: Way, { up }: Passage, pieces: readonly Piece[], end: Pixel, marks: readonly Carried[]): Course {
  const within = pieces.reduce((sum, { lasts }) => sum + lasts, 0);
  const run = up ? pieces : [...pieces].reverse().map(({ from, to, lasts }) => ({ from: to, to: from, lasts }));
  return { way, pieces: run, within, beyond: BEYOND * within, end, marks };
}

/** Over the lip; to the surface where it stands under it; at the bottom of the space below where the water runs back. */
function endOf({ cut, brink }: FilterScene, { up }: Passage, level: number, scale: Scale): Pixel {
  const right = scale.x(cut.left + cut.width);
  if (!up) return [scale.x(cut.left + 0.2 * cut.width), scale.y(cut.widths[0][0]) - 6];
  return level > brink.z
    ? [right, scale.y(0.5 * (level + brink.z))]
    : [0.5 * (scale.x(cut.left) + right), scale.y(level)];
}

/** Where a mark is in its round. */
export interface Place {
  readonly x: number;
  readonly y: number;
  /** Among or beside the media, where its speed is the water's. */
  readonly within: boolean;
}

/** @param round of the first mark, in rounds since it started */
export function placeOf(course: Course, { x, ahead }: Carried, round: number): Place {
  const part = (((round + ahead) % 1) + 1) % 1;
  let left = part * (course.within + course.beyond);
  for (const { from, to, lasts } of course.pieces) {
    if (left < lasts) return { x, y: from + ((to - from) * left) / lasts, within: true };
    left -= lasts;
  }
  const { to } = course.pieces[course.pieces.length - 1];
  return { ...beyond([x, to], course.end, Math.min(1, left / course.beyond)), within: false };
}

/** From the media straight on, and then over to where its way ends. */
function beyond([x, y]: Pixel, [ex, ey]: Pixel, s: number): { x: number; y: number } {
  const r = 1 - s;
  const mid: Pixel = [x, y + 0.8 * (ey - y)];
  return {
    x: r * r * x + 2 * r * s * mid[0] + s * s * ex,
    y: r * r * y + 2 * r * s * mid[1] + s * s * ey,
  };
}

/** So many marks have room in the gap at their full size. */
const ROOMY = 30;

/**
 * Outline of a mark at the origin, pointing the way it goes: a slim dart through the media, a lozenge round them, which is
 * the smaller the more of them share the gap.
 */
export function outlineOf(way: Way, up: boolean, count: number): string {
  const k = up ? -1 : 1;
  const r = Math.min(1, Math.max(0.45, ROOMY / count));
  return way === 'through'
    ? closed([
        [0, 7 * k],
        [-2.3, -3.4 * k],
        [2.3, -3.4 * k],
      ])
    : closed([
        [0, 6 * r * k],
        [-3.6 * r, 0],
        [0, -6 * r * k],
        [3.6 * r, 0],
      ]);
}
