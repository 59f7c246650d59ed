/** The map's lines: marching squares at round levels, as polylines in the axes' own values. */
import { contours, ticks } from 'd3';
import type { Figure, OperatingMap } from './answer.ts';
import { straightened } from './between.ts';
import { straightOn } from './onset.ts';

type Place = readonly [x: number, y: number];

export interface MapLine {
  readonly level: number;
  /** Polylines of at least two places each; a closed one ends where it begins. */
  readonly pieces: readonly (readonly Place[])[];
}

type Laid = Pick<OperatingMap, 'x' | 'y' | 'points'>;

/**
 * The lines of a figure at a level. A line ends at the edge of the map and beside blank points.
 *
 * d3-contour closes its rings half a cell outside the grid: those parts are no lines, and are cut off, as is what lies beside a blank point.
 */
export function lineAt({ x, y, points }: Laid, figure: Figure, level: number): MapLine {
  const values = points.map((point) => point[figure]);
  const laid = filled(values, x.length).map((value) => straightened(figure, value));
  const { coordinates } = contours().size([x.length, y.length]).contour(laid, straightened(figure, level));
  const drawn = (a: readonly number[], b: readonly number[]): boolean => {
    const [i, j] = [cell(a[0], b[0]), cell(a[1], b[1])];
    if (i < 0 || j < 0 || i > x.length - 2 || j > y.length - 2) return false;
    const corner = j * x.length + i;
    return [0, 1, x.length, x.length + 1].every((k) => values[corner + k] !== null);
  };
  const place = ([column, row]: readonly number[]): Place => [valueAt(x, column - 0.5), valueAt(y, row - 0.5)];
  const pieces = coordinates.flat().flatMap((ring) => drawnPieces(ring, drawn).map((piece) => piece.map(place)));
  return { level, pieces };
}

/** Values without blanks, each the nearest in its row, of a blank row that of the next row: what is drawn of them is cut off. */
function filled(values: readonly (number | null)[], width: number): number[] {
  const rows = Array.from({ length: values.length / width }, (_, j) => values.slice(j * width, (j + 1) * width));
  const whole = rows.map((row) => nearestOf(row, (value) => value !== null));
  const some = nearestOf(whole, (row) => row.length > 0);
  return some.length > 0 ? some.flat().map((value) => value ?? 0) : values.map(() => 0);
}

/** A list with each item that will not do replaced by the nearest that does; empty where none does. */
function nearestOf<T>(items: readonly T[], does: (item: T) => boolean): T[] {
  const good = items.flatMap((item, i) => (does(item) ? [i] : []));
  if (good.length === 0) return [];
  return items.map((_, i) => items[good.reduce((a, b) => (Math.abs(b - i) < Math.abs(a - i) ? b : a))]);
}

/** The cell of the grid in which a step between two places lies. */
const cell = (a: number, b: number): number => Math.floor((a + b) / 2 - 0.5);

/** A ring's parts that are drawn; the ring begins anew where it is cut. */
function drawnPieces(
  ring: readonly number[][],
  drawn: (a: readonly number[], b: readonly number[]) => boolean,
): number[][][] {
  const steps = ring.length - 1;
  const kept = Array.from({ length: steps }, (_, k) => drawn(ring[k], ring[k + 1]));
  const cut = kept.indexOf(false);
  if (cut < 0) return [[...ring]];
  const pieces: number[][][] = [];
  let piece: number[][] = [];
  for (let n = 1; n <= steps; n++) {
    const k = (cut + n) % steps;
    if (kept[k]) {
      if (piece.length === 0) piece.push(ring[k]);
      piece.push(ring[k + 1]);
    } else if (piece.length > 0) {
      pieces.push(piece);
      piece = [];
    }
  }
  return pieces;
}

function valueAt(axis: readonly number[], at: number): number {
  const i = Math.min(axis.length - 2, Math.max(0, Math.floor(at)));
  return axis[i] + (at - i) * (axis[i + 1] - axis[i]);
}

/** The border of the region where all checks hold, and the onset of lift. */
export const borderOf = (map: Laid): MapLine => lineAt(straightOn(map, 'margin'), 'margin', 0);
export const liftOnset = (map: Laid): MapLine => lineAt(straightOn(map, 'lift'), 'lift', 1);

/** The region itself: rings in the axes' values, closed along the map's edge; holes among them. */
export function regionOf(map: Laid): readonly (readonly Place[])[] {
  const { x, y, points } = straightOn(map, 'margin');
  const values = points.map(({ margin }) => margin ?? Number.NaN);
  const { coordinates } = contours().size([x.length, y.length]).contour(values, 0);
  const onto = (at: number, length: number): number => Math.min(length - 1, Math.max(0, at - 0.5));
  return coordinates
    .flat()
    .map((ring) =>
      ring.map(([column, row]): Place => [valueAt(x, onto(column, x.length)), valueAt(y, onto(row, y.length))]),
    );
}

/**
 * Round levels of a figure that its map crosses, at most `most`.
 *
 * @param unit one of the unit the levels are round in, SI
 * @param least steps smaller than this many units tell nothing: then there is no level
 */
export function roundLevels({ points }: Laid, figure: Figure, unit: number, most: number, least = 0): number[] {
  const values = points.flatMap((point) => point[figure] ?? []).sort((a, b) => a - b);
  if (values.length === 0) return [];
  // The few greatest (a contact time near a shut valve) would leave all lines in a corner.
  const high = values[Math.floor(0.95 * (values.length - 1))];
  const low = values[0];
  const levels = ticks(low / unit, high / unit, most);
  if (!(high - low > 1e-9 * Math.abs(high)) || (levels.length > 1 && levels[1] - levels[0] < least)) return [];
  return levels.map((each) => each * unit).filter((level) => level > low && level < values[values.length - 1]);
}
