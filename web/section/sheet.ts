import type { Scenario } from '../../sim/scenario/scenario.ts';
import { closeUpOf, vesselOf } from './close-up.ts';
import { type Ground, groundOf } from './drawing.ts';
import { sceneOf } from './layout.ts';
import { type PartArea, partsOf } from './parts.ts';
import { type Scale, scaleOf } from './scale.ts';
import type { Scene } from './scene.ts';

/** The whole course, its filter close to, or the vessel of it alone at so many px per meter. */
export type View = 'whole' | 'filter' | { readonly vessel: number };

/** A site laid out on a sheet of a width: all that stays while water moves. */
export interface Sheet {
  readonly scene: Scene;
  readonly scale: Scale;
  readonly ground: Ground;
  readonly parts: readonly PartArea[];
  /** What the ground depends on, as text: two sheets of one key have the same ground. */
  readonly key: string;
}

/** Keys of a scenario that move water or words and leave the ground as it is. */
const MOVING = new Set([
  'valve',
  'checkValve',
  'fillMark',
  'level',
  'leak',
  'cd',
  'actions',
  'weather',
  'hoses',
  'autofill',
  'limits',
  'assumed',
  'notes',
  'title',
  'starts',
  'span',
  'start',
  'water',
  'curve',
  'power',
  'minimum',
  'roughness',
  'fittings',
  'k',
  'manning',
  'blockage',
  'splash',
  'seep',
  'plantCover',
  'runoff',
  'running',
  'cutOut',
  'standingLoss',
  'law',
  'speed',
  'gap',
  'liftSlack',
  'submergedWeight',
  'holdDown',
  'removal',
  'tanks',
  'capture',
  'beta',
  'deposit',
  'debris',
  'load',
  'concentration',
]);

/** Lays out a site; the ground of a sheet with the same shapes is taken over as it is. */
export function sheetOf(
  scenario: Scenario,
  width: number,
  before: Sheet | undefined,
  view: View = 'whole',
  hatched = false,
): Sheet {
  const key = `${JSON.stringify(view)} ${width} ${hatched} ${JSON.stringify(scenario, (name, value) => (MOVING.has(name) ? undefined : value))}`;
  const scene = sceneOf(scenario);
  if (before?.key === key) return { ...before, scene };
  const scale = closeOf(scene, width, view, hatched) ?? scaleOf(scene, width, hatched);
  const inView = ({ place, anchor: [x, y] }: PartArea): boolean =>
    !scale.closeUp || place.startsWith('plumbing.') || (x > scale.left && x < scale.right && y < scale.bottom);
  const parts = partsOf(scene, scale).filter(inView);
  return { scene, scale, ground: groundOf(scene, scale), parts, key };
}

function closeOf(scene: Scene, width: number, view: View, hatched: boolean): Scale | undefined {
  if (view === 'whole') return undefined;
  return view === 'filter' ? closeUpOf(scene, width, hatched) : vesselOf(scene, width, view.vessel, hatched);
}
