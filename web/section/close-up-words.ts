import { formatFine, formatFlow, formatLength } from '../../sim/quantity/format.ts';
import type { Moment } from '../state/moment.ts';
import { bedAt } from './bed.ts';
import { floorOf, type Spot } from './cut.ts';
import { circle, type Mark, path, segment, words } from './marks.ts';
import { boreWidth } from './pipes.ts';
import type { Scale } from './scale.ts';
import type { PipeRoute, Scene } from './scene.ts';
import type { Settings } from './settings.ts';
import { wayMarks } from './streamlines.ts';
import { dartsInGap, isFelt } from './vessel.ts';

/** Height of a name with its figure under it, and the room kept between two, px. */
const PAIR = 34;
const APART = 6;
/** The words of the shares take so much room across, px. */
const SHARES = 210;
/** The main line's own words stand so far above the foot, px. */
const FOOT = 44;
/** A feed nearer than this to the edge of the sheet has no room for its words, px. */
const FEED = 70;
/** Depth of a tint of the water, m: text stands on the two palest and the three deepest. */
const BAND = 0.15;

interface Told {
  readonly name: string;
  readonly figure: string;
  readonly x: number;
  readonly y: number;
}

/**
 * What a close-up of the filter has over the drawing: the ways of the water; its layers beside it, valves and feeds at
 * their pipes, shares and levels in the water.
 */
export function closeUpWords(scene: Scene, scale: Scale, moment: Moment, settings: Settings): Mark[] {
  return [
    ...waysOf(scene, scale, moment),
    ...besideVessel(scene, scale, moment),
    ...feedWords(scene, scale, moment, settings),
    ...waterWords(scene, scale, moment),
  ];
}

function waysOf({ filter, pipes, scenario }: Scene, scale: Scale, moment: Moment): Mark[] {
  const { levels, flows } = moment;
  const media = filter?.filter.media;
  if (!filter || !media) return [];
  const ways = { through: flows.media ?? 0, round: flows.gap ?? 0, lip: flows.lip ?? 0 };
  const bed = bedAt(filter, media, scenario, moment, scale);
  return wayMarks(filter, media, pipes.bottomFeed, ways, levels.filter, bed, scale);
}

/** Layers and gap in a column left of the vessel, each tied to what it names. */
function besideVessel({ filter, scenario, pipes, earth }: Scene, scale: Scale, moment: Moment): Mark[] {
  const media = filter?.filter.media;
  if (!filter || !media) return [];
  const { display } = scenario;
  const left = scale.x(filter.cut.left);
  const told: Told[] = [];
  let z = media.bottom;
  for (const layer of media.layers) {
    const { name, thickness, grain } = layer;
    const size = grain === undefined ? '' : `, ${formatFine(grain, display)} ${isFelt(layer) ? 'fiber' : 'grain'}`;
    told.unshift({
      name,
      figure: `${formatLength(thickness, display)}${size}`,
      x: left + 26,
      y: scale.y(z + thickness / 2),
    });
    z += thickness;
  }
  const gapAt = scale.y(media.bottom + 0.6 * (z - media.bottom));
  told.push({
    name: 'gap round the mats',
    figure: formatFine(media.gap, display),
    x: left + bedAt(filter, media, scenario, moment, scale).gap / 2,
    y: gapAt,
  });
  told.sort((p, q) => p.y - q.y);
  const wall = left - Math.max(3, scale.a * filter.wall);
  const [between, beyond] = columnsOf(pipes, wall, scale);
  const end = between ?? beyond;
  if (end === undefined) return [];
  // From beyond the riser a leader crosses it level before it slopes.
  const bend = between === undefined ? Math.max(end + 14, riserEdge(pipes, scale, 1) + 6) : end + 14;
  const under = groundUnder(earth, end, scale);
  const fits = under + told.length * (PAIR + APART) < scale.bottom - FOOT;
  let free = between === undefined && fits ? under : -Infinity;
  return told.flatMap(({ name, figure, x, y }) => {
    const top = Math.max(free, y - 0.5 * PAIR);
    free = top + PAIR + APART;
    const level = top + 0.5 * PAIR;
    return [
      path(`${segment(end + 4, level, bend, level)}L${x.toFixed(1)} ${y.toFixed(1)}`, 'leader'),
      path(circle(x, y, 1.6), 'dot'),
      ...pair(name, figure, end, top + 13, 'end', ' earth'),
    ];
  });
}

/** A column of names takes so much room across, px. */
const COLUMN = 130;

/** Where a column of names may end: between riser and vessel, else before the riser. */
function columnsOf(pipes: Scene['pipes'], wall: number, scale: Scale): (number | undefined)[] {
  const between = wall - 20;
  const before = riserEdge(pipes, scale, -1) - 10;
  return [
    between - Math.max(0, riserEdge(pipes, scale, 1)) >= COLUMN ? between : undefined,
    before - scale.left >= COLUMN ? before : undefined,
  ];
}

