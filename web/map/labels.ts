/** Words seated on a map's lines: each on its line, none on another. Pure. */
import { textWidth } from '../plots/text-width.ts';
import type { Pixel } from '../section/marks.ts';

export interface Seat {
  readonly text: string;
  /** Middle of the text's baseline, px. */
  readonly x: number;
  readonly y: number;
  readonly italic: boolean;
}

export interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const SIZE = 13;
const [RISE, SINK] = [10, 4];
const PAD = 3;

const areaOf = (text: string, [x, y]: Pixel, italic: boolean): Area => {
  const half = textWidth(text, SIZE, italic) / 2 + PAD;
  return { left: x - half, right: x + half, top: y - RISE - PAD, bottom: y + SINK + PAD };
};

const overlap = (a: Area, b: Area): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const within = (a: Area, b: Area): boolean =>
  a.left >= b.left && a.right <= b.right && a.top >= b.top && a.bottom <= b.bottom;

/** Shares of a line's length at which its words are tried. */
const TRIED = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9];

export class Seating {
  readonly seats: Seat[] = [];
  private readonly taken: Area[];
  private readonly plane: Area;

  constructor(plane: Area, taken: readonly Area[]) {
    this.plane = plane;
    this.taken = [...taken];
  }

  /** Seats one of some wordings of a line, the first that fits on its longest pieces; false where none does. */
  onLine(pieces: readonly (readonly Pixel[])[], wordings: readonly string[]): boolean {
    const longest = [...pieces].sort((a, b) => lengthOf(b) - lengthOf(a)).slice(0, 2);
    for (const text of wordings)
      for (const piece of longest)
        for (const part of TRIED) {
          const [x, y] = along(piece, part);
          if (this.at(text, [x, y + (RISE - SINK) / 2], false)) return true;
        }
    return false;
  }

  /** Seats one of some wordings so that it begins or ends at a line, where there is room along it; false where none fits. */
  besideLine(line: readonly Pixel[], wordings: readonly string[]): boolean {
    return wordings.some((text) => {
      const aside = textWidth(text, SIZE, true) / 2 + 2 * PAD;
      return [...TRIED, 0, 1].some((part) => {
        const [x, y] = along(line, part);
        return [aside, -aside].some((by) => this.at(text, [x + by, y + (RISE - SINK) / 2], true));
      });
    });
  }

  /** Seats words at a place; false where others are. */
  at(text: string, place: Pixel, italic: boolean): boolean {
    const area = areaOf(text, place, italic);
    if (!within(area, this.plane) || this.taken.some((other) => overlap(area, other))) return false;
    this.taken.push(area);
    this.seats.push({ text, x: place[0], y: place[1], italic });
    return true;
  }
}

function lengthOf(points: readonly Pixel[]): number {
  let sum = 0;
  for (let k = 1; k < points.length; k++)
    sum += Math.hypot(points[k][0] - points[k - 1][0], points[k][1] - points[k - 1][1]);
  return sum;
}

/** The point at a share of a line's length. */
function along(points: readonly Pixel[], part: number): Pixel {
  let left = part * lengthOf(points);
  for (let k = 1; k < points.length; k++) {
    const [[x1, y1], [x2, y2]] = [points[k - 1], points[k]];
    const step = Math.hypot(x2 - x1, y2 - y1);
    if (step >= left && step > 0) return [x1 + ((x2 - x1) * left) / step, y1 + ((y2 - y1) * left) / step];
    left -= step;
  }
  return points[points.length - 1];
}
