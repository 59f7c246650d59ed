/** Dye in the filter at a moment of its watch, as boxes of the drawing and how much of it is in each. */
import type { DyeWatch } from '../../sim/dye/answer.ts';
import type { Media } from '../../sim/scenario/scenario.ts';
import type { Bed } from '../section/bed.ts';
import { floorOf } from '../section/cut.ts';
import type { Scale } from '../section/scale.ts';
import type { FilterScene } from '../section/scene.ts';

import { rowAt } from '../state/moment.ts';

/** A part of the drawing with dye in it. */
export interface Dyed {
  /** Name of the place, as the watch has it. */
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Concentration over that of the space below as poured, 0..1. */
  readonly part: number;
}

/** Less than this of what was poured is not drawn. */
const UNSEEN = 0.004;

/** Where the dye is at a time of the run; nothing before it was poured or after the watch. */
export function dyedAt(
  filter: FilterScene,
  media: Media,
  watch: DyeWatch,
  t: number,
  level: number,
  { gap, lifted }: Bed,
  scale: Scale,
): Dyed[] {
  const last = watch.t[watch.t.length - 1];
  if (t < watch.at || t > last + 1) return [];
  const row = rowAt(watch.t, t);
  const next = Math.min(row + 1, watch.t.length - 1);
  const size = watch.t[next] - watch.t[row];
  const share = size > 0 ? Math.min(1, (t - watch.t[row]) / size) : 0;
  const between = (column: Float64Array, at = 0, width = 1): number =>
    column[row * width + at] + share * (column[next * width + at] - column[row * width + at]);
  const plenum = watch.places.find(({ kind }) => kind === 'plenum');
  const full = plenum ? watch.mass / Math.max(1e-9, plenum.volume[0]) : 1;
  const { cut } = filter;
  const [left, right] = [scale.x(cut.left), scale.x(cut.left + cut.width)];
  const top = media.bottom + media.layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const wet = Math.min(level, top);
  const up = (z: number): number => Math.min(level, z + lifted);
  const dyed: Dyed[] = [];
  const add = (name: string, x: number, width: number, low: number, high: number, part: number): void => {
    if (part < UNSEEN || high <= low) return;
    dyed.push({ name, x, width, y: scale.y(high), height: scale.y(low) - scale.y(high), part: Math.min(1, part) });
  };
  const tanks = watch.places.filter(({ kind }) => kind === 'tank');
  const bounds = tankBounds(media, wet, tanks.length);
  tanks.forEach(({ name, mass, volume }, i) => {
    const part = between(mass) / Math.max(1e-9, between(volume)) / full;
    add(name, left + gap, right - left - 2 * gap, up(bounds[i]), up(bounds[i + 1]), part);
  });
  for (const { name, kind, mass, volume } of watch.places) {
    const part = between(mass) / Math.max(1e-9, between(volume)) / full;
    if (kind === 'plenum') add(name, left, right - left, floorOf(cut), up(media.bottom), part);
    if (kind === 'free') add(name, left, right - left, up(wet), level, part);
  }
  const cell = watch.places.find(({ kind }) => kind === 'gap');
  const { cells } = watch.gap;
  for (let i = 0; cell && i < cells; i++) {
    const part = between(watch.gap.mass, i, cells) / Math.max(1e-9, between(cell.volume) / cells) / full;
    const [low, high] = [i, i + 1].map((k) => up(media.bottom + ((wet - media.bottom) * k) / cells));
    for (const x of [left, right - gap]) add('gap', x, gap, low, high, part);
  }
  return dyed;
}

/** Elevations between equal parts of the wet pores, from the rack up, m. */
export function tankBounds(media: Media, wet: number, tanks: number): number[] {
  let z = media.bottom;
  const layers = media.layers.map(({ thickness, porosity }) => {
    const from = z;
    z += thickness;
    return { from, pores: porosity * Math.max(0, Math.min(wet, z) - from), porosity };
  });
  const all = layers.reduce((sum, { pores }) => sum + pores, 0);
  return Array.from({ length: tanks + 1 }, (_, i) => {
    let left = (all * i) / tanks;
    for (const { from, pores, porosity } of layers) {
      if (left <= pores) return from + left / porosity;
      left -= pores;
    }
    return Math.max(media.bottom, wet);
  });
}
