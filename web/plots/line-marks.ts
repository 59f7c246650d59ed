/** Lines of one plot with their names beside them. */
import { box, type Clip, type Mark, type Pixel, path, words } from '../section/marks.ts';
import { curvePoints, pathThrough } from './curve.ts';
import { type Box, type LabelRequest, type SeatedLabel, seatLabels, together } from './labels.ts';
import type { Strip } from './place.ts';
import type { Laid } from './sheet-task.ts';
import type { Line } from './subjects.ts';
import { openedOf, seamsOf } from './time-axis.ts';
import type { ValueScale } from './value-scale.ts';

export interface Curve {
  readonly line: Line;
  readonly points: readonly Pixel[];
  readonly role: 'subject' | 'line' | 'other';
}

export interface PlotMarks {
  readonly marks: readonly Mark[];
  readonly clip: Clip;
  readonly unnamed: readonly string[];
  /** Names of the lines that lie wholly beyond the scale. */
  readonly beyond: readonly string[];
}

export function curvesOf(laid: Laid, lines: readonly Line[], other: Line | undefined, scale: ValueScale): Curve[] {
  const { axis, place } = laid;
  const curve = (line: Line, role: Curve['role']): Curve => {
    const points = curvePoints(line.times, line.values, axis, place.left, (value) => scale.y(value, line));
    return { line, points, role };
  };
  return [
    ...lines.map((line, i) => curve(line, i === 0 ? 'subject' : 'line')),
    ...(other ? [curve(other, 'other')] : []),
  ];
}

/** The subject is drawn last, over the others. */
export function curveMarks(curves: readonly Curve[], clip: string, fails: boolean): Mark[] {
  const look = { subject: 'subject', line: 'line', other: fails ? 'failing' : 'other' };
  return [...curves].reverse().map(({ points, role }) => path(pathThrough(points), look[role], { clip }));
}

export const clipOf = (id: string, { place }: Laid, { top, bottom }: Strip): Clip => ({
  id,
  d: box(place.left, top - 1.5, place.right - place.left, bottom - top + 3),
});

/** Where names may stand: the opened minutes, or the whole plot. */
export function roomOf({ axis, place }: Laid, { top, bottom }: Strip): Box {
  const [from, to] = openedOf(axis);
  return { left: place.left + from + 5, right: place.left + to - 5, top: top - 4, bottom: bottom - 1 };
}

/** Requests for the lines' names: those that run together share one; the other case's stands next to the subject's. */
export function nameRequests(curves: readonly Curve[], room: Box, fails: boolean): LabelRequest[] {
  const groups: { first: Curve; names: string[] }[] = [];
  const rank = { subject: 0, other: 1, line: 2 };
  for (const curve of [...curves].sort((a, b) => rank[a.role] - rank[b.role])) {
    const group = curve.role === 'line' && groups.find(({ first }) => together(first.points, curve.points, room));
    if (group) group.names.push(curve.line.name);
    else groups.push({ first: curve, names: [curve.line.name] });
  }
  return groups.map(({ first, names }, i) => ({
    text: names.join(', '),
    size: 13,
    italic: true,
    look: first.role === 'subject' ? 'water-name' : first.role === 'other' && fails ? 'failing-name' : 'name',
    points: first.points,
    prefer: 0.3 + 0.12 * (i % 4),
  }));
}

/** The halo of a name is the ground it stands on. */
function labelMark({ request, x, y, box }: SeatedLabel, { axis, place }: Laid): Mark {
  const [from, to] = openedOf(axis);
  const inside = axis.pieces.length > 1 && box.left >= place.left + from && box.right <= place.left + to;
  return words(x, y, request.text, `${request.look}${inside ? ' in' : ''}`);
}

/** All the axis, for names that find no seat in the opened minutes or hold everywhere. */
export const everywhereOf = ({ place }: Laid, { top, bottom }: Box): Box => ({
  left: place.left + 4,
  right: place.right - 4,
  top,
  bottom,
});

/** Seats names, in the room or else anywhere on the axis; gives their marks, their boxes and the names left over. */
export function named(
  laid: Laid,
  requests: readonly LabelRequest[],
  lines: readonly (readonly Pixel[])[],
  room: Box,
  taken: readonly Box[],
): { marks: Mark[]; boxes: Box[]; unnamed: string[] } {
  const { axis, place } = laid;
  const seated = seatLabels(requests, lines, room, taken);
  const left = (): LabelRequest[] => requests.filter((each) => !seated.some(({ request }) => request === each));
  const { top, bottom } = room;
  const seams = seamsOf(axis).map((x) => ({ left: place.left + x - 1, right: place.left + x + 1, top, bottom }));
  const full = [...taken, ...seams, ...seated.map(({ box }) => box)];
  seated.push(...seatLabels(left(), lines, everywhereOf(laid, room), full));
  return {
    marks: seated.map((each) => labelMark(each, laid)),
    boxes: seated.map(({ box }) => box),
    unnamed: left().map(({ text }) => text),
  };
}
