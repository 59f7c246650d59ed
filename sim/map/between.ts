/** A map between its points: bilinear, and how far that may be off. */
import type { Figure, OperatingMap } from './answer.ts';

type Laid = Pick<OperatingMap, 'x' | 'y' | 'points'>;

export const FIGURES: readonly Figure[] = [
  'flow',
  'split',
  'channeled',
  'lift',
  'emptyBed',
  'pore',
  'headroom',
  'stone',
  'margin',
];

/**
 * A figure as it is laid between points, and back: a contact time is a volume over a flow, and the flow is what is nearly
 * straight. Its own inverse.
 */
export const straightened = (figure: Figure, value: number): number => (isContact(figure) ? 1 / value : value);

/** Endless where a feed is shut: what it misses is told as a share of it. */
export const isContact = (figure: Figure): boolean => figure === 'emptyBed' || figure === 'pore';

/** A figure at any place of the plane, by bilinear interpolation; null beyond the map and beside a blank point. */
export function figureAt({ x, y, points }: Laid, figure: Figure, atX: number, atY: number): number | null {
  const [i, u] = cellOf(x, atX);
  const [j, v] = cellOf(y, atY);
  if (i < 0 || j < 0) return null;
  let sum = 0;
  for (const [di, dj, weight] of [
    [0, 0, (1 - u) * (1 - v)],
    [1, 0, u * (1 - v)],
    [0, 1, (1 - u) * v],
    [1, 1, u * v],
  ] as const) {
    if (weight === 0) continue;
    const value = points[(j + dj) * x.length + i + di][figure];
    if (value === null) return null;
    sum += weight * straightened(figure, value);
  }
  return straightened(figure, sum);
}

/** The interval a value lies in and its share of the way through; −1 where it lies beyond. */
function cellOf(axis: readonly number[], at: number): readonly [number, number] {
  const last = axis.length - 1;
  if (!(at >= axis[0] && at <= axis[last])) return [-1, 0];
  let i = 0;
  while (i < last - 1 && at > axis[i + 1]) i++;
  return [i, (at - axis[i]) / (axis[i + 1] - axis[i])];
}

/**
 * The most by which a figure may be off between the map's points: what its every second point misses, found again by
 * interpolation between the others, of a contact time as a share of it. That is the error of a map twice as coarse; where a figure is smooth this one's is a
 * quarter of it, at a bend half.
 */
export function missOf(map: Laid): Readonly<Record<Figure, number>> {
  const coarse = everySecond(map);
  return Object.fromEntries(
    FIGURES.map((figure) => {
      const misses = map.points.map((point) => {
        const value = point[figure];
        const again = figureAt(coarse, figure, point.x, point.y);
        if (value === null || again === null) return 0;
        return Math.abs(value - again) / (isContact(figure) ? value : 1);
      });
      return [figure, Math.max(0, ...misses)];
    }),
  ) as Record<Figure, number>;
}

function everySecond({ x, y, points }: Laid): Laid {
  const kept = (axis: readonly number[]): number[] =>
    axis.flatMap((_, i) => (i % 2 === 0 || i === axis.length - 1 ? [i] : []));
  const [columns, rows] = [kept(x), kept(y)];
  return {
    x: columns.map((i) => x[i]),
    y: rows.map((j) => y[j]),
    points: rows.flatMap((j) => columns.map((i) => points[j * x.length + i])),
  };
}
