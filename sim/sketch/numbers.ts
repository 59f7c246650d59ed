/**
 * The numbers of a sketch, each once: how it is asked, its default beside its band and origin, its sensible range.
 * What the scenario's own defaults say already (Cd, roughness, the gap, the weight of the media) stands there.
 */
import type { SketchNumber } from './number.ts';
import { FALLS_NUMBERS } from './numbers-falls.ts';
import { POND_NUMBERS } from './numbers-pond.ts';
import { PUMP_NUMBERS } from './numbers-pump.ts';
import { USE_NUMBERS } from './numbers-use.ts';

export const SKETCH_NUMBERS: readonly SketchNumber[] = [
  ...POND_NUMBERS,
  ...PUMP_NUMBERS,
  ...FALLS_NUMBERS,
  ...USE_NUMBERS,
];

const BY_KEY: ReadonlyMap<string, SketchNumber> = new Map(SKETCH_NUMBERS.map((each) => [each.key, each]));

export const sketchNumber = (key: string): SketchNumber | undefined => BY_KEY.get(key);

/** The band of a number's default within its sensible range; undefined where none is stated. */
export function bandOfNumber(
  each: SketchNumber,
  value: number,
  site: Parameters<NonNullable<SketchNumber['band']>>[1],
) {
  if (!each.band) return undefined;
  const [least, most] = each.range ?? [-Infinity, Infinity];
  const [low, high] = each.band(value, site);
  return [Math.max(low, least), Math.min(high, most)] as const;
}
