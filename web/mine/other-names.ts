/** Assumed values that the sketch asks for nowhere: what they are called and how they are told. */
import { type Display, formatTemperature } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { keyName } from '../state/key-names.ts';
import { bandIn, FINE, setIn } from './units.ts';

/** Keys in the words in which an answer names what it rests on. */
const KEYS: Readonly<Record<string, string>> = {
  manning: 'roughness (Manning’s n)',
  cd: 'discharge coefficient',
  gap: 'gap round the mats',
  submergedWeight: 'weight under water',
  curve: 'curve from the box’s two figures',
  plan: 'outline',
  rim: 'edge',
  k: 'fittings',
};

const PARTS: Readonly<Record<string, string>> = {
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

export function otherName(place: string, scenario: Scenario | undefined): string {
  const dot = place.lastIndexOf('.');
  const part = dot < 0 ? '' : place.slice(0, dot);
  const key = place.slice(dot + 1);
  const what = KEYS[key] ?? keyName(key);
  const whose = PARTS[part] ?? reachName(part, scenario);
  return whose === undefined ? what : `the ${what} of ${whose}`;
}

function reachName(part: string, scenario: Scenario | undefined): string | undefined {
  const at = /^watercourse\[(\d+)\](?:\.stones\[(\d+)\])?(\.rim)?/.exec(part);
  const reach = at ? scenario?.watercourse[Number(at[1])] : undefined;
  if (!at || !reach) return undefined;
  const stone = at[2] !== undefined && reach.kind === 'pool' ? reach.stones[Number(at[2])] : undefined;
  return `${at[3] ? 'the edge of ' : ''}‘${(stone ?? reach).name}’`;
}

const keyOf = (place: string): string => place.slice(place.lastIndexOf('.') + 1);

export function otherValue(place: string, value: number | string | boolean, display: Display): string {
  if (typeof value !== 'number') return String(value);
  switch (keyOf(place)) {
    case 'gap':
    case 'liftSlack':
      return setIn(FINE[display], 'length', value);
    case 'roughness':
      return `${Number((value * 1000).toPrecision(3))} mm`;
    case 'temperature':
      return formatTemperature(value, display);
    case 'submergedWeight':
      return `${value} N`;
    case 'curve':
      return `${Math.round(value * 100)} %`;
    default:
      return String(Number(value.toPrecision(3)));
  }
}

export function otherBand(place: string, band: readonly [number, number], display: Display): string {
  if (/^(gap|liftSlack)$/.test(keyOf(place))) return bandIn(FINE[display], 'length', band);
  const [low, high] = band.map((value) => otherValue(place, value, display)) as [string, string];
  return `${low.replace(/ (mm|N|%)$/, '')} to ${high}`;
}
