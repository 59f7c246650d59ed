import { waterAt } from './bodies.ts';
import { type Mark, path, segment } from './marks.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';

/** What falls from the top feed's open end to the water under it; nothing where the end is drowned. */
export function jetMarks(
  scene: Scene,
  flow: number,
  levels: Readonly<Record<string, number>>,
  flowScale: number,
  scale: Scale,
): Mark[] {
  const { topFeed, topTo } = scene.pipes;
  if (!topFeed || !(flow > 1e-7)) return [];
  const [x, z] = topFeed.spots[topFeed.spots.length - 1];
  const into = scene.reaches.findIndex(({ reach }) => reach.name === topTo);
  const level = topTo === 'filter' ? levels.filter : waterAt(scene, into < 0 ? scene.reaches.length : into, x, levels);
  if (!(level < z)) return [];
  const [px, py] = scale.at([x, z]);
  return [path(segment(px, py, px, scale.y(level)), 'jet', { stroke: Math.max(0.6, flow * flowScale) })];
}
