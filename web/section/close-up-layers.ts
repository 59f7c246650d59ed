/** Names of the layers and of the gap, in a column beside the vessel or before the riser, each tied to what it names. */
import { formatFine, formatLength } from '../../sim/quantity/format.ts';
import type { Moment } from '../state/moment.ts';
import { bedAt } from './bed.ts';
import { boxOfText, meet, named, type TextBox } from './close-up-text.ts';
import { circle, type Mark, path, segment, type TextMark } from './marks.ts';
import { boreWidth } from './pipes.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';
import { isFelt } from './vessel.ts';

/** Height of a name with its figure under it and of one alone, and the room kept between two, px. */
const PAIR = 34;
const LINE = 17;
const APART = 6;
/** Kept free beside a column of names, px. */
const BESIDE = 6;
/** A column is moved up or down in such steps, this far at the most, to stand clear of everything, px. */
const STEP = 4;
const FAR = 180;
/** The ground's line is kept clear of in pieces so wide, px. */
const PIECE = 6;

interface Told {
  readonly name: string;
  readonly figure: string;
  /** What it names, px. */
  readonly x: number;
  readonly y: number;
}

/** A place for a column: where its words end, and where the leaders begin to slope. */
interface Column {
  readonly end: number;
  readonly bend: number;
}

/**
 * Where there is no room for names with their figures, the names alone; where there is none for those, nothing.
 *
 * @param taken boxes of other words, which a column keeps clear of
 */
export function layerNames(scene: Scene, scale: Scale, moment: Moment, taken: readonly TextBox[]): Mark[] {
  const whole = toldOf(scene, scale, moment);
  const obstacles = [...taken, ...groundOf(scene, scale), ...feedOf(scene, scale)];
  for (const told of [whole, whole.map((each) => ({ ...each, figure: '' }))]) {
    for (const column of columnsOf(scene, scale, widest(told) + BESIDE)) {
      const tops = topsIn(column, told, obstacles, scale);
      if (tops) return told.flatMap((each, i) => marksOf(each, tops[i], column));
    }
  }
  return [];
}

const widest = (told: readonly Told[]): number =>
  told.flatMap((each) => wordsOf(each, 0, 0).map(boxOfText)).reduce((most, { left }) => Math.max(most, -left), 0);

const tallOf = ({ figure }: Told): number => (figure === '' ? LINE : PAIR);

function toldOf({ filter, scenario }: Scene, scale: Scale, moment: Moment): Told[] {
  const media = filter?.filter.media;
  if (!filter || !media) return [];
  const { display } = scenario;
  const left = scale.x(filter.cut.left);
  let z = media.bottom;
  const layers = media.layers.map((layer) => {
    const { name, thickness, grain } = layer;
    const size = grain === undefined ? '' : `, ${formatFine(grain, display)} ${isFelt(layer) ? 'fiber' : 'grain'}`;
    const y = scale.y(z + thickness / 2);
    z += thickness;
    return { name, figure: `${formatLength(thickness, display)}${size}`, x: left + 26, y };
  });
  const gap = {
    name: 'gap round the mats',
    figure: formatFine(media.gap, display),
    x: left + bedAt(filter, media, scenario, moment, scale).gap / 2,
    y: scale.y(media.bottom + 0.6 * (z - media.bottom)),
  };
  return [...layers, gap].sort((p, q) => p.y - q.y);
}

/** Between riser and vessel, else before the riser, from where a leader crosses it level before it slopes. */
function columnsOf({ filter, pipes }: Scene, scale: Scale, room: number): Column[] {
  if (!filter) return [];
  const wall = scale.x(filter.cut.left) - Math.max(3, scale.a * filter.wall);
  const half = 0.5 * boreWidth(pipes.main.diameter, scale);
  const riser = scale.x(pipes.tee[0]);
  const between = wall - 20;
  const before = riser - half - 10;
  return [
    ...(between - Math.max(0, riser + half) >= room ? [{ end: between, bend: between + 14 }] : []),
    ...(before - scale.left >= room ? [{ end: before, bend: riser + half + 6 }] : []),
  ];
}

/** Tops of the names, px: as near to what they name as keeps them clear; undefined where nowhere does. */
function topsIn({ end }: Column, told: readonly Told[], obstacles: readonly TextBox[], scale: Scale) {
  let free = -Infinity;
  const natural = told.map((each) => {
    const top = Math.max(free, each.y - 0.5 * tallOf(each));
    free = top + tallOf(each) + APART;
    return top;
  });
  const measured = told.flatMap((each, i) => wordsOf(each, natural[i], end).map(boxOfText));
  for (let by = 0; by <= FAR; by += STEP) {
    for (const shift of by === 0 ? [0] : [-by, by]) {
      const boxes = measured.map((box) => ({ ...box, top: box.top + shift, bottom: box.bottom + shift }));
      const within = boxes.every(({ top, bottom, left }) => top > scale.top && bottom < scale.bottom && left > 0);
      if (within && !boxes.some((box) => obstacles.some((other) => meet(box, other))))
        return natural.map((top) => top + shift);
    }
  }
  return undefined;
}

function wordsOf({ name, figure }: Told, top: number, end: number): TextMark[] {
  const both = named(name, figure, end, top + 13, 'end', ' earth');
  return figure === '' ? [both[0]] : both;
}

function marksOf(told: Told, top: number, { end, bend }: Column): Mark[] {
  const level = top + 0.5 * tallOf(told);
  return [
    path(`${segment(end + 4, level, bend, level)}L${told.x.toFixed(1)} ${told.y.toFixed(1)}`, 'leader'),
    path(circle(told.x, told.y, 1.6), 'dot'),
    ...wordsOf(told, top, end),
  ];
}

/** The ground's line, which strikes through no name, as boxes along it. */
function groundOf({ earth }: Scene, scale: Scale): TextBox[] {
  const boxes: TextBox[] = [];
  const spots = [[scale.from, earth[0][1]] as const, ...earth].map(scale.at);
  spots.slice(1).forEach(([x1, y1], i) => {
    const [x0, y0] = spots[i];
    const count = Math.max(1, Math.ceil(Math.abs(x1 - x0) / PIECE));
    for (let k = 0; k < count; k++) {
      const y = (part: number): number => y0 + ((y1 - y0) * (k + part)) / count;
      const x = x0 + ((x1 - x0) * k) / count;
      boxes.push({ left: x, right: x + PIECE, top: Math.min(y(0), y(1)) - 2, bottom: Math.max(y(0), y(1)) + 2 });
    }
  });
  return boxes;
}

/** The bottom feed on its way to the vessel. */
function feedOf({ pipes: { bottomFeed } }: Scene, scale: Scale): TextBox[] {
  if (!bottomFeed) return [];
  const half = 0.5 * boreWidth(bottomFeed.diameter, scale) + 2;
  const spots = bottomFeed.spots.map(scale.at);
  return spots.slice(1).map(([x1, y1], i) => {
    const [x0, y0] = spots[i];
    return {
      left: Math.min(x0, x1) - half,
      right: Math.max(x0, x1) + half,
      top: Math.min(y0, y1) - half,
      bottom: Math.max(y0, y1) + half,
    };
  });
}
