/** What a site's map cannot show, in sentences. */

import { formatFlow, formatPercent, formatVolume } from '../quantity/index.ts';
import { settledVolume } from '../results/asSet.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { MapPoint, OperatingMap } from './answer.ts';
import { figureAt } from './between.ts';

/** Why a site has no plane of two valves; undefined where it has. */
export function noPlane({ plumbing: { bottomFeed, topFeed } }: Scenario): string | undefined {
  if (!bottomFeed && topFeed)
    return 'There is no bottom feed: all the water goes by the top feed, whose valve only throttles the pump. A map of settings wants both.';
  if (bottomFeed && !topFeed)
    return 'There is no top feed: all the water goes by the bottom feed, whose valve only throttles the pump. A map of settings wants both.';
  return bottomFeed ? undefined : 'There is neither a bottom feed nor a top feed, so there is no valve to map.';
}

type Laid = Pick<OperatingMap, 'plane' | 'x' | 'y' | 'points' | 'over' | 'now'>;

/** What is left out of a map, and why. */
export function whatIsLeftOut(s: Scenario, map: Laid): string[] {
  const { plane, points, over, now } = map;
  const says = [...settledNow(s), ...(plane === 'flow' ? throttledWords(s, map) : [])];
  if (!s.filter) says.push('There is no filter: nothing floats up, nothing slips round, and there is no contact time.');
  else if (!s.filter.media)
    says.push('The filter holds no media: nothing floats up, nothing slips round, and there is no contact time.');
  else if (s.filter.media.gap === 0)
    says.push('There is no gap round the media: nothing slips round them until they float up.');
  says.push(...sameShare(points), ...unfedWords(s, points));
  if (over === null) says.push('There is no stone, so no flow over one is drawn.');
  const missing = points.filter(({ found }) => !found).length;
  if (missing === points.length) says.push('No setting has a running balance: the map is blank.');
  else if (missing > 0) says.push(`${missing} of ${points.length} points are left blank: ${whyBlank[plane]}`);
  if (!now.found) says.push('The site as it is finds no running balance.');
  const dry = points.filter(({ found, flow }) => found && (flow ?? 0) <= 0).length;
  if (dry > 0 && dry < points.length && plane === 'flow')
    says.push(`At ${dry} of ${points.length} points the pump lifts no water so high.`);
  return says;
}

/** No check asks that the media be fed at all: a setting that leaves them none holds, and is named. */
function unfedWords({ filter }: Scenario, points: readonly MapPoint[]): string[] {
  const unfed = points.some(
    ({ found, fails, flow, split }) => found && fails === null && (flow ?? 0) > 0 && split === 0,
  );
  return filter?.media && unfed
    ? [
        'With the bottom valve shut all checks may hold, but nothing goes through the media: no check asks that they be fed.',
      ]
    : [];
}

/** What stands in the media as they are mapped, where anything ever settles in them. */
function settledNow(s: Scenario): string[] {
  const { filter, debris, display } = s;
  const settled = settledVolume(s);
  if (settled > 0)
    return [`The map is drawn with what has settled in the media now, ${formatVolume(settled, display)}.`];
  return debris > 0 && filter?.media?.layers.some(({ capture }) => capture > 0)
    ? ['The map is drawn with clean media, as they are at the start: what settles in them moves its lines.']
    : [];
}

/** Less than this share of the flow is no difference. */
const THROTTLED = 0.01;

/** Every place of the plane of flow has its valves as open as its share lets them; the site need not. */
function throttledWords({ display }: Scenario, map: Laid): string[] {
  const { flow, x, y } = map.now;
  const open = figureAt(map, 'flow', x, y);
  const lead = 'Every place of this plane is drawn with the valves as far open as its share lets them';
  if (flow === null || open === null || open - flow < THROTTLED * open) return [`${lead}.`];
  return [
    `${lead}: so opened, the pump would lift ${formatFlow(open, display)} where it now lifts ${formatFlow(flow, display)}.`,
  ];
}

/** A share that would be told as 0.0 %, −. */
const UNSEEN = 5e-4;
/** Where the share that slips round hardly changes over the map, −. */
const HARDLY = 0.01;

function sameShare(points: readonly MapPoint[]): string[] {
  const shares = points.flatMap(({ channeled }) => channeled ?? []);
  const [low, high] = [Math.min(...shares), Math.max(...shares)];
  if (!(high > 0) || high - low > HARDLY) return [];
  if (high < UNSEEN)
    return [
      'At every setting hardly anything slips round the media: their gap is too narrow beside what they let through.',
    ];
  return [
    `At every setting ${formatPercent(low)} to ${formatPercent(high)} of the bottom feed’s water slips round the media: the gap decides it, not the valves.`,
  ];
}

const whyBlank = {
  valves: 'the water course finds no running balance there.',
  flow: 'no setting of the valves splits the water so at that speed, since a slower pump does not lift to both outlets.',
} as const;
