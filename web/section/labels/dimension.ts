import { type Display, formatLength } from '../../../sim/quantity/format.ts';
import { boxAt, LINE_HEIGHT } from './block.ts';
import { meetsBox, readied } from './obstacles.ts';
import type { Measure, Obstacle } from './request.ts';
import { type Box, boxesMeet, boxHolds, boxRound, cornersOf, grown, type Point, type Segment } from './shapes.ts';

/** A height to be measured on the drawing: two elevations and where the measuring line stands. */
export interface HeightRequest {
  readonly id: string;
  /** Elevations, m. */
  readonly upper: number;
  readonly lower: number;
  /** Of the measuring line, px. */
  readonly x: number;
  /** Where the thin lines at either end start, on the things measured, px. */
  readonly upperFrom: number;
  readonly lowerFrom: number;
}

/** A dimension line ready to draw: oblique ticks at its ends, thin lines to what it measures, its figure beside it. */
export interface Dimension {
  readonly id: string;
  readonly line: Segment;
  readonly ticks: readonly Segment[];
  readonly extensions: readonly Segment[];
  readonly text: string;
  /** Left end of the figure's baseline. */
  readonly at: Point;
  readonly box: Box;
}

/** Shortest line with room for its two ticks, px. */
const SHORTEST = 10;
/** Half a tick's width and height, px. */
const TICK = 3;
/** From the line to its figure, and how far a thin line runs past it, px. */
const ASIDE = 6;
const PAST = 4;

const tickAt = ({ x, y }: Point): Segment => [
  { x: x - TICK, y: y + TICK },
  { x: x + TICK, y: y - TICK },
];

/** The thin line from what is measured to past the measuring line; none where the line stands on it. */
function extension(from: number, { x, y }: Point): Segment[] {
  const past = x + Math.sign(x - from) * PAST;
  return Math.abs(x - from) < PAST
    ? []
    : [
        [
          { x: from, y },
          { x: past, y },
        ],
      ];
}

/** A dimension with its figure on the right of its line or on the left. */
function dimensionOf(
  request: HeightRequest,
  yOf: (elevation: number) => number,
  display: Display,
  measure: Measure,
  onRight: boolean,
): Dimension {
  const { id, upper, lower, x } = request;
  const top = { x, y: yOf(upper) };
  const bottom = { x, y: yOf(lower) };
  const text = formatLength(upper - lower, display);
  const width = measure(text, 'figure');
  const left = onRight ? x + ASIDE : x - ASIDE - width;
  const box = boxAt(left, (top.y + bottom.y - LINE_HEIGHT) / 2, { width, height: LINE_HEIGHT });
  return {
    id,
    line: [top, bottom],
    ticks: [tickAt(top), tickAt(bottom)],
    extensions: [...extension(request.upperFrom, top), ...extension(request.lowerFrom, bottom)],
    text,
    at: { x: left, y: box.top + 12 },
    box,
  };
}

/**
 * A dimension as it stands once the water below has moved: its line ends on the water, its figure keeps its seat.
 * Nothing where the line has become too short for its ticks.
 */
export function dimensionNow(
  placed: Dimension,
  { upper, lower, lowerFrom }: HeightRequest,
  yOf: (elevation: number) => number,
  display: Display,
): Dimension | undefined {
  const [top] = placed.line;
  const bottom = { x: top.x, y: yOf(lower) };
  if (bottom.y - top.y < SHORTEST) return undefined;
  return {
    ...placed,
    line: [top, bottom],
    ticks: [tickAt(top), tickAt(bottom)],
    extensions: [...placed.extensions.filter(([{ y }]) => y === top.y), ...extension(lowerFrom, bottom)],
    text: formatLength(upper - lower, display),
  };
}

/** What a dimension puts in the way of words. */
export function dimensionObstacles({ line, extensions, box }: Dimension): Obstacle[] {
  const lines = [line, ...extensions].map((points): Obstacle => ({ kind: 'dimension', points }));
  return [...lines, { kind: 'figure', points: cornersOf(box), closed: true }];
}

/**
 * Dimension lines from pairs of elevations, each with the height between them as its figure: what is written is what
 * is drawn. A line too short for its ticks is left out, and one whose figure finds no free place on either side.
 *
 * @param yOf px on the sheet of an elevation in m
 * @param obstacles what figures keep off
 */
export function dimensionsOf(
  requests: readonly HeightRequest[],
  yOf: (elevation: number) => number,
  display: Display,
  measure: Measure,
  frame: Box,
  obstacles: readonly Obstacle[] = [],
): Dimension[] {
  const drawn: Dimension[] = [];
  const ready = obstacles.flatMap(readied);
  const round = ({ line, box }: Dimension): Box[] => [grown(boxRound(line), TICK), box];
  const apart = (d: Dimension, other: Dimension): boolean =>
    !round(other).some((a) => round(d).some((b) => boxesMeet(a, b)));
  const free = (d: Dimension): boolean =>
    boxHolds(frame, d.box) && !ready.some((o) => meetsBox(o, d.box)) && drawn.every((other) => apart(d, other));
  for (const request of requests) {
    if (yOf(request.lower) - yOf(request.upper) < SHORTEST) continue;
    const sides = [true, false].map((onRight) => dimensionOf(request, yOf, display, measure, onRight));
    const found = sides.find(free);
    if (found) drawn.push(found);
  }
  return drawn;
}
