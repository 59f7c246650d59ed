/** Plain geometry of the sheet, px: x to the right, y downward. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type Segment = readonly [Point, Point];

export const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

/** Whether two boxes share more than a border. */
export const boxesMeet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const boxHolds = (outer: Box, inner: Box): boolean =>
  inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom;

export function boxRound(points: readonly Point[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

export const cornersOf = ({ left, top, right, bottom }: Box): Point[] => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
];

export function segmentsOf(points: readonly Point[], closed = false): Segment[] {
  const segments: Segment[] = [];
  for (let i = 1; i < points.length; i++) segments.push([points[i - 1], points[i]]);
  if (closed && points.length > 2) segments.push([points[points.length - 1], points[0]]);
  return segments;
}

/** Whether a segment passes through the inside of a box: what is left of it after each side's cut. */
export function segmentMeetsBox([a, b]: Segment, box: Box): boolean {
  let from = 0;
  let to = 1;
  const cut = (start: number, change: number, low: number, high: number): boolean => {
    if (change === 0) return start > low && start < high;
    const [one, other] = [(low - start) / change, (high - start) / change];
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
    return from < to;
  };
  // A point is a segment without length.
  if (a.x === b.x && a.y === b.y) return a.x > box.left && a.x < box.right && a.y > box.top && a.y < box.bottom;
  return cut(a.x, b.x - a.x, box.left, box.right) && cut(a.y, b.y - a.y, box.top, box.bottom);
}

/** Whether a point lies inside a closed outline: odd number of sides to its right. */
export function outlineHolds(outline: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  for (const [a, b] of segmentsOf(outline, true)) {
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

function toSegment(p: Point, [a, b]: Segment): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const size = dx * dx + dy * dy;
  const along = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / size));
  return Math.hypot(p.x - a.x - along * dx, p.y - a.y - along * dy);
}

const side = ([a, b]: Segment, p: Point): number => Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));

/** Whether two segments pass through each other. */
export const segmentsCross = (one: Segment, other: Segment): boolean =>
  side(one, other[0]) * side(one, other[1]) < 0 && side(other, one[0]) * side(other, one[1]) < 0;

/** Whether two segments come nearer to each other than a distance. */
export function segmentsNear(one: Segment, other: Segment, distance: number): boolean {
  const [[a, b], [c, d]] = [one, other];
  if (Math.max(a.x, b.x) + distance < Math.min(c.x, d.x) || Math.max(c.x, d.x) + distance < Math.min(a.x, b.x))
    return false;
  if (Math.max(a.y, b.y) + distance < Math.min(c.y, d.y) || Math.max(c.y, d.y) + distance < Math.min(a.y, b.y))
    return false;
  if (segmentsCross(one, other)) return true;
  const nearest = Math.min(toSegment(a, other), toSegment(b, other), toSegment(c, one), toSegment(d, one));
  return nearest < distance;
}

/** Whether two segments stand at right angles, to about a degree. */
export function atRightAngles([a, b]: Segment, [c, d]: Segment): boolean {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  return Math.abs(ux * vx + uy * vy) <= 0.02 * Math.hypot(ux, uy) * Math.hypot(vx, vy);
}
