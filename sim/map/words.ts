/** A map in sentences: where the present setting lies, and where all checks of the balance hold. */
import { type Display, formatDuration, formatFlow, formatLength, formatPercent } from '../quantity/index.ts';
import { BALANCE_CHECKS, type BalanceCheck, type MapPoint, type OperatingMap, type Stretch } from './answer.ts';
import { tally } from './region.ts';

/** What a handle is turned by from along its pipe, degrees. */
export const closed = (opening: number): number => 90 * (1 - opening);

/** 'open', '36° closed', 'shut'. */
export function handleWords(opening: number): string {
  const angle = Math.round(closed(opening));
  return angle === 0 ? 'open' : angle >= 90 ? 'shut' : `${angle}° closed`;
}

/** The setting of the valves, of pump and split where those are mapped. */
export function settingWords({ bottom, top, speed }: Pick<MapPoint, 'bottom' | 'top' | 'speed'>): string {
  const slower = speed === 1 ? '' : `the pump at ${formatPercent(speed)} of its speed, `;
  return `${slower}the bottom valve ${handleWords(bottom ?? 0)}, the top valve ${handleWords(top ?? 0)}`;
}

/** What the running balance comes to at a point. */
export function figureWords(point: MapPoint, over: string | null, display: Display): string {
  const { flow, split, channeled, pore, emptyBed, headroom, stone } = point;
  if (flow === null) return 'there is no running balance';
  if (flow <= 0) return 'no water comes up';
  const parts = [
    `the pump lifts ${formatFlow(flow, display)}`,
    ...(split === null ? [] : [`${formatPercent(split)} of it goes by the bottom feed`]),
    ...(channeled === null ? [] : [`${formatPercent(channeled)} of that slips round the media`]),
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

export function presentWords({ now, over }: OperatingMap, display: Display): string {
  const says = `As it is (${settingWords(now)}) ${figureWords(now, over, display)}.`;
  return now.found ? `${says} ${checkWords(now.fails)}` : says;
}

/** The sentences of the region: along each axis through the present point, then over the whole map. */
export function regionWords(map: OperatingMap): string[] {
  const { plane, now } = map;
  if (!now.found) return [mapWords(map)];
  const axes =
    plane === 'valves'
      ? ([
          ['x', `With the top valve as it is (${handleWords(now.y)})`, 'the bottom valve', handleStretch],
          ['y', `With the bottom valve as it is (${handleWords(now.x)})`, 'the top valve', handleStretch],
        ] as const)
      : ([
          ['x', `With ${shareWords(now.y)} of the water by the bottom feed`, 'the pump', speedStretch],
          ['y', 'With the pump as fast as it is', 'the share by the bottom feed', shareStretch],
        ] as const);
  return [
    ...axes.map(([axis, lead, what, stretchWords]) => alongWords(lead, what, map.along[axis], map[axis], stretchWords)),
    mapWords(map),
  ];
}

type StretchWords = (from: number, to: number, all: boolean) => string;

const handleStretch: StretchWords = (from, to, all) => {
  if (all) return 'anywhere from open to shut';
  const [low, high] = [handleWords(to), handleWords(from)];
  return low === high ? low : `between ${degrees(to)} and ${high}`;
};
const degrees = (opening: number): string => handleWords(opening).replace(' closed', '');
/** A share or a speed, none of it without decimals. */
export const shareWords = (share: number): string => (share < 5e-4 ? '0 %' : formatPercent(share));

const speedStretch: StretchWords = (from, to) => `${between(from, to)} of its speed`;
const shareStretch: StretchWords = (from, to) => between(from, to);
const between = (from: number, to: number): string => {
  const [low, high] = [shareWords(from), shareWords(to)];
  return low === high ? `at ${low}` : `between ${low} and ${high}`;
};

function alongWords(
  lead: string,
  what: string,
  stretches: readonly Stretch[],
  values: readonly number[],
  words: StretchWords,
): string {
  if (stretches.length === 0) return `${lead} there is no setting of ${what} at which all checks hold.`;
  const [first, last] = [values[0], values[values.length - 1]];
  const told = stretches.map(({ from, to }) => words(from, to, from <= first && to >= last)).join(', and ');
  const beyond = [...new Set(stretches.flatMap(({ below, above }) => [below, above]))].filter((each) => each !== null);
  const why = beyond.length > 0 ? ` Beyond, ${beyond.map((check) => `‘${check}’`).join(' or ')} fails.` : '';
  return `${lead}, all checks hold with ${what} ${told}.${why}`;
}

function mapWords(map: OperatingMap): string {
  const { found, hold, failing } = tally(map);
  if (found === 0) return 'No point of the map has a running balance.';
  if (hold === found) return `All checks hold at every one of the map’s ${found} points.`;
  const told = [...failing].sort(([a], [b]) => BALANCE_CHECKS.indexOf(a) - BALANCE_CHECKS.indexOf(b));
  const why = told.map(([check, count]) => `‘${check}’ at ${count}`).join(', ');
  return `${hold === 0 ? 'None' : `All checks hold at ${hold}`} of the map’s ${found} points${hold === 0 ? ' holds every check' : ''}; the first to fail is ${why}.`;
}

/** What the map does not look at. */
export const NOT_MAPPED =
  'Only the checks of the running balance are mapped: what runs back at a stop, a first start and the rest are asked of the site as it is. A valve’s loss is good to a factor of two, so its angles are a starting point.';