/** Where the ground lies under a column of names that ends there: its line strikes through none of them, px. */
function groundUnder(earth: Scene['earth'], end: number, scale: Scale): number {
  const within = earth.filter(([station]) => scale.x(station) <= end + 20).map(([, z]) => scale.y(z));
  return Math.max(scale.y(earth[0][1]), ...within) + 4;
}

/** The riser's right (1) or left (−1) side, px. */
const riserEdge = ({ main, tee }: Scene['pipes'], scale: Scale, side: 1 | -1): number =>
  scale.x(tee[0]) + side * 0.5 * boreWidth(main.diameter, scale);

const pair = (name: string, figure: string, x: number, y: number, at: 'start' | 'middle' | 'end', on = ''): Mark[] => [
  words(x, y, name, `label name${on}`, at),
  words(x, y + 16, figure, `label figure${on}`, at),
];

/** How a handle stands, in degrees from the pipe's line. */
const turned = (opening: number): string => {
  const degrees = Math.round(90 * (1 - opening));
  return degrees === 0 ? 'in line' : degrees === 90 ? 'shut' : `at ${degrees}°`;
};

function feedWords({ pipes, scenario }: Scene, scale: Scale, { flows }: Moment, settings: Settings): Mark[] {
  const { display } = scenario;
  const { bottomFeed, topFeed, main } = pipes;
  const marks: Mark[] = [];
  const reach = (route: PipeRoute): number => 0.5 * boreWidth(route.diameter, scale) + 12;
  const flow = (name: string): string => formatFlow(flows[name] ?? 0, display);
  const isSeen = ([station]: Spot): boolean => scale.x(station) > scale.left + FEED;
  if (topFeed?.valve && isSeen(topFeed.valve)) {
    const [x, y] = scale.at(topFeed.valve);
    const figure = `${turned(settings.topValve)}, ${flow('top feed')}`;
    marks.push(...pair('top feed', figure, x - reach(topFeed) - 4, y - 10, 'end', ' earth'));
  }
  if (bottomFeed?.valve && isSeen(bottomFeed.valve)) {
    const [x, y] = scale.at(bottomFeed.valve);
    const figure = `${turned(settings.bottomValve)}, ${flow('bottom feed')}`;
    // Over the pipe where the foot of the sheet leaves no room under it.
    const under = y + reach(bottomFeed) + 16;
    const at = under + 20 < scale.bottom ? under : y - reach(bottomFeed) - 22;
    marks.push(...pair('bottom feed', figure, x, at, 'middle', ' earth'));
  }
  if (!isSeen(pipes.tee)) return marks;
  const [x] = scale.at(pipes.tee);
  return [...marks, ...pair('main line', flow('main'), x - reach(main) - 4, scale.bottom - 24, 'end', ' earth')];
}

/** What goes through and what goes round, over the media; the level at the lip; the space under the rack. */
function waterWords({ filter, scenario }: Scene, scale: Scale, { levels, flows }: Moment): Mark[] {
  if (!filter) return [];
  const { cut, brink, filter: vessel } = filter;
  const middle = scale.x(cut.left + 0.5 * cut.width);
  const level = levels.filter;
  const over = level - brink.z;
  const said = `${formatLength(Math.abs(over), scenario.display)} ${over < 0 ? 'under' : 'over'} its lip`;
  const at = scale.x(cut.left + 0.8 * cut.width);
  const up = Math.min(scale.y(level), scale.y(filter.rim)) - 26;
  const marks: Mark[] = [
    path(segment(at, up + 4, at, scale.y(level)), 'leader'),
    path(circle(at, scale.y(level), 1.6), 'dot'),
    ...pair('filter', said, at, up - 16, 'start'),
  ];
  const { media } = vessel;
  if (!media) return marks;
  const top = media.bottom + media.layers.reduce((sum, l) => sum + l.thickness, 0);
  const free = level - top;
  // Within one tint: in the second where it is deep enough for words over the media, else in the first.
  const half = 13 / scale.a;
  const second = free > BAND + 2 * half;
  const depth = second ? BAND + half : Math.min(0.5 * free, BAND - half);
  const across = scale.a * cut.width;
  if (free * scale.a > 40 && across > SHARES && (flows.media ?? 0) > 1e-7) {
    const round = dartsInGap(flows.media, flows.gap ?? 0, 100);
    const share = `${100 - round} of 100 marks go through, ${round} go round`;
    marks.push(
      words(middle, scale.y(level - depth) + 5, share, `label figure pale${second ? ' clear' : ''}`, 'middle'),
    );
  }
  const under = 0.5 * (media.bottom + floorOf(cut));
  const deep = level - under;
  if ((media.bottom - floorOf(cut)) * scale.a > 30 && across > 0.6 * SHARES && (deep < 2 * BAND || deep > 3 * BAND)) {
    marks.push(
      words(
        middle,
        scale.y(under) + 5,
        'space under the rack',
        `label name ${deep > 2 * BAND ? 'deep' : 'pale'} clear`,
        'middle',
      ),
    );
  }
  return marks;
}
