import { type Display, formatLevel } from '../../../sim/quantity/format.ts';
import { LINE_HEIGHT } from './block.ts';
import type { LevelMark } from './levelMarks.ts';
import type { Measure } from './request.ts';
import type { Box, Point } from './shapes.ts';

/** The words of one line of the detail, or of several that lie on each other, right-aligned in its frame. */
export interface DetailWord {
  readonly ids: readonly LevelMark['id'][];
  readonly text: string;
  /** Right end of the baseline. */
  readonly at: Point;
  readonly box: Box;
  /** From the end of the mark's line to the words. */
  readonly leader: readonly Point[];
}

/** Between frame and words, words and leader, px. */
const INSET = 8;
const GAP = 3;
/** Width of the strip in which leaders slope from line to words, px. */
const SLOPE = 20;

interface Group {
  readonly ids: LevelMark['id'][];
  readonly names: string[];
  readonly figure: string;
  readonly y: number;
}

/** Marks of one figure share their words. */
function grouped(marks: readonly LevelMark[], yOf: (z: number) => number, display: Display): Group[] {
  const groups: Group[] = [];
  for (const { id, name, elevation } of [...marks].sort((a, b) => b.elevation - a.elevation)) {
    const figure = formatLevel(elevation, display);
    const same = groups.find((group) => group.figure === figure);
    if (same) {
      same.ids.push(id);
      same.names.push(name);
    } else groups.push({ ids: [id], names: [name], figure, y: yOf(elevation) });
  }
  return groups;
}

/** Tops of the words: each beside its line, pushed down to clear the one above and back up from the frame's foot. */
function topsOf(groups: readonly Group[], frame: Box): number[] {
  const tops: number[] = [];
  let free = frame.top + GAP;
  for (const { y } of groups) {
    const top = Math.max(free, y - LINE_HEIGHT / 2);
    tops.push(top);
    free = top + LINE_HEIGHT;
  }
  let end = frame.bottom - GAP;
  for (let i = tops.length - 1; i >= 0; i--) {
    tops[i] = Math.min(tops[i], end - LINE_HEIGHT);
    end = tops[i];
  }
  return tops;
}

/**
 * Words and figures of the marks in a column at the frame's right, and where the marks' lines end to the left of it.
 *
 * @returns undefined where the column takes more than half the frame's width or more than its height
 */
export function wordsBeside(
  marks: readonly LevelMark[],
  yOf: (elevation: number) => number,
  frame: Box,
  display: Display,
  measure: Measure,
): { words: DetailWord[]; linesEnd: number } | undefined {
  const groups = grouped(marks, yOf, display);
  const texts = groups.map(({ names, figure }) => `${names.join(', ')} ${figure}`);
  const widths = texts.map((text) => measure(text, 'figure'));
  const right = frame.right - INSET;
  const linesEnd = right - Math.max(...widths) - GAP - SLOPE;
  const tops = topsOf(groups, frame);
  if (linesEnd < (frame.left + frame.right) / 2 - SLOPE || tops[0] < frame.top) return undefined;
  const words = groups.map(({ ids, y }, i): DetailWord => {
    const middle = tops[i] + LINE_HEIGHT / 2;
    const start = right - widths[i] - GAP;
    const bend = right - Math.max(...widths) - GAP;
    return {
      ids,
      text: texts[i],
      at: { x: right, y: tops[i] + 12 },
      box: { left: right - widths[i], top: tops[i], right, bottom: tops[i] + LINE_HEIGHT },
      leader: [{ x: linesEnd, y }, { x: bend, y: middle }, ...(start > bend ? [{ x: start, y: middle }] : [])],
    };
  });
  return { words, linesEnd };
}
