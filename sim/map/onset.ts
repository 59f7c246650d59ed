/** Where media begin to float a map's figures bend: its lines there are sought from the side on which they lie still. */
import type { MapPoint, OperatingMap } from './answer.ts';
import { isLifted } from './region.ts';

type Laid = Pick<OperatingMap, 'x' | 'y' | 'points'>;

/**
 * The map with a figure beyond the onset as if it went on straight: once the media float, their head hardly grows, and a
 * line laid between a point on either side would lie up to a step too far.
 */
export function straightOn(map: Laid, figure: 'lift' | 'margin'): Laid {
  const further = (value: number, on: readonly number[]): number =>
    figure === 'lift' ? Math.max(value, ...on) : Math.min(value, ...on);
  const points = map.points.map((point, k) => {
    const value = point[figure];
    if (value === null || !isLifted(point)) return point;
    const on = goneOn(map, k, figure);
    return on.length === 0 ? point : { ...point, [figure]: further(value, [mean(on)]) };
  });
  return { ...map, points };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** What each two neighbors in line with a point come to there, where in both the media lie still. */
function goneOn({ x, y, points }: Laid, k: number, figure: 'lift' | 'margin'): number[] {
  const [i, j] = [k % x.length, Math.floor(k / x.length)];
  const ways = [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const;
  return ways.flatMap(([di, dj]) => {
    const at = (n: number): MapPoint | undefined =>
      inside(i + n * di, x.length) && inside(j + n * dj, y.length)
        ? points[(j + n * dj) * x.length + i + n * di]
        : undefined;
    const [near, far] = [at(1), at(2)];
    if (!near || !far || isLifted(near) || isLifted(far)) return [];
    const [a, b] = [near[figure], far[figure]];
    const along = di === 0 ? 'y' : 'x';
    if (a === null || b === null) return [];
    return [a + ((a - b) * (points[k][along] - near[along])) / (near[along] - far[along])];
  });
}

const inside = (at: number, length: number): boolean => at >= 0 && at < length;
