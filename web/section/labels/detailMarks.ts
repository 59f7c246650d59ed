import { depthLines } from '../basin-water.ts';
import { type Mark, path, segment, words } from '../marks.ts';
import type { Detail } from './detail.ts';
import { waterIn } from './detailShapes.ts';
import type { LevelMark } from './levelMarks.ts';
import { areaOf, dimensionMarks, hatchOf, letterBox, lineOf } from './markShapes.ts';
import type { Box } from './shapes.ts';

const lineLooks: Readonly<Record<LevelMark['id'], string>> = {
  'pond.rim': 'edge-line',
  'pond.fillMark': 'fill-mark',
  'pond.overflow': 'thin',
  highest: 'reached',
  lowest: 'reached',
};

/** What the detail shows, framed on the drawing with its letter. */
export function windowMarks(window: Box): Mark[] {
  const letter = letterBox(window);
  return [path(areaOf(window), 'detail-window'), words(letter.left, letter.bottom - 2, 'A', 'label letter halo')];
}

/** The close-up of the pond's edge, its water at a level, m. */
export function detailMarks(detail: Detail, level: number, hatched = false): Mark[] {
  const { frame, bank, liner, rise, pipe, lines, dimensions, caption, letter } = detail;
  const water = waterIn(frame, detail.yOf(level));
  const marks: Mark[] = [path(areaOf(frame), 'detail-ground')];
  if (water) {
    const { left, top, right, bottom } = water;
    marks.push(path(areaOf(water), 'w1'));
    if (hatched) marks.push(path(depthLines(top, bottom, left, right - left, detail.pxPerMeter), 'depth'));
    marks.push(path(segment(left, top, right, top), 'surface'));
  }
  if (rise) marks.push(path(hatchOf(rise), 'hatch'));
  if (pipe) marks.push(path(areaOf(pipe), 'detail-pipe'));
  marks.push(path(`${lineOf(bank)}Z`, 'detail-bank'), path(lineOf(liner), 'detail-liner'));
  marks.push(...lines.map(({ id, line }) => path(lineOf(line), lineLooks[id])));
  marks.push(...dimensions.flatMap(dimensionMarks), path(areaOf(frame), 'detail-frame'));
  for (const { text, at, leader } of detail.words) {
    marks.push(path(lineOf(leader), 'leader'), words(at.x, at.y, text, 'label figure'));
  }
  marks.push(words(frame.left, caption.at.y, letter, 'label letter'));
  return [...marks, words(caption.at.x, caption.at.y, caption.text, 'note')];
}
