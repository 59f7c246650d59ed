/** What a drawing is made of: plain data, rendered by the page or written out as SVG text. */

/** A path with the classes that say how it looks; `clip`: the id of a clip path. */
export interface PathMark {
  readonly kind: 'path';
  readonly d: string;
  readonly look: string;
  readonly clip?: string;
  /** Of its line. */
  readonly opacity?: number;
  /** Width of its line, px, where it tells something. */
  readonly stroke?: number;
}

export interface TextMark {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly look: string;
  readonly at: 'start' | 'middle' | 'end';
}

export type Mark = PathMark | TextMark;

/** An outline marks may be clipped by. */
export interface Clip {
  readonly id: string;
  readonly d: string;
}

/** A point of the sheet, px. */
export type Pixel = readonly [x: number, y: number];

/** A figure of a path, to a tenth of a pixel. */
export const px = (value: number): string => String(Math.round(value * 10) / 10);

export const path = (
  d: string,
  look: string,
  more: { clip?: string; opacity?: number; stroke?: number } = {},
): PathMark => ({
  kind: 'path',
  d,
  look,
  ...more,
});

export const words = (x: number, y: number, text: string, look: string, at: TextMark['at'] = 'start'): TextMark => ({
  kind: 'text',
  x,
  y,
  text,
  look,
  at,
});

/** A line through points. */
export function through(points: readonly Pixel[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');
}

export const closed = (points: readonly Pixel[]): string => `${through(points)}Z`;

export const segment = (x1: number, y1: number, x2: number, y2: number): string =>
  `M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}`;

export const box = (x: number, y: number, width: number, height: number): string =>
  `M${px(x)} ${px(y)}h${px(width)}v${px(height)}h${px(-width)}Z`;

export const circle = (x: number, y: number, r: number): string =>
  `M${px(x - r)} ${px(y)}a${px(r)} ${px(r)} 0 1 0 ${px(2 * r)} 0a${px(r)} ${px(r)} 0 1 0 ${px(-2 * r)} 0Z`;

/** A line whose corners are rounded to at most a radius. */
export function rounded(points: readonly Pixel[], radius: number): string {
  const out: string[] = [];
  points.forEach((point, i) => {
    const before = points[i - 1];
    const after = points[i + 1];
    if (!before || !after) {
      out.push(`${i === 0 ? 'M' : 'L'}${px(point[0])} ${px(point[1])}`);
      return;
    }
    const [x1, y1] = toward(point, before, radius);
    const [x2, y2] = toward(point, after, radius);
    out.push(`L${px(x1)} ${px(y1)}Q${px(point[0])} ${px(point[1])} ${px(x2)} ${px(y2)}`);
  });
  return out.join('');
}

function toward([x, y]: Pixel, [tx, ty]: Pixel, radius: number): Pixel {
  const length = Math.hypot(tx - x, ty - y);
  if (length === 0) return [x, y];
  const share = Math.min(radius, length / 2) / length;
  return [x + share * (tx - x), y + share * (ty - y)];
}

/**
 * A curve through points, each handle `tension` of the way between a point's neighbors: small values are nearly straight.
 *
 * @param highest y above which no handle may draw the curve, px
 */
export function curve(points: readonly Pixel[], tension: number, close = false, highest = -1e9): string {
  const n = points.length;
  const at = (i: number): Pixel => (close ? points[(i + n) % n] : points[Math.min(n - 1, Math.max(0, i))]);
  let d = `M${px(points[0][0])} ${px(points[0][1])}`;
  for (let i = 0; i < (close ? n : n - 1); i++) {
    const [p0, p1, p2, p3] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const c1: Pixel = [p1[0] + tension * (p2[0] - p0[0]), Math.max(highest, p1[1] + tension * (p2[1] - p0[1]))];
    const c2: Pixel = [p2[0] - tension * (p3[0] - p1[0]), Math.max(highest, p2[1] - tension * (p3[1] - p1[1]))];
    d += `C${px(c1[0])} ${px(c1[1])} ${px(c2[0])} ${px(c2[1])} ${px(p2[0])} ${px(p2[1])}`;
  }
  return close ? `${d}Z` : d;
}

/** Marks that follow each other inside one clip, or outside any. */
export interface Clipped {
  readonly clip: string | undefined;
  readonly marks: readonly Mark[];
}

const clipOf = (mark: Mark): string | undefined => (mark.kind === 'path' ? mark.clip : undefined);

/** Marks in their order by the clips they share: a clip costs a browser as much for one mark as for twenty. */
export function byClip(marks: readonly Mark[]): Clipped[] {
  const groups: { clip: string | undefined; marks: Mark[] }[] = [];
  for (const mark of marks) {
    const last = groups[groups.length - 1];
    if (last && last.clip === clipOf(mark)) last.marks.push(mark);
    else groups.push({ clip: clipOf(mark), marks: [mark] });
  }
  return groups;
}
