import { randomStream } from '../../sim/random.ts';
import type { Media, MediaLayer } from '../../sim/scenario/scenario.ts';
import type { Bed } from './bed.ts';
import { floorOf } from './cut.ts';
import { box, closed, type Mark, path, segment } from './marks.ts';
import type { Scale } from './scale.ts';
import type { FilterScene } from './scene.ts';
import { pebble } from './stone.ts';

/** A layer this open or more is drawn as a mat of felt, others as bags of grain. */
const FELT = 0.9;

/** Whether a layer is a mat of felt rather than bags of grain. */
export const isFelt = ({ grain, porosity }: MediaLayer): boolean => grain === undefined || porosity >= FELT;

/** Size of a bag of grain, m. */
const BAG = { wide: 0.22, tall: 0.15 };

interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The filter's vessel in the cut: hatched walls and floor, the lip with its spout, the wall up to the rim on the left. */
export function vesselMarks(scene: FilterScene, scale: Scale): Mark[] {
  const { cut, wall, brink, rim } = scene;
  const left = scale.x(cut.left);
  const right = scale.x(cut.left + cut.width);
  const thick = Math.max(3, scale.a * wall);
  const floor = scale.y(floorOf(cut));
  const lip = scale.y(brink.z);
  const end = scale.x(brink.x);
  const top = scale.y(rim);
  const outline = closed([
    [left - thick, top],
    [left, top],
    [left, floor],
    [right, floor],
    [right, lip],
    [end, lip],
    [end, lip + 2.6],
    [right + thick, lip + 2.6],
    [right + thick, floor + thick],
    [left - thick, floor + thick],
  ]);
  const d = hatch({ left: left - thick, right: right + thick, top, bottom: floor + thick }, 4);
  const marks: Mark[] = [path(outline, 'vessel')];
  if (scale.a >= 40) marks.push(path(d, 'hatch', { clip: 'vessel' }));
  return [...marks, path(outline, 'vessel-line')];
}

export function vesselClip(scene: FilterScene, scale: Scale): string {
  const first = vesselMarks(scene, scale)[0];
  return first.kind === 'path' ? first.d : '';
}

/** Oblique lines over a box. */
export function hatch({ left, right, top, bottom }: Room, every: number): string {
  let d = '';
  const tall = bottom - top;
  for (let x = left - tall; x < right; x += every) d += segment(x, bottom, x + tall, top);
  return d;
}

/** The rack on its posts. */
export function rackMarks({ cut }: FilterScene, media: Media, scale: Scale): Mark[] {
  const left = scale.x(cut.left);
  const right = scale.x(cut.left + cut.width);
  const rack = scale.y(media.bottom);
  const marks: Mark[] = [path(slottedRack(left, right, rack), 'rack')];
  const posts = [0.3, 0.7].map((share) => left + share * (right - left));
  const floor = scale.y(floorOf(cut));
  if (floor - rack > 8) marks.push(path(posts.map((x) => box(x - 1, rack + 3, 2, floor - rack - 3)).join(''), 'post'));
  return marks;
}

/** Mats and bags; between them and the wall the gap. */
export function mediaMarks({ cut }: FilterScene, media: Media, { gap, lifted }: Bed, scale: Scale): Mark[] {
  const left = scale.x(cut.left);
  const right = scale.x(cut.left + cut.width);
  const marks: Mark[] = [];
  let z = media.bottom + lifted;
  media.layers.forEach((layer, i) => {
    const room = { left: left + gap, right: right - gap, top: scale.y(z + layer.thickness), bottom: scale.y(z) };
    const seed = `${layer.name} ${i}`;
    marks.push(
      ...(layer.grain === undefined || layer.porosity >= FELT
        ? mat(seed, room, scale)
        : bags(seed, room, layer.grain, scale)),
    );
    z += layer.thickness;
  });
  return marks;
}

function slottedRack(left: number, right: number, y: number): string {
  let d = '';
  for (let x = left; x < right - 1; x += 5) d += box(x, y, Math.min(3.4, right - x), 3);
  return d;
}

/** Felt: fine strokes lying this way and that. */
function mat(seed: string, room: Room, { closeUp }: Scale): Mark[] {
  const random = randomStream(seed, 'mat');
  const { left, right, top, bottom } = room;
  const w = right - left;
  const h = bottom - top;
  let d = '';
  const strokes = Math.min(closeUp ? 700 : 160, Math.round((w * h) / (closeUp ? 26 : 16)));
  for (let i = 0; i < strokes; i++) {
    const long = (closeUp ? 2.4 : 1) * (3 + 5 * random());
    const x = left + 1 + random() * Math.max(0, w - long - 2);
    const y = top + 1 + random() * Math.max(0, h - 2);
    const bend = (random() - 0.5) * 4;
    const clampY = (v: number): number => Math.min(bottom - 0.6, Math.max(top + 0.6, v));
    d += `M${x.toFixed(1)} ${y.toFixed(1)}Q${(x + long / 2).toFixed(1)} ${clampY(y + bend).toFixed(1)} ${(x + long).toFixed(1)} ${clampY(y + (random() - 0.5) * 2).toFixed(1)}`;
  }
  return [path(box(left, top, w, h), 'mat'), path(d, 'felt')];
}

