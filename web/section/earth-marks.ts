import type { Spot } from './cut.ts';
import { stipple } from './earth.ts';
import { type Mark, type Pixel, path, rounded } from './marks.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';

/** The earth's dots, the ground's line at both sides, and the liner on its underlay. */
export function earthMarks(scene: Scene, scale: Scale): Mark[] {
  const { earth, liner } = scene;
  const first = earth[0];
  const last = earth[earth.length - 1];
  const line: Spot[] = [[scale.from, first[1]], ...earth, [scale.to, last[1]]];
  // Vessels draw their own outer line; the ground's is drawn up to them.
  const hill = line.slice(0, line.indexOf(liner[0][0]) + 1);
  const steep = hill.findIndex(([x], i) => i > 1 && x === hill[i - 1][0]);
  const ground = [steep > 0 ? hill.slice(0, steep) : hill, line.slice(-3)].map((run) => run.map(scale.at));
  const sheet = liner.map((run) => run.map(scale.at));
  return [
    path(stipple(line, scale), 'stipple'),
    ...ground.map((run) => path(rounded(run, 22), 'ground')),
    ...sheet.map((run) => path(rounded(aside(run, 3), 4), 'underlay')),
    ...sheet.map((run) => path(rounded(run, 4), 'liner')),
  ];
}

/** A line so far on the outer side of another, px: to the left of its way, below and outside of basins. */
function aside(points: readonly Pixel[], by: number): Pixel[] {
  const kept = points.filter(([x, y], i) => i === 0 || Math.hypot(x - points[i - 1][0], y - points[i - 1][1]) > 0.5);
  return kept.map(([x, y], i): Pixel => {
    const normals = [kept[i - 1] && normal(kept[i - 1], kept[i]), kept[i + 1] && normal(kept[i], kept[i + 1])].filter(
      (n) => n !== undefined,
    );
    const nx = normals.reduce((sum, n) => sum + n[0], 0);
    const ny = normals.reduce((sum, n) => sum + n[1], 0);
    const length = Math.max(0.7, Math.hypot(nx, ny) ** 2 / normals.length);
    return [x + (by * nx) / length, y + (by * ny) / length];
  });
}

function normal([x0, y0]: Pixel, [x1, y1]: Pixel): Pixel {
  const length = Math.hypot(x1 - x0, y1 - y0) || 1;
  return [-(y1 - y0) / length, (x1 - x0) / length];
}
