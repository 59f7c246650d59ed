/** Level against time as a ruler one moves along: the curve, the clock under it, the pointer at a moment. Pure. */
import { wallClock } from '../../sim/fill/clock.ts';
import type { FillPlan } from '../../sim/fill/plan.ts';
import type { Display } from '../../sim/quantity/index.ts';
import { parseTimeOfDay } from '../../sim/quantity/index.ts';
import { closed, type Mark, type Pixel, path, px, segment, through, words } from '../section/marks.ts';
import { timeWords } from './clock.ts';
import { levelAt } from './tide.ts';

export interface CourseScale {
  readonly from: number;
  readonly to: number;
  readonly x: (t: number) => number;
  readonly t: (x: number) => number;
}

export const TALL = 104;
const [TOP, FOOT] = [16, 80];
const [LEFT, RIGHT] = [2, 22];
/** Least room between two clock times under the ruler, px. */
const ROOM = 62;
const STEPS = [300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400, 172800, 604800];

export function courseScale({ series, open }: FillPlan, width: number): CourseScale {
  const from = open?.t ?? 0;
  const to = Math.max(from + 1, series.t.at(-1) ?? 1);
  const a = (width - LEFT - RIGHT) / (to - from);
  return { from, to, x: (t) => LEFT + a * (t - from), t: (x) => Math.min(to, Math.max(from, from + (x - LEFT) / a)) };
}

/** Moments of round clock times within the fill, so far apart that each has room. */
export function clockTicks(plan: FillPlan, { from, to, x }: CourseScale, zone: string | undefined): number[] {
  const step = STEPS.find((each) => x(from + each) - x(from) >= ROOM) ?? (to - from) / 3;
  const clock = parseTimeOfDay(wallClock(plan.starts, from, zone).slice(-5)) ?? 0;
  const first = from + ((step - (clock % Math.min(step, 86400))) % Math.min(step, 86400));
  const ticks: number[] = [];
  for (let t = first; t < to; t += step) if (t > from) ticks.push(Math.round(t));
  return ticks;
}

export interface CourseView {
  readonly plan: FillPlan;
  readonly display: Display;
  readonly zone: string | undefined;
  /** The moment pointed at. */
  readonly t: number;
}

export function courseMarks({ plan, display, zone, t }: CourseView, scale: CourseScale, width: number): Mark[] {
  const { x, from, to } = scale;
  const { series, full } = plan;
  const low = Math.min(...series.pond);
  const high = Math.max(...series.pond, plan.fillMark);
  const y = (level: number): number => FOOT - 6 - ((FOOT - TOP - 6) * (level - low)) / (high - low || 1);
  const rows = series.t.flatMap((each, i): Pixel[] => (each < from ? [] : [[x(each), y(series.pond[i])]]));
  const now = levelAt(plan, t).level;
  const past = [...rows.filter(([at]) => at <= x(t)), [x(t), y(now)] as Pixel];
  const clock = (at: number): string => {
    const { figure, half } = timeWords(parseTimeOfDay(wallClock(plan.starts, at, zone).slice(-5)) ?? 0, display);
    return half === '' ? figure : figure;
  };
  const end = full === null ? to : full.t;
  const ticks = clockTicks(plan, scale, zone).filter((at) => x(at) - x(from) > 44 && x(end) - x(at) > 44);
  return [
    path(closed([[x(from), FOOT], ...past, [x(t), FOOT]]), 'wash'),
    path(segment(x(from), y(plan.fillMark), x(to), y(plan.fillMark)), 'fill-mark'),
    path(through(rows), 'course'),
    path(segment(LEFT, FOOT, width - RIGHT, FOOT), 'axis-line'),
    path(segment(x(from), FOOT, x(t), FOOT), 'course-done'),
    path([from, ...ticks].map((at) => segment(x(at), FOOT, x(at), FOOT + 5)).join(''), 'axis-line'),
    path(segment(x(end), FOOT - 8, x(end), FOOT + 6), 'course-full'),
    words(x(from), FOOT + 19, clock(from), 'axis'),
    ...ticks.map((at) => words(x(at), FOOT + 19, clock(at), 'axis', 'middle' as const)),
    words(Math.min(width - 2, x(end) + 20), FOOT + 19, clock(end), 'axis strong', 'end'),
    path(`M${px(x(t))} ${px(FOOT - 1)}l-7 -11h14Z`, 'pointer'),
    path(segment(x(t), y(now), x(t), FOOT - 11), 'thin'),
  ];
}
