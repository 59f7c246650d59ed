/** A rod's readings as the crew reads them out. Pure. */
import { type Display, formatLevel, formatNumber } from '../../sim/quantity/index.ts';
import { type LevelSetUp, rodReadings } from '../../sim/readings/rods.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { trueFractions } from '../state/typed-inches.ts';

export interface RodRow {
  readonly name: string;
  readonly elevation: string;
  readonly rod: string;
}

/** A rod to the millimeter in meters, or in feet and inches to the eighth. */
export const rodText = (rod: number, display: Display): string =>
  display === 'us' ? trueFractions(formatLevel(rod, display)) : `${formatNumber(rod, 3)} m`;

export function rodRows(s: Scenario, setUp: LevelSetUp): RodRow[] {
  return rodReadings(s, setUp).map(({ name, elevation, rod, above }) => ({
    name,
    elevation: trueFractions(formatLevel(elevation, s.display)),
    rod: above ? 'above the level: set it up higher' : rodText(rod, s.display),
  }));
}
