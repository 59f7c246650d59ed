import { floorOf, leftAt, rightAt, type Spot } from './cut.ts';
import { circle, type Mark, path, px, rounded, segment } from './marks.ts';
import { boreWidth, wallsOf } from './pipes.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';

/** Station of the overflow's mouth, m: clear of what falls in on the left. */
export const overflowAt = ({ pond, units }: Scene): number =>
  Math.min(pond.cut.left + 0.6 * units.u + 0.12 * pond.cut.width, pond.cut.left + 0.4 * pond.cut.width);

/** The overflow's way: from its mouth down, out through the bank and away. */
function overflowWay(scene: Scene): readonly Spot[] {
  const { pond, units } = scene;
  const x = overflowAt(scene);
  const out = pond.rim - 0.62 * (pond.rim - floorOf(pond.cut));
  const mouth = scene.scenario.pond.overflow?.elevation ?? pond.rim;
  return [
    [x, mouth],
    [x, Math.min(out, mouth)],
    [leftAt(pond.cut, out) - 0.9 * units.u, Math.min(out, mouth)],
  ];
}

/** The overflow: a standpipe with its mouth at its elevation, out through the bank below and away. */
export function overflowMarks(scene: Scene, scale: Scale): Mark[] {
  const { overflow } = scene.scenario.pond;
  if (!overflow) return [];
  const way = overflowWay(scene).map(scale.at);
  const line = rounded(way, 7);
  const [ax, ay] = way[2];
  const bore = boreWidth(overflow.diameter, scale);
  const arrow = `M${px(ax - 10)} ${px(ay - 3)}L${px(ax - 14)} ${px(ay)}L${px(ax - 10)} ${px(ay + 3)}`;
  return [
    path(line, 'pipe-wall', { stroke: bore + wallsOf(scale) }),
    path(line, 'pipe-bore', { stroke: bore }),
    path(segment(ax - 4, ay, ax - 14, ay) + arrow, 'thin'),
  ];
}

/** What runs down the overflow, as wide as its flow. */
export function overflowFlow(scene: Scene, flow: number, flowScale: number, scale: Scale): Mark[] {
  if (!scene.scenario.pond.overflow || !(flow > 1e-7)) return [];
  return [path(rounded(overflowWay(scene).map(scale.at), 7), 'ribbon', { stroke: Math.max(0.5, flow * flowScale) })];
}

/** The autofill's float at the water in its basin, on an arm from the wall. */
export function floatMarks(scene: Scene, levels: Readonly<Record<string, number>>, scale: Scale): Mark[] {
  const { autofill } = scene.scenario;
  if (!autofill) return [];
  const inVault = autofill.in === 'vault';
  const { pond, vault, units } = scene;
  const wall = inVault ? vault.cut.left + vault.cut.width : rightAt(pond.cut, pond.rim);
  const [x, y] = scale.at([wall, autofill.set + 0.1 * units.v]);
  const reach = Math.min(26, 0.45 * scale.a * (inVault ? vault.cut.width : pond.cut.width));
  const level = scale.y(levels[autofill.in] ?? autofill.set);
  const down = Math.min(y + 0.8 * reach, Math.max(y - 0.5 * reach, level));
  return [
    path(segment(x, y, x - reach + 3, down), 'handle thin'),
    path(circle(x - reach, down, 3.2), 'fitting'),
    path(circle(x, y, 1.6), 'dot'),
  ];
}

/** Hoses that run: in from the upper left, their ends kept above the edge, and what falls from them. */
export function hoseMarks(
  scene: Scene,
  running: readonly boolean[],
  flowScale: number,
  level: number,
  scale: Scale,
): Mark[] {
  const { pond, units, scenario } = scene;
  return scenario.hoses.flatMap((hose, i) => {
    if (!running[i]) return [];
    const x = pond.cut.left + (0.58 + 0.07 * i) * pond.cut.width;
    const [ex, ey] = scale.at([x, pond.rim + 0.22 * units.v]);
    const from = ex - 0.16 * scale.a * pond.cut.width - 20;
    const d = `M${from.toFixed(1)} ${(ey - 16).toFixed(1)}C${(from + 24).toFixed(1)} ${(ey - 34).toFixed(1)} ${(ex - 3).toFixed(1)} ${(ey - 32).toFixed(1)} ${ex.toFixed(1)} ${ey.toFixed(1)}`;
    const water = Math.max(1.2, hose.flow * flowScale);
    return [
      path(d, 'pipe-wall', { stroke: 3 + wallsOf(scale) }),
      path(d, 'pipe-bore', { stroke: 3 }),
      path(d, 'ribbon', { stroke: Math.min(2.4, water) }),
      path(segment(ex, ey, ex + 1.5, scale.y(Math.min(level, pond.rim))), 'ribbon', { stroke: water }),
    ];
  });
}
