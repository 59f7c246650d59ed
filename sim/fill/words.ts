/** What is said of a fill wherever it is told: on the page, in a terminal, in a calendar. */
import { type Display, formatNumber, formatVolume } from '../quantity/index.ts';
import type { Never } from './course.ts';

/** What is to be done while a hose runs. */
export const FILL_CAUTION =
  'A fill is never left alone, nor children near it. The hose’s end stays over the water or behind a backflow device, ' +
  'as the local code has it: a hose under water can siphon the pond back into the drinking water. What runs over must ' +
  'not reach a foundation or a neighbor.';

const NEVER: Readonly<Record<Never, string>> = {
  weak: 'never: as much is lost as runs in',
  shut: 'never: the last hose is shut, or empty, before',
  long: 'not within three months',
  starves: 'never: the pump draws air, or the water course finds no running balance',
};

/** A meter's reading: m³ to the liter, or gallons. */
export function meterText(volume: number, display: Display): string {
  return display === 'us' ? formatVolume(volume, display) : `${formatNumber(volume, 3)} m³`;
}

/** Why a pond is never full, in a few words. */
export const neverWords = (never: Never): string => NEVER[never];
