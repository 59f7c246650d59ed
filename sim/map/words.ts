/** A setting of pump and valves in words, and what the running balance comes to there. */
import { type Display, formatDuration, formatFlow, formatLength, formatPercent } from '../quantity/index.ts';
import type { BalanceCheck, MapPoint, OperatingMap } from './answer.ts';
import { isLifted } from './region.ts';

/** What a handle is turned by from along its pipe, degrees. */
export const closed = (opening: number): number => 90 * (1 - opening);

/** 'open', '36° closed', 'shut'. */
export function handleWords(opening: number): string {
  const angle = Math.round(closed(opening));
  return angle === 0 ? 'open' : angle >= 90 ? 'shut' : `${angle}° closed`;
}

/** A share or a speed, none of it without decimals. */
export const shareWords = (share: number): string => (share < 5e-4 ? '0 %' : formatPercent(share));

/** The setting of the valves, and of a pump that is not driven at its full speed. */
export function settingWords({ bottom, top, speed }: Pick<MapPoint, 'bottom' | 'top' | 'speed'>): string {
  const pump = speed === 1 ? '' : `the pump at ${formatPercent(speed)} of its full speed, `;
  return `${pump}the bottom valve ${handleWords(bottom ?? 0)}, the top valve ${handleWords(top ?? 0)}`;
}

/** What the running balance comes to at a point. */
export function figureWords(point: MapPoint, over: string | null, display: Display): string {
  const { flow, split, channeled, pore, emptyBed, headroom, stone } = point;
  const afloat = isLifted(point) ? ', which float up' : '';
  if (flow === null) return 'there is no running balance';
  if (flow <= 0) return 'no water comes up';
  const parts = [
    `the pump lifts ${formatFlow(flow, display)}`,
    ...(split === null ? [] : [`${formatPercent(split)} of it goes by the bottom feed`]),
    ...(channeled === null ? [] : [`${formatPercent(channeled)} of that slips round the media${afloat}`]),
    ...(pore === null || emptyBed === null
      ? []
      : [`the rest is in touch with them for ${formatDuration(pore)} (empty bed ${formatDuration(emptyBed)})`]),
    ...(stone === null ? [] : [`${formatFlow(stone, display, flow)} run over ‘${over}’`]),
    ...(headroom === null ? [] : [headroomWords(headroom, display)]),
  ];
  return parts.join(', ');
}

const headroomWords = (room: number, display: Display): string =>
  room < 0
    ? `some water stands ${formatLength(-room, display)} above its edge`
    : `the least room below an edge is ${formatLength(room, display)}`;

/** 'headroom fails', 'all checks of the balance hold'. */
export const checkWords = (fails: BalanceCheck | null): string =>
  fails === null ? 'All checks of the running balance hold.' : `The check ‘${fails}’ fails.`;

/** @param lead 'As it is', or where else the point lies */
export function presentWords(
  { now, over }: Pick<OperatingMap, 'now' | 'over'>,
  display: Display,
  lead = 'As it is',
): string {
  const says = `${lead} (${settingWords(now)}) ${figureWords(now, over, display)}.`;
  return now.found ? `${says} ${checkWords(now.fails)}` : says;
}

/** What the map does not look at. */
export const NOT_MAPPED =
  'Only the checks of the running balance are mapped: what runs back at a stop, a first start and the rest are asked of the site as it is. A valve’s loss is good to a factor of two, so its angles are a starting point.';
