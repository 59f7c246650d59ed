/** The deposit in the layers, as it is drawn: dots, denser where the water comes in. */
import { porositiesLeft } from '../../sim/network/clogging.ts';
import { randomStream } from '../../sim/random.ts';
import type { Media, Scenario } from '../../sim/scenario/scenario.ts';
import type { Bed } from '../section/bed.ts';
import { box, type Mark, path, px } from '../section/marks.ts';
import type { Scale } from '../section/scale.ts';
import type { FilterScene } from '../section/scene.ts';

/** Dots a layer whose pores are wholly filled would have for each px². */
const DENSEST = 0.5;
const MOST_DOTS = 2500;
/** How much denser they lie at the inflow than at the far side, as an exponent. */
const SLANT = 2.2;

/** Porosity that settled volumes, m³, leave of each layer of a site's media; undefined where it has none. */
export const porositiesIn = ({ filter }: Scenario, held: Readonly<Record<string, number>>): number[] | undefined =>
  filter?.media && porositiesLeft(filter, held);

/** What has settled in one layer: how it darkens, and its dots. */
export interface Settled {
  /** Part of the pores that is filled, 0..1. */
  readonly filled: number;
  readonly d: string;
  readonly dots: Mark;
}

/** Deposit as it lies in the layers, by the porosities it leaves; nothing where they are clean. */
export function depositMarks(
  { cut }: FilterScene,
  media: Media,
  porosities: readonly number[],
  { gap, lifted }: Bed,
  scale: Scale,
): Settled[] {
  const left = scale.x(cut.left) + gap;
  const right = scale.x(cut.left + cut.width) - gap;
  let z = media.bottom + lifted;
  return media.layers.flatMap(({ name, thickness, porosity }, i) => {
    const [bottom, top] = [scale.y(z), scale.y(z + thickness)];
    z += thickness;
    const filled = Math.min(1, Math.max(0, 1 - (porosities[i] ?? porosity) / porosity));
    if (filled < 1e-3) return [];
    const dots = Math.min(MOST_DOTS, Math.round(DENSEST * filled * (right - left) * (bottom - top)));
    const random = randomStream(`${name} ${i}`, 'deposit');
    let d = '';
    for (let k = 0; k < dots; k++) {
      const up = -Math.log(1 - random() * (1 - Math.exp(-SLANT))) / SLANT;
      d += `M${px(left + 1 + random() * (right - left - 2))} ${px(bottom - 1 - up * (bottom - top - 2))}h.01`;
    }
    return [{ filled, d: box(left, top, right - left, bottom - top), dots: path(d, 'silt') }];
  });
}
