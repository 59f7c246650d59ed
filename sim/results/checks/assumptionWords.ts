import type { Assumption, Scenario } from '../../scenario/scenario.ts';
import { sketchNumber } from '../../sketch/numbers.ts';

/** Words for keys of the file that an answer may rest on. */
const KEY_WORDS: Readonly<Record<string, string>> = {
  manning: 'roughness (Manning’s n)',
  cd: 'discharge coefficient',
  gap: 'gap round the mats',
  roughness: 'roughness',
  submergedWeight: 'weight under water',
  curve: 'curve from the box’s two figures',
  plan: 'outline',
  rim: 'edge',
  k: 'fittings',
  slope: 'slope',
};

const PART_WORDS: Readonly<Record<string, string>> = {
  'plumbing.main': 'the main line',
  'plumbing.bottomFeed': 'the bottom feed',
  'plumbing.topFeed': 'the top feed',
  'filter.media': 'the media',
  'filter.lip': 'the spillway lip',
  'filter.rim': 'the filter’s edge',
  'pond.shape': 'the pond',
  'pond.rim': 'the pond’s edge',
  pump: 'the pump',
  pond: 'the pond',
  water: 'the water',
};

/**
 * An assumed value as a person calls it: 'the roughness (Manning’s n) of ‘run’', 'the width of the main stone'.
 *
 * @param keyWords the words of a key that has none here
 */
export function assumptionWords(
  s: Scenario,
  { place }: Pick<Assumption, 'place'>,
  keyWords = (key: string): string => key,
): string {
  const number = place.startsWith('sketch.') ? sketchNumber(place.slice('sketch.'.length)) : undefined;
  if (number !== undefined) return number.called;
  const dot = place.lastIndexOf('.');
  const key = place.slice(dot + 1);
  const part = dot < 0 ? '' : place.slice(0, dot);
  const what = KEY_WORDS[key] ?? keyWords(key);
  const whose = PART_WORDS[part] ?? namedPart(s, part);
  return whose === undefined ? `the value at ${place}` : `the ${what} of ${whose}`;
}

function namedPart(s: Scenario, part: string): string | undefined {
  const at = /^watercourse\[(\d+)\](?:\.stones\[(\d+)\])?(\.rim)?/.exec(part);
  if (at === null) return undefined;
  const reach = s.watercourse[Number(at[1])];
  if (reach === undefined) return undefined;
  const stone = at[2] !== undefined && reach.kind === 'pool' ? reach.stones[Number(at[2])] : undefined;
  return `${at[3] ? 'the edge of ' : ''}‘${(stone ?? reach).name}’`;
}
