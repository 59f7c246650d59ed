import type { Display } from '../../../sim/quantity/format.ts';
import { bankOf, footOf, pipeIn, waterIn } from './detailShapes.ts';
import { type DetailWord, wordsBeside } from './detailWords.ts';
import { type Dimension, dimensionsOf } from './dimension.ts';
import type { LevelMark } from './levelMarks.ts';
import type { Measure } from './request.ts';
import type { Box, Point, Segment } from './shapes.ts';

/** Two marks nearer than this on the drawing cannot be told apart, px. */
const CROWDED = 4;
/** How many times larger the detail is drawn where it has room, and at the least. */
const TIMES = 5;
const LEAST = 2;
/** Room above the highest mark and under the lowest, px. */
const MARGIN = 26;
/** Height of the caption under the frame, px. */
const CAPTION = 18;

export interface DetailRequest {
  readonly marks: readonly LevelMark[];
  /** The pond's level at the moment, m. */
  readonly level: number;
  /** Inside diameter of the overflow pipe, m; 0 without one. */
  readonly overflowWidth: number;
  /** Scale of heights on the drawing, px/m. */
  readonly pxPerMeter: number;
  /** Where the detail may stand, its caption included, px. */
  readonly room: Box;
  readonly display: Display;
  readonly measure: Measure;
}

/** A close-up of the pond's edge, heights and lengths to one scale. */
export interface Detail {
  readonly letter: 'A';
  /** Times larger than the drawing's heights. */
  readonly times: number;
  readonly pxPerMeter: number;
  readonly frame: Box;
  /** Elevations at the frame's top and bottom, m: what is framed on the drawing. */
  readonly top: number;
  readonly bottom: number;
  /** The bank beside the water, closed, and the liner on it, which turns up at the edge and ends there. */
  readonly bank: readonly Point[];
  readonly liner: readonly Point[];
  readonly water: Box | undefined;
  /** Between the fill mark and the highest level: what ran back. */
  readonly rise: Box | undefined;
  /** The overflow's standing pipe, its mouth at its elevation. */
  readonly pipe: Box | undefined;
  readonly lines: readonly { readonly id: LevelMark['id']; readonly line: Segment }[];
  readonly words: readonly DetailWord[];
  readonly dimensions: readonly Dimension[];
  readonly caption: { readonly text: string; readonly at: Point };
}

const near = (a: LevelMark, b: LevelMark, pxPerMeter: number): boolean =>
  Math.abs(a.elevation - b.elevation) * pxPerMeter < CROWDED;

/**
 * Marks of the close-up, from the top down: those that crowd on the drawing and the edge. Marks beyond them that stand
 * clear are taken in as long as all fit five times larger.
 */
function markedIn(marks: readonly LevelMark[], pxPerMeter: number, height: number): LevelMark[] {
  const kept = [...marks].sort((a, b) => b.elevation - a.elevation);
  const range = (): number => (kept[0].elevation - kept[kept.length - 1].elevation) * pxPerMeter * TIMES;
  const spare = (one: LevelMark, next: LevelMark | undefined): boolean =>
    next !== undefined && one.id !== 'pond.rim' && !near(one, next, pxPerMeter);
  while (range() > height - 2 * MARGIN) {
    if (spare(kept[kept.length - 1], kept[kept.length - 2])) kept.pop();
    else if (spare(kept[0], kept[1])) kept.shift();
    else break;
  }
  return kept;
}

/** Whether two of the pond's marks lie too near each other to be read on the drawing. */
export const crowded = (marks: readonly LevelMark[], pxPerMeter: number): boolean =>
  marks.some((a, i) => marks.slice(i + 1).some((b) => near(a, b, pxPerMeter)));

type YOf = (elevation: number) => number;

