import type { Detail, Dimension, Placed, Point } from './labels/index.ts';
import { box, circle, closed, type Mark, type Pixel, path, segment, through, words } from './marks.ts';

const pixel = ({ x, y }: Point): Pixel => [x, y];
const line = ([a, b]: readonly [Point, Point]): string => segment(a.x, a.y, b.x, b.y);

const GROUNDS: Readonly<Record<Placed['ground'], string>> = {
  paper: '',
  earth: ' halo',
  'pale water': ' on-pale',
  'deep water': ' on-deep',
};

/** Labels with their leaders and the dots at their anchors. */
export function labelMarks(placed: readonly Placed[]): Mark[] {
  const leaders = placed.filter(({ leader }) => leader.length > 1).map(({ leader }) => through(leader.map(pixel)));
  const dots = placed.flatMap(({ dot }) => (dot ? [circle(dot.x, dot.y, 1.6)] : []));
  const marks: Mark[] = [];
  if (leaders.length > 0) marks.push(path(leaders.join(''), 'leader'));
  if (dots.length > 0) marks.push(path(dots.join(''), 'dot'));
  for (const { lines, ground } of placed) {
    for (const { x, y, text, style } of lines) marks.push(words(x, y, text, `label-${style}${GROUNDS[ground]}`));
  }
  return marks;
}

export function dimensionMarks(dimensions: readonly Dimension[]): Mark[] {
  return dimensions.flatMap((d) => [
    path(line(d.line) + d.extensions.map(line).join(''), 'leader'),
    path(d.ticks.map(line).join(''), 'tick'),
    words(d.at.x, d.at.y, d.text, 'label-figure halo'),
  ]);
}

/** The framed close-up of the pond's edge. */
export function detailMarks(detail: Detail): Mark[] {
  const { frame, water, rise, pipe, bank, liner, words: beside, caption, letter } = detail;
  const room = { x: frame.left, y: frame.top, w: frame.right - frame.left, h: frame.bottom - frame.top };
  const framed = box(room.x, room.y, room.w, room.h);
  const of = (b: { left: number; top: number; right: number; bottom: number }): string =>
    box(b.left, b.top, b.right - b.left, b.bottom - b.top);
  const marks: Mark[] = [path(framed, 'detail-paper')];
  if (water) marks.push(path(of(water), 'w1'), path(segment(water.left, water.top, water.right, water.top), 'surface'));
  marks.push(path(closed(bank.map(pixel)), 'detail-paper'));
  if (rise) marks.push(path(hatched(rise), 'hatch'));
  if (pipe) marks.push(path(of(pipe), 'fitting'));
  marks.push(path(through(liner.map(pixel)), 'liner heavy'));
  for (const { id, line: at } of detail.lines) marks.push(path(line(at), lookOf(id)));
  marks.push(path(framed, 'frame'));
  for (const word of beside) {
    marks.push(path(through(word.leader.map(pixel)), 'leader'), words(word.at.x, word.at.y, word.text, 'label-figure'));
  }
  return [
    ...marks,
    ...dimensionMarks(detail.dimensions),
    words(frame.left, caption.at.y, letter, 'label-letter'),
    words(caption.at.x, caption.at.y, caption.text, 'note'),
  ];
}

const lookOf = (id: string): string =>
  id === 'pond.rim' ? 'edge-line' : id === 'pond.fillMark' ? 'fill-mark' : 'reached';

/** Oblique strokes that stay inside a box. */
function hatched({ left, top, right, bottom }: { left: number; top: number; right: number; bottom: number }): string {
  const tall = bottom - top;
  let d = '';
  for (let x = left; x + tall < right; x += 5) d += segment(x, bottom, x + tall, top);
  return d;
}
