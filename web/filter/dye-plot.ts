/** Dye at the lip against time: what came through the media and what came round, and when its tenths have passed. */

import type { DyeFigures } from '../../sim/dye/answer.ts';
import { formatNumber } from '../../sim/quantity/index.ts';
import { type Mark, type Pixel, path, px, segment, through, words } from '../section/marks.ts';

export const TALL = 190;
export const [TOP, FOOT] = [36, 166];
const [LEFT, RIGHT] = [30, 8];
/** Room for a figure on an axis, px. */
const ROOM = 54;
const STEPS = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400, 28800, 86400, 172800, 604800];

export interface DyeScale {
  readonly x: (t: number) => number;
  readonly y: (rate: number) => number;
  readonly end: number;
  readonly most: number;
}

/** A scale on which one or several dyes stand whole. */
export function dyeScale(dyes: readonly DyeFigures[], width: number): DyeScale {
  const end = Math.max(...dyes.map(({ E }) => E.t[E.t.length - 1] || 1));
  const most = Math.max(1e-12, ...dyes.map((dye) => Math.max(...wholeOf(dye))));
  const a = (width - LEFT - RIGHT) / end;
  return { end, most, x: (t) => LEFT + a * t, y: (rate) => FOOT - ((FOOT - TOP - 12) * rate) / most };
}

/** What passes the lip at each time of the curve, by either way, 1/s. */
export const wholeOf = ({ E }: DyeFigures): Float64Array => E.through.map((each, i) => each + E.round[i]);

export const row = (column: Float64Array, t: Float64Array, { x, y }: DyeScale): Pixel[] =>
  Array.from(column, (value, i): Pixel => [x(t[i]), y(value)]);

/** @param now time since the pour that is drawn, s; undefined where none of it is */
export function dyePlotMarks(test: DyeFigures, width: number, now: number | undefined): Mark[] {
  const scale = dyeScale([test], width);
  const { t, through: media, round } = test.E;
  return [
    ...ground(test, scale, now),
    path(through(row(wholeOf(test), t, scale)), 'both'),
    path(through(row(media, t, scale)), 'by-media'),
    path(through(row(round, t, scale)), 'by-gap'),
    ...hand(scale, now),
    ...tenths(test, scale),
    ...names(test, scale),
  ];
}

/** Axes, and what has passed by now under its curve. */
export function ground(test: DyeFigures, scale: DyeScale, now: number | undefined): Mark[] {
  const { x } = scale;
  const marks: Mark[] = [words(0, 11, 'dye at the lip, % a second', 'axis'), ...axes(scale)];
  if (now === undefined || now <= 0) return marks;
  const passed = row(wholeOf(test), test.E.t, scale).filter(([at]) => at <= x(now));
  if (passed.length < 2) return marks;
  const [last] = passed[passed.length - 1];
  return [...marks, path(`${through([[x(0), FOOT], ...passed, [last, FOOT]])}Z`, 'passed')];
}

/** Where the moment drawn stands. */
export function hand({ x, end }: DyeScale, now: number | undefined): Mark[] {
  if (now === undefined || now < 0 || now > end) return [];
  const at = x(now);
  return [path(segment(at, TOP - 14, at, FOOT), 'hand'), path(`M${px(at - 5)} ${TOP - 20}h10l-5 7Z`, 'hand-head')];
}

function axes({ x, y, end, most }: DyeScale): Mark[] {
  const marks: Mark[] = [path(segment(x(0), FOOT, x(end), FOOT), 'axis-line')];
  const step = STEPS.find((each) => x(each) - x(0) >= ROOM) ?? end / 4;
  const [unit, name] = step >= 3600 ? [3600, 'h'] : step >= 60 ? [60, 'min'] : [1, 's'];
  for (let t = 0; t <= end * 1.0001; t += step) {
    const isLast = t + step > end * 1.0001;
    marks.push(path(segment(x(t), FOOT, x(t), FOOT + 4), 'axis-line'));
    marks.push(
      words(
        x(t),
        FOOT + 17,
        `${formatNumber(t / unit, step % unit ? 1 : 0)}${isLast ? ` ${name}` : ''}`,
        'axis',
        'middle',
      ),
    );
  }
  const rate = 10 ** Math.floor(Math.log10(100 * most));
  const by = [5, 2, 1].map((times) => times * rate).find((each) => 100 * most >= 2 * each) ?? rate / 2;
  const decimals = Math.max(0, -Math.floor(Math.log10(by) + 1e-9));
  for (let v = by; v <= 100 * most * 1.0001; v += by) {
    marks.push(path(segment(x(0), y(v / 100), x(end), y(v / 100)), 'grid'));
    marks.push(words(x(0) - 4, y(v / 100) + 4, formatNumber(v, decimals), 'axis', 'end'));
  }
  return marks;
}

/** Lines at the times by which a tenth, half, and nine tenths have passed; where two would meet, the names step aside. */
export function tenths({ t10, t50, t90 }: DyeFigures, { x, end }: DyeScale): Mark[] {
  let free = 0;
  return (
    [
      [t10, '10 %'],
      [t50, '50 %'],
      [t90, '90 %'],
    ] as const
  ).flatMap(([t, name]) => {
    if (!(t <= end)) return [];
    const at = Math.max(free, x(t) - 15);
    free = at + 34;
    return [path(segment(x(t), TOP + 2, x(t), FOOT), 'tenth'), words(at, TOP - 3, name, 'axis over', 'start')];
  });
}

/** Each curve by its name, beside where it stands highest. */
function names({ E, channeled }: DyeFigures, { x, y, most }: DyeScale): Mark[] {
  const highest = (column: Float64Array): number =>
    column.reduce((best, value, i) => (value > column[best] ? i : best), 0);
  const media = highest(E.through);
  const marks: Mark[] = [];
  if (channeled < 1) {
    const at = Math.min(E.t.length - 1, Math.round(media * 1.35) + 1);
    marks.push(words(x(E.t[at]) + 8, y(E.through[at]) - 5, 'through', 'curve-name'));
  }
  if (channeled > 0 && E.round[highest(E.round)] > 0) {
    const gap = highest(E.round);
    const low = E.round[gap] < 0.14 * most;
    marks.push(words(x(E.t[gap]) + (low ? 4 : 6), y(E.round[gap]) - 6, 'round', 'curve-name'));
  }
  return marks;
}
