import { formatFlow, formatLength } from '../../sim/quantity/format.ts';
import type { Moment } from '../state/moment.ts';
import { bedAt } from './bed.ts';
import { layerNames } from './close-up-layers.ts';
import { boxOfText, meet, named } from './close-up-text.ts';
import { floorOf, type Spot } from './cut.ts';
import { circle, type Mark, path, segment, type TextMark, words } from './marks.ts';
import { boreWidth } from './pipes.ts';
import type { Scale } from './scale.ts';
import type { PipeRoute, Scene } from './scene.ts';
import type { Settings } from './settings.ts';
import { wayMarks } from './streamlines.ts';
import { dartsInGap } from './vessel.ts';

/** The words of the shares take so much room across, px. */
const SHARES = 210;
/** A feed nearer than this to the edge of the sheet has no room for its words, px. */
const FEED = 70;
/** Depth of a tint of the water, m: text stands on the two palest and the three deepest. */
const BAND = 0.15;

/**
 * What a close-up of the filter has over the drawing: the ways of the water; its layers beside it, valves and feeds at
 * their pipes, shares and levels in the water.
 */
export function closeUpWords(scene: Scene, scale: Scale, moment: Moment, settings: Settings): Mark[] {
  const others = [...feedWords(scene, scale, moment, settings), ...waterWords(scene, scale, moment)];
  return [
    ...waysOf(scene, scale, moment),
    ...layerNames(scene, scale, moment, others.filter((mark) => mark.kind === 'text').map(boxOfText)),
    ...others,
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

/** How a handle stands, in degrees from the pipe's line. */
const turned = (opening: number): string => {
  const degrees = Math.round(90 * (1 - opening));
  return degrees === 0 ? 'in line' : degrees === 90 ? 'shut' : `at ${degrees}°`;
};

function feedWords({ pipes, scenario }: Scene, scale: Scale, { flows }: Moment, settings: Settings): TextMark[] {
  const { display } = scenario;
  const { bottomFeed, topFeed, main } = pipes;
  const marks: TextMark[] = [];
  const reach = (route: PipeRoute): number => 0.5 * boreWidth(route.diameter, scale) + 12;
  const flow = (name: string): string => formatFlow(flows[name] ?? 0, display);
  const isSeen = ([station]: Spot): boolean => scale.x(station) > scale.left + FEED;
  if (topFeed?.valve && isSeen(topFeed.valve)) {
    const [x, y] = scale.at(topFeed.valve);
    const figure = `${turned(settings.topValve)}, ${flow('top feed')}`;
    marks.push(...named('top feed', figure, x - reach(topFeed) - 4, y - 10, 'end', ' earth'));
  }
  if (isSeen(pipes.tee)) {
    const [x] = scale.at(pipes.tee);
    marks.push(...named('main line', flow('main'), x - reach(main) - 4, scale.bottom - 24, 'end', ' earth'));
  }
  if (bottomFeed?.valve && isSeen(bottomFeed.valve)) {
    const [x, y] = scale.at(bottomFeed.valve);
    const figure = `${turned(settings.bottomValve)}, ${flow('bottom feed')}`;
    // Over the pipe where the foot of the sheet or other words leave no room under it.
    const seats = [y + reach(bottomFeed) + 16, y - reach(bottomFeed) - 22];
    const seated = seats
      .map((at) => named('bottom feed', figure, x, at, 'middle', ' earth'))
      .find((pair) =>
        pair
          .map(boxOfText)
          .every((box) => box.bottom < scale.bottom && !marks.some((mark) => meet(box, boxOfText(mark)))),
      );
    marks.push(...(seated ?? []));
  }
  return marks;
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
    ...named('filter', said, at, up - 16, 'start'),
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
