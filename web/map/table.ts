/** The map's own numbers as a table: a row for each setting of the top valve, a column for each of the bottom one. Pure. */
import type { MapPoint, OperatingMap } from '../../sim/map/answer.ts';
import { handleWords, shareWords } from '../../sim/map/words.ts';
import type { Family } from './families.ts';

export interface MapTable {
  readonly corner: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
}

/** Steps that are told: 15° of a handle, a tenth of the speed (which begins at 40 %), a fifth of the share. */
const STEPS = { valves: { x: 1 / 6, y: 1 / 6 }, flow: { x: 0.1, y: 0.2 } } as const;

/** @param family undefined: the check that fails first */
export function tableOf({ plane, x, y, points }: OperatingMap, family: Family | undefined): MapTable {
  const told = (axis: readonly number[], step: number): number[] =>
    axis.flatMap((value, i) => (Math.abs(value / step - Math.round(value / step)) < 1e-9 ? [i] : []));
  const words = plane === 'valves' ? handleWords : shareWords;
  const cell = (point: MapPoint): string => {
    if (!point.found) return '–';
    if (!family) return point.fails ?? 'hold';
    const value = point[family.figure];
    return value === null ? '–' : family.level(value);
  };
  const columns = told(x, STEPS[plane].x);
  return {
    corner:
      plane === 'valves'
        ? 'top valve, and the bottom valve across'
        : 'share by the bottom feed, and the pump’s speed across',
    columns: columns.map((i) => words(x[i])),
    rows: told(y, STEPS[plane].y)
      .reverse()
      .map((j) => ({ name: words(y[j]), cells: columns.map((i) => cell(points[j * x.length + i])) })),
  };
}
