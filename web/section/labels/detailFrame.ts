import type { Display } from '../../../sim/quantity/format.ts';
import { type DetailWord, wordsBeside } from './detailWords.ts';
import type { LevelMark } from './levelMarks.ts';
import type { Measure } from './request.ts';
import type { Box } from './shapes.ts';

/** Two marks nearer than this on the drawing cannot be told apart, px. */
const CROWDED = 4;
/** How many times larger the detail is drawn where it has room, and at the least. */
const TIMES = 5;
const LEAST = 2;
/** Room above the highest mark and under the lowest, px. */
const MARGIN = 26;
/** Least height between the two, px. */
const LEAST_HEIGHT = 44;
/** Height of the caption under the frame, px. */
export const CAPTION = 18;

export interface DetailRequest {
  readonly marks: readonly LevelMark[];
  /** Inside diameter of the overflow pipe, m; 0 without one. */
  readonly overflowWidth: number;
  /** Scale of heights on the drawing, px/m. */
  readonly pxPerMeter: number;
  /** Where the detail may stand with its words and caption, px. */
  readonly room: Box;
  readonly display: Display;
  readonly measure: Measure;
  /** Whether its words say when a level was reached. */
  readonly clocks?: boolean;
}

/** How a detail is laid on the sheet. */
export interface DetailFrame {
  /** Times larger than the drawing's heights. */
  readonly times: number;
  /** Of heights and lengths alike. */
  readonly pxPerMeter: number;
  /** Round the picture; words stand to its right. */
  readonly frame: Box;
  /** Elevations at the frame's top and bottom, m: what is framed on the drawing. */
  readonly top: number;
  readonly bottom: number;
  /** The marks in it, from the top down. */
  readonly marks: readonly LevelMark[];
  readonly words: readonly DetailWord[];
  readonly yOf: (elevation: number) => number;
}

const near = (a: LevelMark, b: LevelMark, pxPerMeter: number): boolean =>
  Math.abs(a.elevation - b.elevation) * pxPerMeter < CROWDED;

/** Whether two of the pond's marks lie too near each other to be read on the drawing. */
export const crowded = (marks: readonly LevelMark[], pxPerMeter: number): boolean =>
  marks.some((a, i) => marks.slice(i + 1).some((b) => near(a, b, pxPerMeter)));

/**
 * Marks of the close-up, from the top down: those that crowd on the drawing and the edge. Marks beyond them that stand
 * clear are taken in as long as all fit five times larger.
 */
function markedIn(marks: readonly LevelMark[], pxPerMeter: number, height: number): LevelMark[] {
  const kept = [...marks].sort((a, b) => b.elevation - a.elevation);
  const range = (): number => (kept[0].elevation - kept[kept.length - 1].elevation) * pxPerMeter * TIMES;
  const spare = (one: LevelMark, next: LevelMark | undefined): boolean =>
    next !== undefined && one.id !== 'pond.rim' && !near(one, next, pxPerMeter);
  while (range() > height) {
    if (spare(kept[kept.length - 1], kept[kept.length - 2])) kept.pop();
    else if (spare(kept[0], kept[1])) kept.shift();
    else break;
  }
  return kept;
}

/**
 * Frame and scale of the detail, and the words beside it.
 *
 * @returns undefined where the marks stand far enough apart, or where the room is too small for a detail
 */
export function detailFrame(request: DetailRequest): DetailFrame | undefined {
  const { pxPerMeter, room, display, measure } = request;
  if (!crowded(request.marks, pxPerMeter)) return undefined;
  const free = room.bottom - CAPTION - room.top - 2 * MARGIN;
  const marks = markedIn(request.marks, pxPerMeter, free);
  const [highest, lowest] = [marks[0].elevation, marks[marks.length - 1].elevation];
  const times = Math.min(TIMES, Math.floor(free / Math.max(1e-9, (highest - lowest) * pxPerMeter)));
  if (times < LEAST) return undefined;
  const scale = times * pxPerMeter;
  // No higher than its marks want, nor so low that a pond's edge is no longer seen.
  const height = Math.min(free, Math.max(LEAST_HEIGHT, (highest - lowest) * scale)) + 2 * MARGIN;
  const half = height / 2 / scale;
  const middle = (highest + lowest) / 2;
  const bottom = room.top + height;
  const yOf = (z: number): number => room.top + (middle + half - z) * scale;
  const beside = wordsBeside(marks, yOf, { ...room, bottom }, display, measure, request.clocks);
  if (!beside) return undefined;
  const frame = { ...room, bottom, right: beside.frameEnd };
  return {
    times,
    pxPerMeter: scale,
    frame,
    top: middle + half,
    bottom: middle - half,
    marks,
    words: beside.words,
    yOf,
  };
}
