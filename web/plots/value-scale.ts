/** The scale of values up a plot: from what is drawn to px and ticks. */
import type { Display } from '../engine/protocol.ts';
import type { LevelsBy } from './level-words.ts';
import type { Limit, Line } from './subjects.ts';
import { axisUnit, type Tick, unitSign, valueTicks } from './value-ticks.ts';

export interface ValueScale {
  /** px of a line's value. */
  readonly y: (value: number, line: Pick<Line, 'edge'>) => number;
  readonly ticks: readonly { readonly y: number; readonly label: string }[];
  readonly unit: string;
}

interface Place {
  /** px of the plot's upper and lower edge. */
  readonly top: number;
  readonly bottom: number;
  readonly display: Display;
}

/** Least height of a plot, so that ripples are not blown up to waves: 20 mm of level, 1 L/min of flow. */
const LEAST = { level: 0.02, flow: 1 / 60_000 } as const;

/** Room for a name under the lowest line, px. */
const NAME = 20;

/** px between value ticks, about. */
const APART = 34;

export function extremesOf(values: ArrayLike<number>): [low: number, high: number] {
  let [low, high] = [values[0] ?? 0, values[0] ?? 0];
  for (let i = 1; i < values.length; i++) {
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}

const linear = (bottom: number, top: number, place: Place): ((value: number) => number) => {
  const scale = (place.bottom - place.top) / (top - bottom);
  return (value) => place.bottom - (value - bottom) * scale;
};

/** Elevation that stands at a line's nought: its own edge, or the site's datum. */
export const originOf = ({ edge }: Pick<Line, 'edge'>, by: LevelsBy): number => (by === 'depth' ? (edge ?? 0) : 0);

/**
 * Levels: by depth the scale takes in all lines and the edge at nought; by elevation the first line and its limits, and
 * what lies beyond is cut off.
 */
export function levelScale(lines: readonly Line[], limits: readonly Limit[], by: LevelsBy, place: Place): ValueScale {
  const drawn = by === 'depth' ? lines : lines.slice(0, 1);
  const ends = drawn.flatMap((line) => extremesOf(line.values).map((value) => value - originOf(line, by)));
  const pond = lines.find(({ key }) => key === 'pond');
  const marks = pond ? limits.map(({ elevation }) => elevation - originOf(pond, by)) : [];
  const near = by === 'depth' ? [0, ...marks] : lines[0] === pond ? marks : [];
  const values = [...ends, ...near];
  let [bottom, top] = [Math.min(...values), Math.max(...values)];
  const air = Math.max(0.04 * (top - bottom), (LEAST.level - (top - bottom)) / 2);
  // The lowest line has its name below it.
  bottom -= Math.max(air, (NAME / (place.bottom - place.top)) * (top - bottom));
  if (by === 'elevation' || top > 0) top += air;
  const toPx = linear(bottom, top, place);
  const ticks = levelTicks(bottom, top, by, place);
  return {
    y: (value, line) => toPx(value - originOf(line, by)),
    ticks: ticks.map(({ at, label }) => ({ y: toPx(at), label })),
    unit: unitSign(levelUnit(bottom, top, place.display)),
  };
}

const levelUnit = (bottom: number, top: number, display: Display): string =>
  axisUnit('level', Math.max(Math.abs(bottom), Math.abs(top)), display);

/** Depths are told downward, without a sign. */
function levelTicks(bottom: number, top: number, by: LevelsBy, place: Place): Tick[] {
  const unit = levelUnit(bottom, top, place.display);
  const count = Math.max(2, Math.round((place.bottom - place.top) / APART));
  if (by === 'elevation') return valueTicks([bottom, top], unit, 'level', count);
  return valueTicks([-top, -bottom], unit, 'level', count).map(({ at, label }) => ({ at: -at, label }));
}

/** Flows: nought is always on the scale. */
export function flowScale(lines: readonly Line[], place: Place): ValueScale {
  const ends = lines.flatMap((line) => extremesOf(line.values));
  const bottom = Math.min(0, ...ends);
  const top = Math.max(LEAST.flow, ...ends) * 1.06;
  const toPx = linear(bottom < 0 ? bottom * 1.06 : 0, top, place);
  const unit = axisUnit('flow', Math.max(top, -bottom), place.display);
  const count = Math.max(2, Math.round((place.bottom - place.top) / APART));
  const ticks = valueTicks([bottom, top], unit, 'flow', count);
  return {
    y: (value) => toPx(value),
    ticks: ticks.map(({ at, label }) => ({ y: toPx(at), label })),
    unit: unitSign(unit),
  };
}