/** Nets of grain on pale water, of one size in truth in a close-up, else as many as there is room for. */
function bags(seed: string, room: Room, grainSize: number, { closeUp, a }: Scale): Mark[] {
  const random = randomStream(seed, 'bags');
  const { left, right, top, bottom } = room;
  const rows = Math.max(1, Math.round((bottom - top) / (closeUp ? BAG.tall * a : 26)));
  const columns = Math.max(1, Math.round((right - left) / (closeUp ? BAG.wide * a : 24)));
  const w = (right - left) / columns;
  const h = (bottom - top) / rows;
  const r = closeUp ? Math.min(5, Math.max(2.2, 0.5 * grainSize * a)) : 1.6;
  let nets = '';
  let grain = '';
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x0 = left + column * w + 0.6;
      const y0 = top + row * h + 0.6;
      nets += bag(x0, y0, w - 1.2, h - 1.2);
      for (let y = y0 + 1.9 * r; y < y0 + h - 1.8 * r; y += 2.5 * r) {
        for (let x = x0 + 1.9 * r; x < x0 + w - 2 * r; x += 2.6 * r) {
          grain += pebble(x + 0.8 * r * random(), y + 0.7 * r * random(), r * (0.8 + 0.4 * random()), random);
        }
      }
    }
  }
  return [path(nets, 'net'), path(grain, 'grain')];
}

function bag(x: number, y: number, w: number, h: number): string {
  const c = Math.min(7, 0.16 * Math.min(w, h));
  return `M${(x + c).toFixed(1)} ${y.toFixed(1)}h${(w - 2 * c).toFixed(1)}q${c.toFixed(1)} 0 ${c.toFixed(1)} ${c.toFixed(1)}v${(h - 2 * c).toFixed(1)}q0 ${c.toFixed(1)} ${(-c).toFixed(1)} ${c.toFixed(1)}h${(-(w - 2 * c)).toFixed(1)}q${(-c).toFixed(1)} 0 ${(-c).toFixed(1)} ${(-c).toFixed(1)}v${(-(h - 2 * c)).toFixed(1)}q0 ${(-c).toFixed(1)} ${c.toFixed(1)} ${(-c).toFixed(1)}Z`;
}

/**
 * Darts that tell what passes: of ten, in a close-up of a hundred, as many as are its share of the flow go up the gap, the
 * others through the media.
 */
export function passageMarks(
  { cut }: FilterScene,
  media: Media,
  through: number,
  round: number,
  { gap, lifted }: Bed,
  scale: Scale,
): Mark[] {
  const whole = Math.abs(through) + Math.abs(round);
  if (whole < 1e-7) return [];
  const left = scale.x(cut.left);
  const right = scale.x(cut.left + cut.width);
  const bottom = scale.y(media.bottom + lifted);
  const top = scale.y(media.bottom + lifted + media.layers.reduce((sum, l) => sum + l.thickness, 0));
  const up = through >= 0 ? -1 : 1;
  const size = scale.closeUp ? 2 : 1;
  const all = scale.closeUp ? 100 : 10;
  const inGap = dartsInGap(through, round, all);
  const dart = (x: number, y: number): string =>
    closed([
      [x, y + 3.6 * size * up],
      [x - 1.15 * size, y - 1.6 * size * up],
      [x + 1.15 * size, y - 1.6 * size * up],
    ]);
  let dark = '';
  const wide = right - left - 2 * gap - 8 * size;
  for (let i = 0; i < all - inGap; i++) {
    const x = left + gap + 4 * size + wide * ((0.31 + 0.618034 * i) % 1);
    dark += dart(x, bottom + (top - bottom) * (0.05 + (0.9 * (i + 0.5)) / (all - inGap)));
  }
  let pale = '';
  for (let i = 0; i < inGap; i++) {
    const x = i % 2 === 0 ? left + gap / 2 : right - gap / 2;
    pale += dart(x, bottom + (top - bottom) * ((Math.floor(i / 2) + 0.6) / Math.max(1, Math.ceil(inGap / 2))));
  }
  const gaps = path(box(left, top, gap, bottom - top) + box(right - gap, top, gap, bottom - top), 'gap');
  return [gaps, ...(dark ? [path(dark, 'dart')] : []), ...(pale ? [path(pale, 'dart-pale')] : [])];
}

/** Of so many darts those that go round the media. */
export function dartsInGap(through: number, round: number, all: number): number {
  const whole = Math.abs(through) + Math.abs(round);
  return whole > 0 ? Math.round((all * Math.abs(round)) / whole) : 0;
}
