import { CAPTION, type DetailFrame, type DetailRequest, detailFrame } from './detailFrame.ts';
import { bankOf, footOf, pipeIn } from './detailShapes.ts';
import { type Dimension, dimensionsOf } from './dimension.ts';
import type { LevelMark } from './levelMarks.ts';
import type { Box, Point, Segment } from './shapes.ts';

/** A close-up of the pond's edge, heights and lengths to one scale. */
export interface Detail extends DetailFrame {
  readonly letter: 'A';
  /** All it takes: frame, words and caption. */
  readonly room: Box;
  /** The bank beside the water, closed, and the liner on it, which turns up at the edge and ends there. */
  readonly bank: readonly Point[];
  readonly liner: readonly Point[];
  /** Between the fill mark and the highest level: what ran back. */
  readonly rise: Box | undefined;
  /** The overflow's standing pipe, its mouth at its elevation. */
  readonly pipe: Box | undefined;
  readonly lines: readonly { readonly id: LevelMark['id']; readonly line: Segment }[];
  readonly dimensions: readonly Dimension[];
  /** Stands after the letter. */
  readonly caption: { readonly text: string; readonly at: Point };
}

const TIMES_WORDS: Readonly<Record<number, string>> = {
  2: 'twice as large',
  3: 'three times larger',
  4: 'four times larger',
  5: 'five times larger',
};

/** Width of the caption's letter, px. */
const LETTER = 14;

const markIn = (marks: readonly LevelMark[], id: LevelMark['id']): number | undefined =>
  marks.find((mark) => mark.id === id)?.elevation;

/** Heights measured in the close-up: the room under the edge and the rise over the fill mark, where figures have room. */
function measuredIn({ frame, marks, yOf }: DetailFrame, pipe: Box | undefined, by: DetailRequest): Dimension[] {
  const [edge, fill, highest] = (['pond.rim', 'pond.fillMark', 'highest'] as const).map((id) => markIn(marks, id));
  if (edge === undefined || highest === undefined) return [];
  const right = frame.right - 62;
  const left = Math.max(footOf(frame) + 12, right - 66);
  const at = (x: number) => ({ x, upperFrom: x, lowerFrom: x });
  const requests = [
    { id: 'room', upper: edge, lower: highest, ...at(right) },
    { id: 'rise', upper: highest, lower: fill ?? highest, ...at(left) },
  ];
  const lines = marks.map(({ elevation }) => yOf(elevation));
  const clear = ({ line, box }: Dimension): boolean =>
    lines.every((y) => y < box.top + 1 || y > box.bottom - 1) && (!pipe || line[0].x > pipe.right + 8);
  return dimensionsOf(requests, yOf, by.display, by.measure, frame).filter(clear);
}

function riseIn({ frame, marks, yOf }: DetailFrame): Box | undefined {
  const [fill, highest] = [markIn(marks, 'pond.fillMark'), markIn(marks, 'highest')];
  if (fill === undefined || highest === undefined || highest <= fill) return undefined;
  return { left: footOf(frame), top: yOf(highest), right: frame.right, bottom: yOf(fill) };
}

/**
 * The framed detail that takes over the words where two of the pond's marks lie under 4 px apart on the drawing.
 *
 * @returns undefined where the marks stand far enough apart, or where the room is too small for a detail
 */
export function detailOf(request: DetailRequest): Detail | undefined {
  const laid = detailFrame(request);
  if (!laid) return undefined;
  const { frame, marks, yOf, times, pxPerMeter } = laid;
  const overflow = markIn(marks, 'pond.overflow');
  const edge = Math.min(frame.bottom, Math.max(frame.top, yOf(markIn(marks, 'pond.rim') ?? laid.top)));
  const pipe = overflow === undefined ? undefined : pipeIn(frame, yOf(overflow), request.overflowWidth * pxPerMeter);
  const left = footOf(frame);
  return {
    letter: 'A',
    ...laid,
    room: { ...request.room, bottom: frame.bottom + CAPTION },
    ...bankOf(frame, edge),
    rise: riseIn(laid),
    pipe,
    lines: marks.map(({ id, elevation }) => {
      const y = yOf(elevation);
      return {
        id,
        line: [
          { x: left, y },
          { x: frame.right, y },
        ],
      };
    }),
    dimensions: measuredIn(laid, pipe, request),
    caption: { text: `The pond’s edge, ${TIMES_WORDS[times]}`, at: { x: frame.left + LETTER, y: frame.bottom + 14 } },
  };
}
