/** What a site's figures rest on besides its build: how its pump is driven and what its media hold. */
import { formatPercent, formatVolume } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** Less than a milliliter is nothing to tell, m³. */
const LEAST = 1e-6;

/** '80 % of its full speed'; '' where the pump is driven as its curve is for. */
export const drivenWords = ({ pump }: Scenario): string =>
  pump.speed === 1 ? '' : `${formatPercent(pump.speed)} of its full speed`;

/** Settled volume that all layers of the media hold as the site is given, m³. */
export const settledVolume = ({ filter }: Scenario): number =>
  (filter?.media?.layers ?? []).reduce((sum, { deposit }) => sum + deposit, 0);

/** The same in words, '3.0 L'; '' where it is none. */
export function settledWords(s: Scenario): string {
  const held = settledVolume(s);
  return held < LEAST ? '' : formatVolume(held, s.display);
}
