/** The levels: lines, the pond's limits, and how far the pond has risen. */
import { formatLength } from '../../sim/quantity/index.ts';
import { type Mark, type Pixel, path, segment, words } from '../section/marks.ts';
import { type Box, baselineOf, boxOfText, isFree, type LabelRequest } from './labels.ts';
import { clipOf, curveMarks, curvesOf, named, nameRequests, type PlotMarks, roomOf } from './line-marks.ts';
import type { Strip } from './place.ts';
import type { Laid } from './sheet-task.ts';
import type { Limit, Line } from './subjects.ts';
import { textWidth } from './text-width.ts';
import { valueAt } from './thin.ts';
import type { ValueScale } from './value-scale.ts';

const CLIP = 'levels';

export function levelMarks(laid: Laid, scale: ValueScale): PlotMarks {
  const { task, place } = laid;
  const { lines, other } = task.levels;
  const strip = place.levels;
  const room = roomOf(laid, strip);
  const all = curvesOf(laid, lines, other, scale);
  const curves = all.filter(({ points }) => reaches(points, strip));
  const beyond = all.filter((curve) => !curves.includes(curve)).map(({ line }) => line.name);
  const limits = limitLines(laid, scale);
  const drawn = [...curves.map(({ points }) => points), ...limits.map(({ points }) => points)];
  const rise = riseMarks(laid, scale, drawn, room);
  const names = named(laid, nameRequests(curves, room, task.otherFails), drawn, room, rise.boxes);
  const said = named(laid, limits.map(limitRequest), drawn, room, [...rise.boxes, ...names.boxes]);
  return {
    marks: [
      ...limits.map(({ limit, points }) => path(segment(...points[0], ...points[1]), limit.look)),
      ...curveMarks(curves, CLIP, task.otherFails),
      ...rise.marks,
      ...names.marks,
      ...said.marks,
    ],
    clip: clipOf(CLIP, laid, strip),
    unnamed: [...names.unnamed, ...said.unnamed],
    beyond,
  };
}

/** Some of a curve lies on its plot. */
const reaches = (points: readonly Pixel[], { top, bottom }: Strip): boolean =>
  points.some(([, y], i) => {
    const before = points[i - 1]?.[1] ?? y;
    return Math.min(y, before) <= bottom + 1 && Math.max(y, before) >= top - 1;
  });

interface LimitLine {
  readonly limit: Limit;
  readonly points: readonly [Pixel, Pixel];
}

/** The pond's limits that lie on the scale; without the pond on it there are none. */
function limitLines({ task, place }: Laid, scale: ValueScale): LimitLine[] {
  const pond = task.levels.lines.find(({ key }) => key === 'pond');
  if (!pond) return [];
  const { top, bottom } = place.levels;
  return task.limits.flatMap((limit): LimitLine[] => {
    const y = scale.y(limit.elevation, pond);
    if (y < top - 0.5 || y > bottom + 0.5) return [];
    const points = [
      [place.left, y],
      [place.right, y],
    ] as const;
    return [{ limit, points }];
  });
}

const limitRequest = ({ limit, points }: LimitLine): LabelRequest => ({
  text: limit.name,
  size: 12,
  italic: true,
  look: 'note',
  points,
  prefer: 1,
});

/** Least height of a rise that is measured on the drawing, px. */
const SEEN = 5;

/** The subject's rise since the stop, measured where it stands highest in the opened minutes. */
function riseMarks(laid: Laid, scale: ValueScale, lines: readonly (readonly Pixel[])[], room: Box): Rise {
  const { task, axis, place } = laid;
  const line = task.levels.lines[0];
  const nothing = { marks: [], boxes: [] };
  if (!task.back || !line) return nothing;
  const { stop } = task.back.back;
  const x0 = place.left + axis.x(stop);
  const end = place.left + axis.x(Math.min(axis.window[1], task.back.back.end)) - 14;
  const x = Math.max(x0 + 60, Math.min(end, place.left + axis.x(highestWithin(line, stop, axis.t(end - place.left)))));
  const at = axis.t(x - place.left);
  const [from, to] = [valueAt(line.times, line.values, stop), valueAt(line.times, line.values, at)];
  const [y0, y1] = [scale.y(from, line), scale.y(to, line)];
  if (y0 - y1 < SEEN || x > end) return nothing;
  const marks: Mark[] = [
    path(segment(x0, y0, x + 5, y0), 'leader'),
    path(segment(x, y0, x, y1), 'leader'),
    path(`${oblique(x, y0)}${oblique(x, y1)}`, 'measure'),
  ];
  const text = `+${formatLength(to - from, task.display)}`;
  const box = seatBeside(x, y0, y1, textWidth(text, SIZE), lines, room);
  const taken = { left: x - 4, right: x + 4, top: y1 - 4, bottom: y0 + 4 };
  if (!box) return { marks, boxes: [taken] };
  return { marks: [...marks, words(box.left, baselineOf(box, SIZE), text, 'figure in')], boxes: [taken, box] };
}

interface Rise {
  readonly marks: Mark[];
  readonly boxes: Box[];
}

const SIZE = 12.5;

const oblique = (x: number, y: number): string => segment(x - 3.5, y + 3.5, x + 3.5, y - 3.5);

/** Room for the figure left or right of its measure: beside its middle first, over or under it last. */
function seatBeside(
  x: number,
  y0: number,
  y1: number,
  width: number,
  lines: readonly (readonly Pixel[])[],
  room: Box,
): Box | undefined {
  const beside = [0.5, 0.35, 0.65, 0.2, 0.8].map((share) => y1 + share * (y0 - y1) + 4);
  const boxes = [...beside, y1 - 7, y0 + 14].flatMap((baseline) =>
    [x - 8 - width, x + 7].map((left) => boxOfText(left, baseline, width, SIZE)),
  );
  return boxes.find((box) => isFree(box, lines, room, []));
}

function highestWithin({ times, values }: Line, from: number, to: number): number {
  let best = { t: to, value: valueAt(times, values, to) };
  for (let row = 0; row < times.length; row++) {
    const t = times[row]!;
    if (t >= from && t <= to && values[row]! > best.value) best = { t, value: values[row]! };
  }
  return best.t;
}
