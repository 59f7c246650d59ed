/** Assumed values that the sketch asks for nowhere: what they are called and how they are told. */
import { type Display, formatTemperature } from '../../sim/quantity/index.ts';
import { assumptionWords } from '../../sim/results/checks/assumptionWords.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { keyName } from '../state/key-names.ts';
import { bandIn, FINE, setIn } from './units.ts';

/** As the answers call it. */
export function otherName(place: string, scenario: Scenario | undefined): string {
  return scenario ? assumptionWords(scenario, { place }, keyName) : keyName(keyOf(place));
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
