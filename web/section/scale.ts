import type { Spot } from './cut.ts';
import type { Pixel } from './marks.ts';

/** How the cut is laid on the sheet: px = a · station across, k · a · elevation up. */
export interface Scale {
  /** px per meter along. */
  readonly a: number;
  /** How many times taller heights are drawn than lengths. */
  readonly k: number;
  readonly width: number;
  readonly height: number;
  /** Stations at the frame's left and right end of the drawing, m. */
  readonly from: number;
  readonly to: number;
  /** px of the frame of the drawing proper. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Whether it is a strip that is moved under a window. */
  readonly strip: boolean;
  /** Whether it is a close-up: pipes and falling water as wide as they are. */
  readonly closeUp: boolean;
  /** Whether depths of water are told by lines instead of tints, and lines are heavy: a drawing in black and white. */
  readonly hatched: boolean;
  readonly x: (station: number) => number;
  readonly y: (elevation: number) => number;
  readonly at: (spot: Spot) => Pixel;
}

export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Figures by which heights may be taller than lengths, and how they are said. */
const TIMES: readonly (readonly [number, string])[] = [
  [1, 'heights and lengths drawn at one scale'],
  [1.25, 'heights drawn one and a quarter times as tall as lengths'],
  [1.5, 'heights drawn one and a half times as tall as lengths'],
  [1.75, 'heights drawn one and three quarter times as tall as lengths'],
  [2, 'heights drawn twice as tall as lengths'],
  [2.5, 'heights drawn two and a half times as tall as lengths'],
  [3, 'heights drawn three times as tall as lengths'],
  [4, 'heights drawn four times as tall as lengths'],
  [5, 'heights drawn five times as tall as lengths'],
  [6, 'heights drawn six times as tall as lengths'],
];

/** Narrowest page on which the whole cut is shown at once, px; below it a strip is moved. */
const STRIP_UNDER = 640;
const STRIP = 78;

export function exaggeration(k: number): string {
  return TIMES.find(([times]) => times === k)?.[1] ?? '';
}

/** Lays a cut on a sheet so wide, px. */
export function scaleOf(extent: Extent, width: number, hatched = false): Scale {
  const strip = width < STRIP_UNDER;
  const margin = { left: strip ? 46 : 54, right: strip ? 16 : 6, top: strip ? 44 : 52, bottom: strip ? 40 : 44 };
  const room = strip ? 400 : width < 900 ? 300 : 356;
  const long = extent.right - extent.left;
  const tall = extent.top - extent.bottom;
  const across = strip
    ? Math.max(STRIP, (width - margin.left - margin.right) / long)
    : (width - margin.left - margin.right) / long;
  const a = Math.min(across, room / tall);
  const fits = room / (a * tall);
  const k = TIMES.reduce((best, [times]) => (times <= fits + 1e-9 ? times : best), 1);
  // What is left beside a cut that is taller than long is more ground at both sides.
  const all = strip ? Math.max(width, a * long + margin.left + margin.right) : width;
  const spare = (all - margin.left - margin.right) / a - long;
  const from = extent.left - spare / 2;
  const y = (z: number): number => margin.top + k * a * (extent.top - z);
  const x = (station: number): number => margin.left + a * (station - from);
  return {
    a,
    k,
    width: all,
    height: y(extent.bottom) + margin.bottom,
    from,
    to: extent.right + spare / 2,
    left: margin.left,
    right: all - margin.right,
    top: margin.top,
    bottom: y(extent.bottom),
    strip,
    closeUp: false,
    hatched,
    x,
    y,
    at: ([station, z]) => [x(station), y(z)],
  };
}
