/** Where all checks of the balance hold, and what the pump's speed asks, in sentences. */
import { type Display, formatFlow } from '../quantity/index.ts';
import { BALANCE_CHECKS, type OperatingMap, type Stretch } from './answer.ts';
import { tally } from './region.ts';
import { handleWords, presentWords, shareWords } from './words.ts';

/** All that a map says of the present setting and of the others. */
export const mapSentences = (map: OperatingMap, display: Display): string[] => [
  presentWords(map, display),
  ...regionWords(map),
  ...drivenWords(map, display),
];

/** The sentences of the region: along each axis through the present point, then over the whole map. */
export function regionWords(map: OperatingMap): string[] {
  const { plane, now } = map;
  if (!now.found) return [mapWords(map)];
  const axes =
    plane === 'valves'
      ? ([
          ['x', `With the top valve as it is (${handleWords(now.y)})`, bottomStretch],
          ['y', `With the bottom valve as it is (${handleWords(now.x)})`, topStretch],
        ] as const)
      : ([
          ['x', `With ${shareWords(now.y)} of the water by the bottom feed`, speedStretch],
          ['y', `With the pump as fast as it is${speedWords(now.speed)}`, shareStretch],
        ] as const);
  return [...axes.map(([axis, lead, words]) => alongWords(lead, map.along[axis], map[axis], words)), mapWords(map)];
}

const speedWords = (speed: number): string => (speed === 1 ? '' : ` (${shareWords(speed)} of its full speed)`);

interface StretchWords {
  readonly what: string;
  /** What there is none of where nothing holds. */
  readonly one: string;
  readonly between: (from: number, to: number, all: boolean) => string;
}

const handleBetween: StretchWords['between'] = (from, to, all) => {
  if (all) return 'anywhere from open to shut';
  const [low, high] = [endWords(to), endWords(from)];
  return low === high ? low : `between ${low.replace(' closed', '')} and ${high}`;
};

/** An end of a stretch, which is not the end of the handle's way where it only rounds to it. */
function endWords(opening: number): string {
  const words = handleWords(opening);
  const isRounded = (words === 'shut' && opening > 0) || (words === 'open' && opening < 1);
  return isRounded ? `nearly ${words}` : words;
}

const between = (from: number, to: number): string => {
  const [low, high] = [shareWords(from), shareWords(to)];
  return low === high ? `at ${low}` : `between ${low} and ${high}`;
};

const valveStretch = (what: string): StretchWords => ({
  what,
  one: `setting of ${what}`,
  between: handleBetween,
});
const bottomStretch = valveStretch('the bottom valve');
const topStretch = valveStretch('the top valve');
const speedStretch: StretchWords = {
  what: 'the pump',
  one: 'speed of the pump',
  between: (from, to) => `${between(from, to)} of its full speed`,
};
const shareStretch: StretchWords = { what: 'the share by the bottom feed', one: 'share by the bottom feed', between };

function alongWords(
  lead: string,
  stretches: readonly Stretch[],
  values: readonly number[],
  { what, one, between: words }: StretchWords,
): string {
  if (stretches.length === 0) return `${lead} there is no ${one} at which all checks hold.`;
  const [first, last] = [values[0], values[values.length - 1]];
  const told = stretches.map(({ from, to }) => words(from, to, from <= first && to >= last)).join(', and ');
  const beyond = [...new Set(stretches.flatMap(({ below, above }) => [below, above]))].filter((each) => each !== null);
  const why = beyond.length > 0 ? ` Beyond, ${beyond.map((check) => `‘${check}’`).join(' or ')} fails.` : '';
  return `${lead}, all checks hold with ${what} ${told}.${why}`;
}

function mapWords(map: OperatingMap): string {
  const { found, hold, lifted, failing } = tally(map);
  if (found === 0) return 'No point of the map has a running balance.';
  if (hold === found) return `All checks hold at every one of the map’s ${found} points.`;
  const told = [...failing].sort(([a], [b]) => BALANCE_CHECKS.indexOf(a) - BALANCE_CHECKS.indexOf(b));
  const why = told.map(([check, count]) => `‘${check}’ at ${count}`).join(', ');
  const afloat =
    lifted > 0 ? ` At ${lifted === found ? 'all' : lifted} point${lifted === 1 ? '' : 's'} the media float up.` : '';
  return `${hold === 0 ? 'None' : `All checks hold at ${hold}`} of the map’s ${found} points${hold === 0 ? ' holds every check' : ''}; the first to fail is ${why}.${afloat}`;
}

/** What it asks of a pump not to be driven at its full speed. */
function drivenWords({ now: { speed }, fullSpeed }: OperatingMap, display: Display): string[] {
  if (speed === 1) return [];
  const full = fullSpeed === null ? '' : `, ${formatFlow(fullSpeed, display)} with the valves as they are`;
  return [
    speed < 1
      ? `A pump that can’t be driven slower wants a smaller one in its place, or a throttle. The most that today’s pump gives is its flow at full speed${full}.`
      : `A pump that can’t be driven faster than its curve is for wants a bigger one in its place. The most that today’s pump gives without is its flow at full speed${full}.`,
  ];
}
