/** The sheet of a map: where its plane lies and how a place of it becomes pixels. Pure. */
import type { OperatingMap, Plane } from '../../sim/map/answer.ts';
import type { Pixel } from '../section/marks.ts';

export interface Sheet {
  readonly plane: Plane;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  /** Side lengths of the plane, px. */
  readonly across: number;
  readonly down: number;
  readonly x: readonly [from: number, to: number];
  readonly y: readonly [from: number, to: number];
}

/** Room for the rulers and their words, px. */
const [LEFT, RIGHT, BOTTOM] = [56, 20, 66];
/** Above the plane of flow a second scale stands. */
const TOP = { valves: 30, flow: 50 };
/** A plane wider than this gains nothing, px. */
const WIDEST = 560;
/** A wide plane is less high than wide, so that words below stay in sight. */
const FLATTEST = 0.8;

export function sheetFor({ plane, x, y }: Pick<OperatingMap, 'plane' | 'x' | 'y'>, width: number): Sheet {
  const across = Math.max(120, Math.min(WIDEST, width - LEFT - RIGHT));
  const down = Math.round(across > 360 ? Math.max(360, across * FLATTEST) : across);
  return {
    plane,
    width: across + LEFT + RIGHT,
    height: down + TOP[plane] + BOTTOM,
    left: LEFT,
    top: TOP[plane],
    across,
    down,
    x: [x[0], x[x.length - 1]],
    y: [y[0], y[y.length - 1]],
  };
}

const share = (value: number, [from, to]: readonly [number, number]): number => (value - from) / (to - from);

export const pixelAt = (sheet: Sheet, [x, y]: readonly [number, number]): Pixel => [
  sheet.left + sheet.across * share(x, sheet.x),
  sheet.top + sheet.down * (1 - share(y, sheet.y)),
];

/** The place under a pixel, kept on the plane. */
export function placeAt(sheet: Sheet, [px, py]: Pixel): readonly [x: number, y: number] {
  const keep = (value: number): number => Math.min(1, Math.max(0, value));
  const along = ([from, to]: readonly [number, number], part: number): number => from + (to - from) * keep(part);
  return [along(sheet.x, (px - sheet.left) / sheet.across), along(sheet.y, 1 - (py - sheet.top) / sheet.down)];
}

export interface Tick {
  readonly value: number;
  readonly text: string;
}

/** Handles every 15°, told every 30°; shares by quarters, speeds by tenths. */
export function ticksOf({ plane, x }: Pick<Sheet, 'plane' | 'x'>, axis: 'x' | 'y'): Tick[] {
  if (plane === 'valves')
    return [90, 75, 60, 45, 30, 15, 0].map((angle) => ({
      value: 1 - angle / 90,
      text: angle === 90 ? 'shut' : angle === 0 ? 'open' : angle % 30 === 0 ? `${angle}°` : '',
    }));
  const [first, last] = x.map((value) => Math.round(10 * value));
  const tenths = Array.from({ length: last - first + 1 }, (_, i) => (first + i) / 10);
  const values = axis === 'x' ? tenths : [0, 0.25, 0.5, 0.75, 1];
  return values.map((value) => ({ value, text: `${Math.round(100 * value)} %` }));
}
