import { circle, type Mark, path, words } from '../marks.ts';
import type { Scale } from '../scale.ts';
import type { Scene } from '../scene.ts';
import { detailMarks, windowMarks } from './detailMarks.ts';
import { type Dimension, dimensionNow } from './dimension.ts';
import { fallHeights } from './heights.ts';
import { dimensionMarks, lineOf } from './markShapes.ts';
import type { SceneWords } from './ofScene.ts';
import type { Measure, Placed } from './request.ts';
import { spotsOf } from './sceneRequests.ts';
import type { Point } from './shapes.ts';
import { DOT } from './sheet.ts';
import type { Subject } from './text.ts';
import { labelTexts, reworded } from './texts.ts';
import { tideMarks } from './tideMarks.ts';

/** A label whose anchor stands on water follows it up and down; its text stays where it is. */
function following(label: Placed, anchor: Point | undefined): Placed {
  const { dot, leader, box } = label;
  if (!dot || !anchor) return label;
  const { y } = anchor;
  const upright = leader.every(({ x }) => x === dot.x);
  // Water that has risen into a text over it would turn an upright leader round.
  if (upright && (dot.y > box.bottom ? y <= box.bottom + 1 : y >= box.top - 1)) return label;
  const moved = leader.map((p, i) => (i > 0 && p.y === dot.y ? { x: p.x, y } : p));
  return { ...label, dot: { x: dot.x, y }, leader: moved };
}

/** Depth from which the tints take white text, m: half of the band between the pale ones and the deep ones. */
const DEEP = 0.375;

/** What a text in its own water stands on as the water moves: pale or deep water, or the dry wall behind it. */
function groundAt(label: Placed, surface: number | undefined, pxPerMeter: number): Placed['ground'] {
  if (label.seat !== 'inside water' || surface === undefined) return label.ground;
  const { top, bottom } = label.box;
  if (surface > top + 2) return 'earth';
  return ((top + bottom) / 2 - surface) / pxPerMeter < DEEP ? 'pale water' : 'deep water';
}

const looks: Readonly<Record<Placed['ground'], string>> = {
  paper: '',
  earth: ' halo',
  'pale water': ' pale',
  'deep water': ' deep',
};

function labelMarks({ lines, leader, dot, ground }: Placed): Mark[] {
  const texts = lines.map(({ text, style, x, y }) => words(x, y, text, `label ${style}${looks[ground]}`));
  return dot ? [path(lineOf(leader), 'leader'), path(circle(dot.x, dot.y, DOT), 'dot'), ...texts] : texts;
}

/** Falls measured down to the water of the moment. */
function dimensionsNow(placed: SceneWords, scene: Scene, scale: Scale, { moment, display }: Subject): Dimension[] {
  const falls = fallHeights(scene, scale, moment.levels);
  return placed.dimensions.flatMap((dimension) => {
    const fall = falls.find(({ id }) => id === dimension.id);
    return (fall && dimensionNow(dimension, fall, scale.y, display)) ?? [];
  });
}

/** The words of a drawing as they stand at a moment: labels, dimensions, and the detail with its water. */
export function wordMarks(placed: SceneWords, scene: Scene, scale: Scale, subject: Subject, measure: Measure): Mark[] {
  const { levels } = subject.moment;
  const spots = spotsOf(scene, scale, levels);
  const labels = reworded(placed.labels, labelTexts(subject), measure);
  return [
    ...dimensionsNow(placed, scene, scale, subject).flatMap(dimensionMarks),
    ...tideMarks(placed.tides, levels['pond'], scale),
    ...(placed.window ? windowMarks(placed.window) : []),
    ...(placed.detail ? detailMarks(placed.detail, levels['pond'], scale.hatched) : []),
    ...labels.flatMap((label) => {
      const anchor = spots.get(label.id)?.anchor;
      const ground = groundAt(label, anchor?.y, scale.k * scale.a);
      return labelMarks(following({ ...label, ground }, anchor));
    }),
  ];
}
