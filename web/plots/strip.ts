/** One quantity over time as a drawing: paths, ticks and marks in pixels, and the sentence that says the same. */
import { area, line, scaleLinear } from 'd3';
import { formatClock, formatFlow, formatLength, formatLevel } from '../../sim/quantity/index.ts';
import type { Display } from '../engine/protocol.ts';
import { axisUnit, type Measure, type Tick, timeTicks, unitSign, valueTicks } from './axes.ts';
import { type Point, thin } from './thin.ts';

/** A height worth a line of its own: an edge, a fill mark. */
export interface Mark {
  name: string;
  value: number;
  /** Drawn wherever it lies; otherwise only where the quantity comes near it. */
  always: boolean;
}

export interface Subject {
  name: string;
  measure: Measure;
  times: Float64Array;
  values: Float64Array;
  /** The elevation levels are told from: the basin's own edge, m. Undefined: the site's datum. */
  edge: number | undefined;
  marks: readonly Mark[];
}

export interface Frame {
  width: number;
  height: number;
  window: readonly [from: number, to: number];
  starts: string;
  display: Display;
}

export interface Placed {
  at: number;
  label: string;
}

export interface Strip {
  line: string;
  /** Between the line and zero, for a flow; '' for a level. */
  area: string;
  valueTicks: Placed[];
  timeTicks: Placed[];
  marks: Placed[];
  unit: string;
  /** Start, end, lowest and highest of the window, in words. */
  says: string;
}

/** Least height of a strip, so that ripples are not blown up to waves: 20 mm of level, 1 L/min of flow. */
const leastSpan: Record<Measure, number> = { level: 0.02, flow: 1 / 60_000 };

/** A level or flow in words: '64 mm below its edge', '−124 mm', '120 L/min'. */
export function inWords(value: number, subject: Pick<Subject, 'measure' | 'edge'>, display: Display): string {
  if (subject.measure === 'flow') return formatFlow(value, display);
  if (subject.edge === undefined) return formatLevel(value, display);
  const below = subject.edge - value;
  return `${formatLength(Math.abs(below), display)} ${below >= 0 ? 'below' : 'over'} its edge`;
}

function extremes(points: readonly Point[]): { lowest: Point; highest: Point } {
  let [lowest, highest] = [points[0]!, points[0]!];
  for (const point of points) {
    if (point[1] < lowest[1]) lowest = point;
    if (point[1] > highest[1]) highest = point;
  }
  return { lowest, highest };
}

function rangeOf(subject: Subject, low: number, high: number): [number, number] {
  const near = Math.max(high - low, leastSpan[subject.measure]);
  const drawn = subject.marks.filter(({ always, value }) => always || (value > low - near && value < high + near));
  const values = [low, high, ...drawn.map(({ value }) => value), ...(subject.measure === 'flow' ? [0] : [])];
  let [bottom, top] = [Math.min(...values), Math.max(...values)];
  const missing = leastSpan[subject.measure] - (top - bottom);
  if (missing > 0)
    [bottom, top] = subject.measure === 'flow' ? [bottom, top + missing] : [bottom - missing / 2, top + missing / 2];
  const air = 0.08 * (top - bottom);
  return [bottom - (subject.measure === 'flow' && bottom === 0 ? 0 : air), top + air];
}

function sentence(subject: Subject, points: readonly Point[], { starts, display }: Frame): string {
  const { lowest, highest } = extremes(points);
  const words = (point: Point): string => inWords(point[1], subject, display);
  const moment = (point: Point): string => `${words(point)} at ${formatClock(starts, point[0])}`;
  const [first, last] = [points[0]!, points[points.length - 1]!];
  if (words(lowest) === words(highest)) return `${subject.name}: ${words(first)} all the time.`;
  return `${subject.name}: from ${words(first)} to ${words(last)}; lowest ${moment(lowest)}, highest ${moment(highest)}.`;
}

/** A level is drawn and ticked from its own edge where it has one, so that 0 is the edge. */
export function drawStrip(subject: Subject, frame: Frame): Strip {
  const { width, height, window, starts, display } = frame;
  const points = thin(subject.times, subject.values, window, width);
  const { lowest, highest } = extremes(points);
  const [bottom, top] = rangeOf(subject, lowest[1], highest[1]);
  const x = scaleLinear(window, [0, width]);
  const y = scaleLinear([bottom, top], [height, 0]);
  const round = (pixel: number): number => Math.round(pixel * 100) / 100;
  const atX = (point: Point): number => round(x(point[0]));
  const atY = (point: Point): number => round(y(point[1]));

  const origin = subject.edge ?? 0;
  const unit = axisUnit(
    subject.measure,
    Math.max(Math.abs(lowest[1] - origin), Math.abs(highest[1] - origin)),
    display,
  );
  const ticks = valueTicks(
    [bottom - origin, top - origin],
    unit,
    subject.measure,
    Math.max(2, Math.round(height / 32)),
  );
  const place = (tick: Tick, at: number): Placed => ({ at: round(at), label: tick.label });
  return {
    line: line<Point>(atX, atY)(points) ?? '',
    area: subject.measure === 'flow' ? (area<Point>(atX, round(y(0)), atY)(points) ?? '') : '',
    valueTicks: ticks.map((tick) => place(tick, y(tick.at + origin))),
    timeTicks: timeTicks(starts, window, Math.max(2, Math.floor(width / 80))).map((tick) => place(tick, x(tick.at))),
    marks: subject.marks
      .filter(({ value }) => value >= bottom && value <= top)
      .map(({ name, value }) => ({ at: round(y(value)), label: name })),
    unit: unitSign(unit),
    says: sentence(subject, points, frame),
  };
}
