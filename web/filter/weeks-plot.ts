/** The share that slips round the media, week by week since they were cleaned. */
import type { Care } from '../../sim/clogging/answer.ts';
import { formatNumber, formatPercent } from '../../sim/quantity/index.ts';
import { type Mark, type Pixel, path, segment, through, words } from '../section/marks.ts';

export const TALL = 190;
const [TOP, FOOT, LEFT, RIGHT] = [30, 160, 40, 12];
const WEEK = 604800;
const STEPS = [1 / 28, 1 / 7, 2 / 7, 0.5, 1, 2, 4, 8, 13, 26, 52];
/** Room for a figure on the axis of weeks, px. */
const ROOM = 40;
/** Figures of the other axis keep this distance, px. */
const APART = 14;
/** A course shorter than so many weeks is told in days. */
const DAYS = 1.5;

type Drawn = Pick<Care, 'course' | 'limit' | 'passing'>;

export function weeksPlotMarks({ course, limit, passing }: Drawn, width: number): Mark[] {
  const { t, channeled } = course;
  const weeks = (t[t.length - 1] || WEEK) / WEEK;
  const most = Math.min(1, Math.max(1.25 * limit, ...channeled));
  const x = (time: number): number => LEFT + ((width - LEFT - RIGHT) * time) / WEEK / weeks;
  const y = (share: number): number => FOOT - ((FOOT - TOP) * share) / most;
  const curve = Array.from(channeled, (share, i): Pixel => [x(t[i]), y(Math.min(share, most))]);
  const marks: Mark[] = [
    words(0, 11, `slips round the media, by ${weeks < DAYS ? 'days' : 'weeks'} since they were cleaned`, 'axis'),
    path(segment(LEFT, FOOT, width - RIGHT, FOOT), 'axis-line'),
    path(segment(LEFT, y(limit), width - RIGHT, y(limit)), 'tenth'),
    words(LEFT - 4, y(limit) + 4, formatPercent(limit), 'axis', 'end'),
    ...(y(limit) - y(most) < APART ? [] : [words(LEFT - 4, y(most) + 4, formatPercent(most), 'axis', 'end')]),
    ...weekMarks(x, weeks),
    path(through(curve), 'by-media'),
  ];
  if (passing.when === 'later') {
    marks.push(path(segment(x(passing.t), y(limit), x(passing.t), FOOT), 'hand'));
    marks.push(words(Math.min(x(passing.t), width - 60) + 4, FOOT - 6, 'clean by here', 'curve-name'));
  }
  return marks;
}

function weekMarks(x: (t: number) => number, weeks: number): Mark[] {
  const isDays = weeks < DAYS;
  const step = STEPS.find((each) => x(each * WEEK) - x(0) >= ROOM) ?? weeks / 3;
  const marks: Mark[] = [];
  for (let w = 0; w <= weeks * 1.0001; w += step) {
    const figure = isDays ? formatNumber(w * 7, 1) : formatNumber(w, step % 1 === 0 ? 0 : 1);
    marks.push(path(segment(x(w * WEEK), FOOT, x(w * WEEK), FOOT + 4), 'axis-line'));
    marks.push(words(x(w * WEEK), FOOT + 17, figure, 'axis', 'middle'));
  }
  return marks;
}
