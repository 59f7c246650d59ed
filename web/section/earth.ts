import { type Random, randomStream } from '../../sim/random.ts';
import type { Spot } from './cut.ts';
import type { Scale } from './scale.ts';

/** Reach of the dots from the cut face, px, and their spacing at the face and at its end. */
const REACH = 78;
const NEAR = 2.25;
const FAR = 9.5;
/** Most dots of a drawing. */
export const MOST_DOTS = 2500;
/** Cell of the field of distances, px. */
const CELL = 3;
/** Side of the tile of points from which dots are taken, px. */
const TILE = 208;

interface Point {
  readonly x: number;
  readonly y: number;
  /** No point of a rank as great or greater is nearer than this, px. */
  readonly rank: number;
}

let tile: readonly Point[] | undefined;

/**
 * Points so spread that those of every rank and above are evenly apart: a coarse set with finer ones between. Thrown
 * once, in some 70 ms: asked for early, that is done before there is a site to draw.
 */
export function pointTile(): readonly Point[] {
  tile ??= throwPoints(randomStream('earth'));
  return tile;
}

function throwPoints(random: Random): Point[] {
  const points: Point[] = [];
  const size = 8;
  const side = TILE / size;
  const grid: Point[][] = Array.from({ length: side * side }, () => []);
  for (let rank = 14; rank >= NEAR; rank *= 0.92) {
    const throws = Math.round((2.6 * TILE * TILE) / (rank * rank));
    for (let i = 0; i < throws; i++) {
      const point = { x: random() * TILE, y: random() * TILE, rank };
      if (isFree(point, grid, side, size)) {
        points.push(point);
        grid[Math.floor(point.y / size) * side + Math.floor(point.x / size)].push(point);
      }
    }
  }
  return points;
}

function isFree({ x, y, rank }: Point, grid: Point[][], side: number, size: number): boolean {
  const around = Math.ceil(rank / size);
  const column = Math.floor(x / size);
  const row = Math.floor(y / size);
  for (let r = row - around; r <= row + around; r++) {
    for (let c = column - around; c <= column + around; c++) {
      for (const other of grid[((r + side) % side) * side + ((c + side) % side)]) {
        const dx = Math.abs(other.x - x);
        const dy = Math.abs(other.y - y);
        if (Math.hypot(Math.min(dx, TILE - dx), Math.min(dy, TILE - dy)) < rank) return false;
      }
    }
  }
  return true;
}

/** Distance of every cell of the sheet from the nearest that is not earth, px; 0 outside the earth. */
class Depths {
  private readonly columns: number;
  private readonly rows: number;
  private readonly values: Float32Array;

  constructor(line: readonly Spot[], scale: Scale) {
    this.columns = Math.ceil(scale.width / CELL);
    this.rows = Math.ceil((scale.bottom + REACH) / CELL);
    this.values = new Float32Array(this.columns * this.rows).fill(1e6);
    this.carveSky(line.map(scale.at));
    this.sweep();
  }

  /** Marks what lies above the line, row by row: the stretches between its crossings. */
  private carveSky(line: readonly (readonly [number, number])[]): void {
    const first = line[0];
    const last = line[line.length - 1];
    const outline = [[-9, -9], [-9, first[1]], ...line, [1e5, last[1]], [1e5, -9]] as const;
    for (let row = 0; row < this.rows; row++) {
      const y = (row + 0.5) * CELL;
      const crossings: number[] = [];
      outline.forEach(([x0, y0], i) => {
        const [x1, y1] = outline[(i + 1) % outline.length];
        if (y0 <= y !== y1 <= y) crossings.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
      });
      crossings.sort((p, q) => p - q);
      for (let i = 0; i + 1 < crossings.length; i += 2) {
        const from = Math.max(0, Math.round(crossings[i] / CELL));
        const to = Math.min(this.columns, Math.round(crossings[i + 1] / CELL));
        if (to > from) this.values.fill(0, row * this.columns + from, row * this.columns + to);
      }
    }
  }

  private sweep(): void {
    const { columns, rows, values } = this;
    const slant = Math.SQRT2;
    const take = (i: number, from: number, by: number): void => {
      if (values[from] + by < values[i]) values[i] = values[from] + by;
    };
    for (let i = 0; i < values.length; i++) {
      if (i % columns > 0) take(i, i - 1, 1);
      if (i < columns) continue;
      take(i, i - columns, 1);
      if (i % columns > 0) take(i, i - columns - 1, slant);
      if (i % columns < columns - 1) take(i, i - columns + 1, slant);
    }
    for (let i = values.length - 1; i >= 0; i--) {
      if (i % columns < columns - 1) take(i, i + 1, 1);
      if (i >= columns * (rows - 1)) continue;
      take(i, i + columns, 1);
      if (i % columns > 0) take(i, i + columns - 1, slant);
      if (i % columns < columns - 1) take(i, i + columns + 1, slant);
    }
  }

  at(x: number, y: number): number {
    const column = Math.floor(x / CELL);
    const row = Math.floor(y / CELL);
    if (column < 0 || column >= this.columns || row < 0 || row >= this.rows) return 0;
    return CELL * this.values[row * this.columns + column];
  }
}

/** Spacing of the dots at a depth behind the cut face, px. */
const spacingAt = (depth: number): number => NEAR + (FAR - NEAR) * (depth / REACH) ** 1.15;

/**
 * Earth as dots, dense at the cut face and thinning into bare paper: a path of points for a round pen. The same line
 * gives the same dots, and a line moved a little moves only the dots beside it.
 */
export function stipple(line: readonly Spot[], scale: Scale): string {
  const depths = new Depths(line, scale);
  const dots: { x: number; y: number; slack: number }[] = [];
  for (let top = 0; top < scale.bottom + REACH; top += TILE) {
    for (let left = 0; left < scale.width; left += TILE) {
      for (const point of pointTile()) {
        const x = left + point.x;
        const y = top + point.y;
        if (x < scale.left || x > scale.right || y > scale.bottom + 8) continue;
        const depth = depths.at(x, y);
        if (depth < CELL || depth > REACH) continue;
        const thinning = depth < REACH / 2 ? 1 : 1 + (depth - REACH / 2) / (0.8 * REACH);
        const slack = point.rank / (spacingAt(depth) * thinning);
        if (slack >= 1) dots.push({ x, y, slack });
      }
    }
  }
  const least = dots.length > MOST_DOTS ? dots.map((d) => d.slack).sort((p, q) => q - p)[MOST_DOTS - 1] : 1;
  const kept = dots.filter(({ slack }) => slack >= least).slice(0, MOST_DOTS);
  return kept.map(({ x, y }) => `M${x.toFixed(1)} ${y.toFixed(1)}h0`).join('');
}
