import { waterAt } from '../bodies.ts';
import type { Scale } from '../scale.ts';
import type { Brink, Scene } from '../scene.ts';
import type { HeightRequest } from './dimension.ts';

/** From a brink to the line that measures its fall, px: clear of the water thrown off it. */
const CLEAR = 26;

/** Falls to be measured: from each crest in the cut down to the water below it. */
export function fallHeights(scene: Scene, scale: Scale, levels: Readonly<Record<string, number>>): HeightRequest[] {
  const { filter, reaches } = scene;
  const height = (id: string, { x, z }: Brink, into: number): HeightRequest => {
    const at = scale.x(x) + CLEAR;
    return { id, upper: z, lower: waterAt(scene, into, x, levels), x: at, upperFrom: scale.x(x) + 2, lowerFrom: at };
  };
  const falls = reaches.map((reach, i) => height(reach.place, reach.brink, i + 1));
  return filter ? [height('filter.lip', filter.brink, 0), ...falls] : falls;
}
