/** Lines and figures of the two plots’ frames, of their axis and of the bar of all the time. */
import { formatDuration } from '../../sim/quantity/index.ts';
import { box, type Mark, path, segment, words } from '../section/marks.ts';
import type { LevelsBy } from './level-words.ts';
import { NARROW, type Place, type Strip } from './place.ts';
import { textWidth } from './text-width.ts';
import { type Axis, openedOf, seamsOf } from './time-axis.ts';
import { barTicks, type TimeTick } from './time-ticks.ts';
import type { ValueScale } from './value-scale.ts';

const titleWords = { depth: 'below its own edge', elevation: 'above the site’s datum' } as const;

/** px from the axis to what is said beside a title. */
const TITLE = 42;

const levelsWords = ({ unit }: ValueScale, by: LevelsBy, width: number): string =>
  width < NARROW ? unit : `${unit}, ${titleWords[by]}`;

/** px where the title over the levels ends: leaders of flags keep off it. */
export const titleEnd = (levels: ValueScale, by: LevelsBy, { left, width }: Place): number =>
  left + TITLE + textWidth(levelsWords(levels, by, width), 12, true) + 4;

/** Ground, grid, axes and figures, under the lines. */
export function frameMarks(
  axis: Axis,
  place: Place,
  ticks: readonly TimeTick[],
  levels: ValueScale,
  flows: ValueScale,
  by: LevelsBy,
): Mark[] {
  const { left, width } = place;
  const [from, to] = openedOf(axis).map((x) => x + left) as [number, number];
  const seams = seamsOf(axis);
  const foot = place.flows.bottom + 22;
  const marks: Mark[] = [];
  if (seams.length > 0)
    marks.push(path(box(from, place.levels.top - 6, to - from, foot - place.levels.top + 6), 'opened'));
  for (const strip of [place.levels, place.flows]) {
    const d = ticks.map(({ x }) => segment(left + x, strip.top, left + x, strip.bottom)).join('');
    if (d) marks.push(path(d, 'hair'));
  }
  marks.push(...valueAxis(levels, place.levels, place), ...valueAxis(flows, place.flows, place));
  for (const x of seams) marks.push(path(segment(left + x, place.levels.top - 6, left + x, foot), 'axis'));
  marks.push(words(left - 4, place.levels.top - 8, 'Levels', 'title'));
  marks.push(words(left + TITLE, place.levels.top - 8, levelsWords(levels, by, width), 'note'));
  marks.push(words(left - 4, place.flows.top - 7, 'Flows', 'title'));
  marks.push(words(left + 38, place.flows.top - 7, flows.unit, 'note'));
  return [...marks, ...timeFigures(ticks, place)];
}

function valueAxis({ ticks }: ValueScale, { top, bottom }: Strip, { left, right }: Place): Mark[] {
  const inside = ticks.filter(({ y }) => y >= top - 0.5 && y <= bottom + 0.5);
  const d = inside.map(({ y }) => segment(left, y, right, y)).join('');
  return [
    ...(d ? [path(d, 'hair')] : []),
    path(`${segment(left, top, left, bottom)}${segment(left, bottom, right, bottom)}`, 'axis'),
    ...inside.map(({ y, label }) => words(left - 6, y + 4, label, 'tick', 'end')),
  ];
}

function timeFigures(ticks: readonly TimeTick[], { left, flows }: Place): Mark[] {
  return ticks.flatMap(({ x, at, label, anchor, opened }) => {
    const tick = path(segment(left + x, flows.bottom, left + x, flows.bottom + 4), 'axis');
    if (!label) return [tick];
    const look = `${anchor ? 'anchored' : 'tick'}${opened ? ' in' : ''}`;
    return [tick, words(left + at, flows.bottom + 17, label, look, 'middle')];
  });
}

/** The bar of all the time at one scale, and the two lines that fan from its sliver to the opened minutes. */
export function barMarks(axis: Axis, place: Place, starts: string): Mark[] {
  const { left, right, bar, flows } = place;
  const scale = (right - left) / axis.span;
  const [from, to] = axis.window.map((t) => left + t * scale) as [number, number];
  const ticks = barTicks(axis.span, starts, right - left);
  const marks: Mark[] = [
    path(
      segment(left, bar, right, bar) + ticks.map(({ x }) => segment(left + x, bar - 4, left + x, bar + 4)).join(''),
      'axis',
    ),
  ];
  if (axis.pieces.length > 1) {
    const [a, b] = openedOf(axis).map((x) => x + left) as [number, number];
    const foot = flows.bottom + 22;
    marks.push(path(`${segment(a, foot, from, bar - 5)}${segment(b, foot, to, bar - 5)}`, 'fan'));
    const width = Math.max(2, to - from);
    marks.push(path(box((from + to - width) / 2, bar - 5, width, 10), 'sliver'));
  }
  return [...marks, ...barWords(axis, place, ticks)];
}

function barWords(axis: Axis, { left, right, bar }: Place, ticks: readonly TimeTick[]): Mark[] {
  const opened = formatDuration(Math.round(axis.window[1] - axis.window[0]));
  const all = formatDuration(axis.span);
  const says = axis.pieces.length > 1 ? `${all} at one scale; ${opened} of them opened above` : `${all} at one scale`;
  const noted = right - left > 420;
  const marks: Mark[] = noted ? [words(right, bar + 17, says, 'note', 'end')] : [];
  const room = noted ? right - textWidth(says, 12, true) - 12 : right + 8;
  let end = 0;
  for (const { x, label } of ticks) {
    const half = textWidth(label, 12) / 2;
    const at = left + x;
    if (at - half < end + 8 || at + half > room) continue;
    marks.push(words(at, bar + 17, label, 'tick', 'middle'));
    end = at + half;
  }
  return marks;
}
