/** The flows: lines, and what runs back as the area under one of them. */
import { formatVolume } from '../../sim/quantity/index.ts';
import { circle, closed, type Mark, type Pixel, path, segment, words } from '../section/marks.ts';
import { stretchOf } from './curve.ts';
import { type Box, freePlace } from './labels.ts';
import { clipOf, curveMarks, curvesOf, named, nameRequests, type PlotMarks, roomOf } from './line-marks.ts';
import type { Laid } from './sheet-task.ts';
import { textWidth } from './text-width.ts';
import { valueAt } from './thin.ts';
import type { ValueScale } from './value-scale.ts';

const CLIP = 'flows';
const NO_EDGE = { edge: undefined };

export function flowMarks(laid: Laid, scale: ValueScale): PlotMarks {
  const { task, place } = laid;
  const { lines, other } = task.flows;
  const room = roomOf(laid, place.flows);
  const curves = curvesOf(laid, lines, other, scale);
  const points = curves.map((curve) => curve.points);
  const back = backMarks(laid, scale, points, room);
  const nought: readonly Pixel[] = [
    [place.left, scale.y(0, NO_EDGE)],
    [place.right, scale.y(0, NO_EDGE)],
  ];
  const { marks, unnamed } = named(
    laid,
    nameRequests(curves, room, task.otherFails),
    [...points, nought],
    room,
    back.boxes,
  );
  return {
    marks: [...back.under, ...curveMarks(curves, CLIP, task.otherFails), ...back.over, ...marks],
    clip: clipOf(CLIP, laid, place.flows),
    unnamed,
    beyond: [],
  };
}

interface BackMarks {
  readonly under: Mark[];
  readonly over: Mark[];
  readonly boxes: Box[];
}

/** The area of what runs back; where it lies in the opened minutes its volume stands beside it. */
function backMarks(laid: Laid, scale: ValueScale, points: readonly (readonly Pixel[])[], room: Box): BackMarks {
  const { task, axis, place } = laid;
  if (!task.back || task.back.back.volume <= 0) return { under: [], over: [], boxes: [] };
  const { back, line } = task.back;
  const y = (value: number): number => scale.y(value, line);
  const curve = stretchOf(line.times, line.values, [back.stop, back.end], axis, place.left, y);
  const nought = y(0);
  const [first, last] = [curve[0]!, curve[curve.length - 1]!];
  const under: Mark[] = [path(closed([...curve, [last[0], nought], [first[0], nought]]), 'wash', { clip: CLIP })];
  const inOpened = back.stop >= axis.window[0] && back.stop < axis.window[1];
  const words = inOpened ? backWords(laid, y, points, room) : undefined;
  return { under, over: words?.marks ?? [], boxes: words ? [words.box] : [] };
}

function backWords(
  { task, axis, place }: Laid,
  y: (value: number) => number,
  points: readonly (readonly Pixel[])[],
  room: Box,
): { marks: Mark[]; box: Box } | undefined {
  const { back, line } = task.back!;
  const t = back.third;
  if (t > axis.window[1]) return undefined;
  const dot: Pixel = [place.left + axis.x(t), (y(0) + y(valueAt(line.times, line.values, t))) / 2];
  const lines = [`${formatVolume(back.volume, task.display)} run back`, 'after the pump has stopped'];
  const width = Math.max(textWidth(lines[0]!, 12.5), textWidth(lines[1]!, 12, true));
  const box = freePlace(width, 28, dot, points, room, []);
  if (!box) return undefined;
  const marks: Mark[] = [
    path(segment(dot[0], dot[1], dot[0] < box.left ? box.left - 3 : box.right + 3, box.top + 9), 'leader'),
    path(circle(dot[0], dot[1], 1.6), 'dot'),
    words(box.left, box.top + 11, lines[0]!, 'figure in'),
    words(box.left, box.top + 25, lines[1]!, 'note in'),
  ];
  return { marks, box };
}
