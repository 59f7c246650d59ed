/** The share that slips round the media, week by week since they were cleaned, and the hand in the present week. */
import type { Care, ClogCourse } from '../../sim/clogging/answer.ts';
import { formatNumber, formatPercent } from '../../sim/quantity/index.ts';
import { textWidth } from '../plots/text-width.ts';
import { circle, type Mark, type Pixel, path, px, segment, through, words } from '../section/marks.ts';
import { endOf, liftingAt, shareAt, standingWords, weeksWords } from './weeks-hand.ts';

export const TALL = 222;
/** Where the hand begins: it and what is said of it have rows of their own under the title. */
const HAND = 38;
const [TOP, FOOT, LEFT, RIGHT] = [48, 192, 40, 12];
const WEEK = 604800;
const STEPS = [1 / 28, 1 / 7, 2 / 7, 0.5, 1, 2, 4, 8, 13, 26, 52];
/** Room for a figure on the axis of weeks, px. */
const ROOM = 40;
/** Figures of the other axis keep this distance, px. */
const APART = 14;
/** A course shorter than so many weeks is told in days. */
const DAYS = 1.5;
/** Height of what is said in the plot, px. */
const SAID = 13;

type Drawn = Pick<Care, 'course' | 'limit' | 'passing'> & {
  /** Time since a cleaning of the media as they stand, s; null: beyond the course. */
  readonly since: number | null;
};

interface Scale {
  readonly width: number;
  readonly most: number;
  readonly x: (time: number) => number;
  readonly y: (share: number) => number;
}

function scaleOf({ course, limit }: Drawn, width: number): Scale {
  const most = Math.min(1, Math.max(1.25 * limit, ...course.channeled));
  return {
    width,
    most,
    x: (time) => LEFT + ((width - LEFT - RIGHT) * time) / (endOf(course) || WEEK),
    y: (share) => FOOT - ((FOOT - TOP) * Math.min(share, most)) / most,
  };
}

/** Time since the cleaning at a place across the plot, as a share of the whole course; beyond its ends outside 0..1. */
export const shareAcross = (at: number, width: number): number => (at - LEFT) / (width - LEFT - RIGHT);

export function weeksPlotMarks(drawn: Drawn, width: number): Mark[] {
  const scale = scaleOf(drawn, width);
  const { course, limit, passing, since } = drawn;
  const { x, y, most } = scale;
  const weeks = endOf(course) / WEEK;
  const curve = Array.from(course.channeled, (share, i): Pixel => [x(course.t[i]), y(share)]);
  return [
    words(0, 11, `slips round the media, by ${weeks < DAYS ? 'days' : 'weeks'} since they were cleaned`, 'axis'),
    path(segment(LEFT, FOOT, width - RIGHT, FOOT), 'axis-line'),
    path(segment(LEFT, y(limit), width - RIGHT, y(limit)), 'tenth'),
    words(LEFT - 4, y(limit) + 4, formatPercent(limit), 'axis', 'end'),
    ...(y(limit) - y(most) < APART ? [] : [words(LEFT - 4, y(most) + 4, formatPercent(most), 'axis', 'end')]),
    ...weekMarks(x, weeks),
    path(through(curve), 'by-media'),
    ...handMarks(course, since, scale),
    limitWords(drawn, scale),
    ...(passing.when === 'later' ? passingMarks(passing.t, limit, scale) : []),
    ...liftMarks(course, limit, scale),
  ];
}

/** Before the curve passes the line over it, else under the line's end; where there is no room for either in short. */
function limitWords({ limit, passing }: Drawn, { width, x, y }: Scale): Mark {
  const most = formatPercent(limit);
  const says = `${most} is the most wanted`;
  const wide = textWidth(says, SAID, true);
  const from = LEFT + 6;
  const [crossing, told] =
    passing.when === 'later' ? [x(passing.t), passingWide(passing.t)] : [passing.when === 'clean' ? 0 : width, 0];
  const under = width - RIGHT - wide > crossing + told;
  if (from + wide < crossing) return words(from, y(limit) - 5, says, 'curve-name');
  if (under) return words(width - RIGHT, y(limit) + SAID, says, 'curve-name', 'end');
  return words(from, y(limit) - 5, `${most} at most`, 'curve-name');
}

const passingWords = (at: number): string => `clean by ${weekWords(at)}`;
/** Room for them beside their line, px. */
const passingWide = (at: number): number => textWidth(passingWords(at), SAID, true) + 10;

/** Below the curve, which is over the limit from there on. */
function passingMarks(at: number, limit: number, { width, x, y }: Scale): Mark[] {
  const says = passingWords(at);
  const right = x(at) + passingWide(at) <= width;
  return [
    path(segment(x(at), y(limit), x(at), FOOT), 'turn'),
    words(right ? x(at) + 5 : width, FOOT - 6, says, 'curve-name', right ? 'start' : 'end'),
  ];
}

/** Up to over the curve, and over what is said of the limit; the words stand before it, where the curve is low. */
function liftMarks(course: ClogCourse, limit: number, { x, y }: Scale): Mark[] {
  const at = liftingAt(course);
  if (at === undefined) return [];
  const says = at === 0 ? 'the media lift even clean' : `${weekWords(at)}: the media lift`;
  const top = Math.max(TOP + SAID, Math.min(y(shareAt(course, at)), y(limit) - 5 - SAID) - SAID);
  const left = x(at) - 5 - textWidth(says, SAID, true) >= LEFT;
  return [
    path(segment(x(at), top - SAID + 3, x(at), FOOT), 'tenth'),
    words(x(at) + (left ? -5 : 5), top, says, 'curve-name', left ? 'end' : 'start'),
  ];
}

/** Where the media stand now; beyond the course the words alone. */
function handMarks(course: ClogCourse, since: number | null, { width, x, y }: Scale): Mark[] {
  const says = standingWords(course, since);
  const half = textWidth(says, SAID) / 2;
  const at = x(since ?? endOf(course));
  const told = words(Math.max(half, Math.min(width - half, at)), HAND - 12, says, 'hand-words', 'middle');
  if (since === null) return [told];
  return [
    told,
    path(segment(at, HAND, at, FOOT), 'hand'),
    path(`M${px(at - 6)} ${HAND - 8}h12l-6 10Z`, 'hand-head'),
    path(circle(at, y(shareAt(course, since)), 3.2), 'hand-ring'),
  ];
}

/** 'week 10.8', and in a short course 'day 3'. */
function weekWords(at: number): string {
  const words = weeksWords(at);
  return at >= WEEK ? `week ${words.split(' ')[0]}` : words;
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
