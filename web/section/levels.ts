import type { RunAnswer } from '../../sim/results/answer.ts';
import { leftAt } from './cut.ts';
import { type Mark, path, segment } from './marks.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';

/** Edge dash-dot, fill mark dotted, highest and lowest reached dashed: lines across the pond. */
export function levelMarks(scene: Scene, answer: RunAnswer | undefined, scale: Scale): Mark[] {
  const { pond, vault, scenario } = scene;
  const right = vault.cut.left - vault.wall;
  // Lines begin at the face of what stands in the water under the last fall.
  const face = scene.walls.reduce(
    (far, wall) => (wall.into === scene.reaches.length ? wall.right : far),
    pond.cut.left,
  );
  const across = (z: number, look: string, out = 0): Mark => {
    const from = scale.x(Math.max(face, leftAt(pond.cut, z))) - out;
    return path(segment(from, scale.y(z), scale.x(right), scale.y(z)), look);
  };
  const marks: Mark[] = [
    path(
      segment(scale.left, scale.y(pond.rim), scale.x(right) + 0.6 * scale.a * scene.units.u, scale.y(pond.rim)),
      'edge-line',
    ),
  ];
  const { fillMark } = scenario.pond;
  if (fillMark !== undefined) marks.push(across(fillMark, 'fill-mark'));
  const range = answer?.levels.pond;
  if (range) {
    marks.push(across(range.max.value, 'reached'));
    if (range.max.value - range.min.value > 1e-4) marks.push(across(range.min.value, 'reached'));
  }
  return marks;
}