/** Heights measured in the close-up: the room under the edge and the rise over the fill mark, where figures have room. */
function measuredIn(frame: Box, marks: readonly LevelMark[], linesEnd: number, yOf: YOf, by: DetailRequest) {
  const at = (id: LevelMark['id']): number | undefined => marks.find((mark) => mark.id === id)?.elevation;
  const [edge, fill, highest] = [at('pond.rim'), at('pond.fillMark'), at('highest')];
  if (edge === undefined || highest === undefined) return [];
  const [foot, right] = [footOf(frame), linesEnd - 44];
  const room = { id: 'room', upper: edge, lower: highest, x: right, upperFrom: right, lowerFrom: right };
  const x = Math.max(foot + 8, right - 70);
  const rise = { id: 'rise', upper: highest, lower: fill ?? highest, x, upperFrom: x, lowerFrom: x };
  const between = (y: number): boolean => !marks.some(({ elevation }) => Math.abs(yOf(elevation) - y) < 9);
  const drawn = dimensionsOf([room, rise], yOf, by.display, by.measure, frame);
  return drawn.filter(({ box }) => between((box.top + box.bottom) / 2) && box.right < linesEnd);
}

function riseIn(frame: Box, marks: readonly LevelMark[], linesEnd: number, yOf: YOf): Box | undefined {
  const fill = marks.find(({ id }) => id === 'pond.fillMark');
  const highest = marks.find(({ id }) => id === 'highest');
  if (!fill || !highest || highest.elevation <= fill.elevation) return undefined;
  return { left: footOf(frame), top: yOf(highest.elevation), right: linesEnd, bottom: yOf(fill.elevation) };
}

const TIMES_WORDS: Readonly<Record<number, string>> = {
  2: 'twice as large',
  3: 'three times larger',
  4: 'four times larger',
  5: 'five times larger',
};

/**
 * The framed detail that takes over the words where two of the pond's marks lie under 4 px apart on the drawing.
 *
 * @returns undefined where the marks stand far enough apart, or where the room is too small for a detail
 */
export function detailOf(request: DetailRequest): Detail | undefined {
  const { pxPerMeter, room, display, measure } = request;
  if (!crowded(request.marks, pxPerMeter)) return undefined;
  const frame = { ...room, bottom: room.bottom - CAPTION };
  const height = frame.bottom - frame.top;
  const marks = markedIn(request.marks, pxPerMeter, height);
  const [highest, lowest] = [marks[0].elevation, marks[marks.length - 1].elevation];
  const times = Math.min(TIMES, Math.floor((height - 2 * MARGIN) / Math.max(1e-9, (highest - lowest) * pxPerMeter)));
  if (times < LEAST) return undefined;
  const scale = times * pxPerMeter;
  const middle = (highest + lowest) / 2;
  const half = height / 2 / scale;
  const yOf = (z: number): number => frame.top + (middle + half - z) * scale;
  const beside = wordsBeside(marks, yOf, frame, display, measure);
  if (!beside) return undefined;
  const { words, linesEnd } = beside;
  const overflow = marks.find(({ id }) => id === 'pond.overflow');
  return {
    letter: 'A',
    times,
    pxPerMeter: scale,
    frame,
    top: middle + half,
    bottom: middle - half,
    ...bankOf(
      frame,
      Math.min(frame.bottom, Math.max(frame.top, yOf(marks.find(({ id }) => id === 'pond.rim')!.elevation))),
    ),
    water: waterIn(frame, yOf(request.level)),
    rise: riseIn(frame, marks, linesEnd, yOf),
    pipe: overflow && pipeIn(frame, yOf(overflow.elevation), request.overflowWidth * scale),
    lines: marks.map(({ id, elevation }) => ({
      id,
      line: [
        { x: footOf(frame), y: yOf(elevation) },
        { x: linesEnd, y: yOf(elevation) },
      ],
    })),
    words,
    dimensions: measuredIn(frame, marks, linesEnd, yOf, request),
    caption: { text: `The pond’s edge, ${TIMES_WORDS[times]}`, at: { x: frame.left, y: frame.bottom + 14 } },
  };
}
