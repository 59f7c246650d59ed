import { type Display, formatLevel } from '../../../sim/quantity/format.ts';
import { LINE_HEIGHT } from './block.ts';
import type { LevelMark } from './levelMarks.ts';
import type { Measure } from './request.ts';
import type { Box, Point } from './shapes.ts';

/** The words of one line of the detail, or of several that lie on each other, to the right of its frame. */
export interface DetailWord {
  readonly ids: readonly LevelMark['id'][];
  readonly text: string;
  /** Left end of the baseline. */
  readonly at: Point;
  readonly box: Box;
  /** From the mark's line at the frame to the words. */
  readonly leader: readonly Point[];
}

/** Between leader and words, px. */
const GAP = 3;
/** Width of the strip in which leaders slope from line to words, and of their level end, px. */
const SLOPE = 20;
/** Least share of a room's width for the picture. */
const LEAST_PICTURE = 0.44;
const LEVEL = 5;

interface Group {
  readonly ids: LevelMark['id'][];
  readonly names: string[];
  readonly figure: string;
  clock: string | undefined;
  readonly y: number;
}

/** Marks of one figure share their words. */
function grouped(marks: readonly LevelMark[], yOf: (z: number) => number, display: Display): Group[] {
  const groups: Group[] = [];
  for (const { id, name, elevation, clock } of [...marks].sort((a, b) => b.elevation - a.elevation)) {
    const figure = formatLevel(elevation, display);
    const same = groups.find((group) => group.figure === figure);
    if (same) {
      same.ids.push(id);
      same.names.push(name);
      same.clock ??= clock;
    } else groups.push({ ids: [id], names: [name], figure, clock, y: yOf(elevation) });
  }
  return groups;
}

/** Tops of the words: each beside its line, pushed down to clear the one above and back up from the foot. */
function topsOf(groups: readonly Group[], room: Box): number[] {
  const tops: number[] = [];
  let free = room.top + GAP;
  for (const { y } of groups) {
    const top = Math.max(free, y - LINE_HEIGHT / 2);
    tops.push(top);
    free = top + LINE_HEIGHT;
  }
  let end = room.bottom - GAP;
  for (let i = tops.length - 1; i >= 0; i--) {
    tops[i] = Math.min(tops[i], end - LINE_HEIGHT);
    end = tops[i];
  }
  return tops;
}

/**
 * Words and figures of the marks in a column at the right of a room, and where the picture left of it ends.
 *
 * @param clocks whether the words say when a level was reached
 * @returns undefined where the column leaves too little of the room's width to the picture or more than its height
 */
export function wordsBeside(
  marks: readonly LevelMark[],
  yOf: (elevation: number) => number,
  room: Box,
  display: Display,
  measure: Measure,
  clocks = false,
): { words: DetailWord[]; frameEnd: number } | undefined {
  const groups = grouped(marks, yOf, display);
  const timed = (clock: string | undefined): string => (clocks && clock ? `, ${clock}` : '');
  const texts = groups.map(({ names, figure, clock }) => `${names.join(', ')} ${figure}${timed(clock)}`);
  const widths = texts.map((text) => measure(text, 'figure'));
  const start = room.right - Math.max(...widths);
  const frameEnd = start - GAP - SLOPE;
  const tops = topsOf(groups, room);
  if (frameEnd - room.left < LEAST_PICTURE * (room.right - room.left) || tops[0] < room.top) return undefined;
  const words = groups.map(({ ids, y }, i): DetailWord => {
    const middle = tops[i] + LINE_HEIGHT / 2;
    const box = { left: start, top: tops[i], right: start + widths[i], bottom: tops[i] + LINE_HEIGHT };
    const leader = [
      { x: frameEnd, y },
      { x: start - GAP - LEVEL, y: middle },
      { x: start - GAP, y: middle },
    ];
    return { ids, text: texts[i], at: { x: start, y: tops[i] + 12 }, box, leader };
  });
  return { words, frameEnd };
}
