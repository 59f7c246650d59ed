import { GRAVITY } from '../../sim/laws/constants.ts';
import { criticalDepth } from '../../sim/laws/sheet.ts';
import { circle, closed, type Mark, type Pixel, path, through } from './marks.ts';
import type { Scale } from './scale.ts';

/** Depth at a free brink over the critical depth of the flow: Rouse (1936), Civil Engineering 6(4), 0.715. */
const BRINK = 0.715;

/** Depth at the brink, m, of a sheet that stands this deep before it: never deeper than it comes. */
export function brinkDepth(flowPerWidth: number, before: number): number {
  return Math.min(Math.max(0, before), BRINK * criticalDepth(Math.max(0, flowPerWidth)));
}

/** Water on its way down from a brink to lower water. */
export interface Fall {
  readonly x: number;
  /** Elevation of the crest, and of the water it falls to, m. */
  readonly crest: number;
  readonly to: number;
  /** m³/s, and the width across, m. */
  readonly flow: number;
  readonly width: number;
  /** Depth at the brink, m. */
  readonly depth: number;
  /** Station beyond which it can't be thrown, m. */
  readonly limit: number;
}

const POINTS = 10;
/** Thinner than this a sheet is a single line, px. */
const LEAST = 0.35;

/** Middle of the falling sheet from the brink down, stations and elevations, m. */
export function trajectory(fall: Fall): [x: number, z: number][] {
  const perWidth = fall.width > 0 ? fall.flow / fall.width : 0;
  const yc = criticalDepth(Math.max(0, perWidth));
  const speed = yc > 0 ? perWidth / yc : 0;
  const start = fall.crest + fall.depth / 2;
  const drop = start - fall.to;
  if (!(drop > 0)) return [];
  const last = Math.sqrt((2 * drop) / GRAVITY);
  return Array.from({ length: POINTS + 1 }, (_, i) => {
    const t = (last * i) / POINTS;
    return [Math.min(fall.limit, fall.x + speed * t), start - 0.5 * GRAVITY * t * t];
  });
}

/**
 * A falling sheet: horizontal at the brink, a parabola by its speed there, as thick as its flow on the flow scale, with
 * two edges and one dashed streamline, down to the lower water; a little stir where it lands.
 *
 * @param flowScale px per m³/s
 * @param room elevation to which bubbles may reach, m
 */
export function fallMarks(fall: Fall, flowScale: number, room: number, scale: Scale): Mark[] {
  if (!(fall.flow > 1e-8)) return [];
  const middle = trajectory(fall).map(scale.at);
  if (middle.length === 0) return [];
  const brink = fall.depth * scale.k * scale.a;
  // In a close-up as thick as it is: flow per width over its speed, which grows as it falls.
  const full = Math.max(LEAST, scale.closeUp ? thicknessAfter(fall) * scale.a : fall.flow * flowScale);
  const upper: Pixel[] = [];
  const lower: Pixel[] = [];
  middle.forEach(([x, y], i) => {
    const share = Math.min(1, i / (0.5 * POINTS));
    const half = (brink + share * (full - brink)) / 2;
    const [bx, by] = middle[Math.max(0, i - 1)];
    const [ax, ay] = middle[Math.min(POINTS, i + 1)];
    const length = Math.hypot(ax - bx, ay - by) || 1;
    const [nx, ny] = i === 0 ? [0, -1] : [(ay - by) / length, -(ax - bx) / length];
    upper.push([x + half * nx, y + half * ny]);
    lower.push([x - half * nx, y - half * ny]);
  });
  const marks: Mark[] = [path(closed([...upper, ...[...lower].reverse()]), 'w1 nappe')];
  if (full > 1.4) marks.push(path(through(middle), 'streamline'));
  marks.push(path(through(upper) + through(lower), 'sheet-edge'));
  const [x, y] = middle[POINTS];
  return [...marks, ...landing(x, y, full, scale.y(room) - y)];
}

/** Thickness of a sheet where it lands, m: its flow per width over the speed of free fall from the critical speed. */
export function thicknessAfter({ crest, to, flow, width, depth }: Fall): number {
  const perWidth = flow / width;
  const speed = perWidth / criticalDepth(perWidth);
  return perWidth / Math.hypot(speed, Math.sqrt(2 * GRAVITY * Math.max(0, crest + depth / 2 - to)));
}

/** Two pairs of short arcs on the water, and bubbles where it is deep enough for them. */
function landing(x: number, y: number, thick: number, depth: number): Mark[] {
  const half = thick / 2 + 2.2;
  const arc = (reach: number, rise: number): string =>
    `M${(x - half).toFixed(1)} ${y.toFixed(1)}q${(-reach / 2).toFixed(1)} ${(-rise).toFixed(1)} ${(-reach).toFixed(1)} ${(-0.2 * rise).toFixed(1)}` +
    `M${(x + half).toFixed(1)} ${y.toFixed(1)}q${(reach / 2).toFixed(1)} ${(-rise).toFixed(1)} ${reach.toFixed(1)} ${(-0.2 * rise).toFixed(1)}`;
  const marks: Mark[] = [path(arc(3.6, 3.2) + arc(6.6, 4.8), 'splash')];
  const spots = [
    [-1.6, 5, 1],
    [2.4, 8, 1.2],
    [-0.4, 12, 0.9],
    [3.6, 15, 0.8],
    [-2.6, 9.5, 0.8],
  ] as const;
  const bubbles = spots.filter(([, down]) => down < depth - 3);
  if (bubbles.length > 0) marks.push(path(bubbles.map(([dx, dy, r]) => circle(x + dx, y + dy, r)).join(''), 'bubbles'));
  return marks;
}
