import { randomStream } from '../../sim/random.ts';
import { type Cut, floorOf, leftAt, rightAt } from './cut.ts';
import { box, type Mark, path } from './marks.ts';
import type { Scale } from './scale.ts';
import { pebble } from './stone.ts';

/** From this share of its space up a layer is drawn as gravel; from the lesser one as rock along the banks; below as open blocks. */
const GRAVEL = 0.3;
const ROCK = 0.08;
/** Rocks of a basin whose space they would fill. */
const ROCKS = 260;
/** Most pebbles of a layer. */
const MOST = 700;

export interface Layer {
  readonly from: number;
  readonly to: number;
  readonly fraction: number;
}

/** What takes up room in a basin: gravel packed into its layer, or structural blocks as a grid of thin lines. */
export function fillingMarks(
  name: string,
  cut: Cut,
  layers: readonly Layer[],
  top: number,
  scale: Scale,
  clip: string,
): Mark[] {
  return layers.flatMap((layer) => {
    const from = Math.max(layer.from, floorOf(cut));
    const to = Math.min(layer.to, top);
    if (to <= from || layer.fraction <= 0) return [];
    if (layer.fraction < ROCK) return [path(blocks(cut, from, to, scale), 'blocks', { clip })];
    const d =
      layer.fraction >= GRAVEL ? gravel(name, cut, from, to, scale) : rocks(name, cut, { ...layer, from, to }, scale);
    return d === '' ? [] : [path(d, 'pebbles', { clip })];
  });
}

/** Pebbles in rows, each a little off its place, in what room the banks leave. */
function gravel(name: string, cut: Cut, from: number, to: number, scale: Scale): string {
  const random = randomStream(name, 'gravel');
  const yTop = scale.y(to);
  const yBottom = scale.y(from);
  const area = (yBottom - yTop) * scale.a * (rightAt(cut, to) - leftAt(cut, to));
  const r = Math.max(2.5, Math.sqrt(area / MOST / 4.4));
  let d = '';
  let row = 0;
  for (let y = yBottom - 0.8 * r; y > yTop + 0.3 * r || row === 0; y -= 1.85 * r, row++) {
    const z = from + ((yBottom - y) / (yBottom - yTop)) * (to - from);
    const left = scale.x(leftAt(cut, z)) + 0.8 * r;
    const right = scale.x(rightAt(cut, z)) - 0.8 * r;
    for (let x = left + (row % 2) * 1.05 * r; x <= right + 0.3 * r; x += 2.1 * r) {
      const size = r * (0.72 + 0.42 * random());
      d += pebble(x + (random() - 0.5) * 0.7 * r, y + (random() - 0.5) * 0.6 * r, size, random, 0.9);
    }
  }
  return d;
}

/** Rocks set along both banks from the floor up, the more of them the more room they take. */
function rocks(name: string, cut: Cut, { from, to, fraction }: Layer, scale: Scale): string {
  const random = randomStream(name, 'rock');
  let d = '';
  for (let i = 0; i < fraction * ROCKS; i++) {
    const size = 4 + 5 * random();
    const z = from + (to - from) * random() ** 1.6;
    const inward = 0.5 * size + 9 * random() ** 2;
    const x = i % 2 === 0 ? scale.x(leftAt(cut, z)) + inward : scale.x(rightAt(cut, z)) - inward;
    d += pebble(x, scale.y(z) - 0.3 * size, size, random, 0.75);
  }
  return d;
}

/** Blocks of a quarter meter or so, with their crossed bracing. */
function blocks(cut: Cut, from: number, to: number, scale: Scale): string {
  const yTop = scale.y(to);
  const yBottom = scale.y(from);
  const rows = Math.max(1, Math.round((yBottom - yTop) / 34));
  const left = scale.x(leftAt(cut, to));
  const right = scale.x(rightAt(cut, to));
  const columns = Math.max(1, Math.round((right - left) / 34));
  let d = '';
  for (let i = 0; i <= rows; i++) {
    const y = yTop + ((yBottom - yTop) * i) / rows;
    d += `M${left.toFixed(1)} ${y.toFixed(1)}H${right.toFixed(1)}`;
  }
  for (let i = 0; i <= columns; i++) {
    const x = left + ((right - left) * i) / columns;
    d += `M${x.toFixed(1)} ${yTop.toFixed(1)}V${yBottom.toFixed(1)}`;
  }
  return d;
}

/** What the water dims of the gravel under it: the tint of its depth and then some. */
export function veilMarks(cut: Cut, layers: readonly Layer[], level: number, scale: Scale, clip: string): Mark[] {
  return layers.flatMap((layer) => {
    const from = Math.max(layer.from, floorOf(cut));
    const to = Math.min(layer.to, level);
    if (layer.fraction < GRAVEL || to <= from) return [];
    const tint = Math.min(6, 4 + Math.floor((level - (from + to) / 2) / 0.15));
    const d = box(scale.x(cut.left), scale.y(to), scale.a * cut.width, scale.y(from) - scale.y(to));
    return [path(d, `w${tint} veil`, { clip })];
  });
}
