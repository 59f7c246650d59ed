import { css, nothing, type SVGTemplateResult, svg } from 'lit';
import type { DyeWatch } from '../../sim/dye/answer.ts';
import { porositiesLeft } from '../../sim/network/clogging.ts';
import { bedAt } from '../section/bed.ts';
import { layerElement } from '../section/elements.ts';
import type { Inside } from '../section/inside.ts';
import { box, segment } from '../section/marks.ts';
import type { Scale } from '../section/scale.ts';
import type { Scene } from '../section/scene.ts';
import type { Moment } from '../state/moment.ts';
import { depositMarks } from './deposit.ts';
import { type Dyed, dyedAt } from './dye-marks.ts';
import { coursesOf } from './hundred.ts';
import { MarksLayer } from './marks-layer.ts';
import { passageAt } from './passage.ts';

const looks = css`
  .mark.through { fill: var(--water); stroke: var(--paper2); stroke-width: 0.7px; paint-order: stroke; }
  .mark.round { fill: var(--foam); stroke: var(--on-shallow); stroke-width: 1.1px; }
  .mark.beyond { opacity: 0.6; }
  .mark.through.beyond { fill: var(--on-shallow); stroke: none; }
  .silt { fill: none; stroke: var(--silt); stroke-width: 1.7px; stroke-linecap: round; }
  .silt-veil { fill: var(--silt); stroke: none; }
  .dyed { fill: var(--dye); }
  .dye-veil { fill: var(--paper); fill-opacity: 0.82; }
  .dye-hatch { fill: none; stroke: var(--dye); stroke-width: 1.8px; }
  svg:has(.dyed) .label.clear { stroke: color-mix(in srgb, var(--w1), var(--dye) 35%); }
  svg:has(.dyed) .label.clear.deep { stroke: none; }
  svg.hatched .mark.through { fill: var(--ink); stroke: var(--paper); stroke-width: 1px; }
  svg.hatched .mark.round { fill: var(--paper); stroke: var(--ink); stroke-width: 1.6px; }
  svg.hatched .mark.beyond { opacity: 1; }
  svg.hatched .silt-veil { display: none; }
`;

/** What runs in the close-up of one case: deposit, dye, and the hundred marks over them. */
export class FilterInside implements Inside {
  readonly styles = looks;
  readonly marks = new MarksLayer();
  /** Settled volume in each layer at the moment drawn, m³. */
  deposits: Readonly<Record<string, number>> = {};
  watch: DyeWatch | undefined;
  /** Times as fast as in truth at which the marks run, where another case runs beside; else as is best watched. */
  factor: number | undefined;

  layer(scene: Scene, scale: Scale, moment: Moment): SVGTemplateResult | typeof nothing {
    const { filter, scenario } = scene;
    const media = filter?.filter.media;
    if (!filter || !media) return nothing;
    const porosities = porositiesLeft(filter.filter, this.deposits);
    const passage = passageAt(scenario, moment, porosities);
    if (!passage) return nothing;
    const level = moment.levels['filter'] ?? media.bottom;
    const present = media.layers.map((layer, i) => ({ ...layer, porosity: porosities[i] }));
    const bed = bedAt(filter, media, scenario, moment, scale);
    const settled = depositMarks(filter, media, porosities, bed, scale);
    const dyed = this.watch
      ? dyedAt(filter, { ...media, layers: present }, this.watch, moment.t, level, bed, scale)
      : [];
    return svg`<g>${settled.map(({ filled, d }) => svg`<path class="silt-veil" d=${d} fill-opacity=${(0.6 * filled).toFixed(3)}></path>`)}${layerElement(settled.map(({ dots }) => dots))}
      <g class="dye">${dyed.map((each) => (scale.hatched ? hatchedDye(each) : tintedDye(each)))}</g>
      ${this.marks.view(coursesOf(filter, passage, level, bed, scale, this.factor), passage.up)}</g>`;
  }
}

const tintedDye = ({ name, x, y, width, height, part }: Dyed): SVGTemplateResult =>
  svg`<path class="dyed" data-dye=${name} data-part=${part.toFixed(4)} d=${box(x, y, width, height)}
    fill-opacity=${(0.85 * part ** 0.6).toFixed(3)}></path>`;

/** Distance of its lines where dye is as dense as it was poured, px. */
const DENSE = 3.4;

/** In black and white: upright lines, the closer the more dye, over what is under them as if behind tracing paper. */
function hatchedDye({ name, x, y, width, height, part }: Dyed): SVGTemplateResult {
  const every = Math.min(width, DENSE / part ** 0.6);
  let d = '';
  for (let at = x + 0.5 * every; at < x + width; at += every) d += segment(at, y, at, y + height);
  return svg`<path class="dye-veil" d=${box(x, y, width, height)}></path>
    <path class="dye-hatch" data-dye=${name} data-part=${part.toFixed(4)} d=${d}></path>`;
}
