import { formatConcentration, formatDuration, formatNumber, formatPercent, formatVolume } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { PondWater } from './answer.ts';

/** What this cannot say, said wherever a figure of it is. */
export const NO_TEST =
  'This is no water-quality test: load and removal are figures of the file, and only a test of the water tells what is in it.';

export function waterSays(s: Scenario, figures: Omit<PondWater, 'says'>): string {
  return `${turnoverSays(s, figures)} ${treatmentSays(s, figures)}`;
}

/** What the media do to the waste, without the turnover. */
export function treatmentSays(s: Scenario, figures: Omit<PondWater, 'says'>): string {
  return [treatedSays(s, figures), steadySays(s, figures), NO_TEST].filter((sentence) => sentence !== '').join(' ');
}

function turnoverSays({ display }: Scenario, { turnover, volume }: Omit<PondWater, 'says'>): string {
  const all = formatVolume(volume, display);
  return turnover === null
    ? `None of the ${all} is moved.`
    : `All ${all} that circulate pass the pump once in ${formatDuration(turnover)}.`;
}

function treatedSays(s: Scenario, figures: Omit<PondWater, 'says'>): string {
  const { removal, treatedTurnover, halfLife, leastHalfLife } = figures;
  if (s.filter?.media === undefined) return 'No media treat it.';
  if (s.filter.media.removal === 0) return 'By the file the media remove nothing from what goes through them.';
  if (treatedTurnover === null || halfLife === null || leastHalfLife === null)
    return 'Nothing goes up through the media, so nothing is treated.';
  return (
    `One pass through the media removes ${formatPercent(removal)} of the waste; as much water as there is gets freed of it in ` +
    `${formatDuration(treatedTurnover)}, and half of what is in it is gone in ${formatDuration(halfLife)}. No pump brings ` +
    `that under ${formatDuration(leastHalfLife)} with these media.`
  );
}

function steadySays({ load }: Scenario, { steady }: Omit<PondWater, 'says'>): string {
  if (load === 0) return '';
  const daily = `${formatNumber(load * 86400 * 1000, load * 86400 * 1000 < 10 ? 1 : 0)} g a day`;
  return steady === null
    ? `With ${daily} of waste and no way out of it, the water only gets worse.`
    : `With ${daily} of waste it settles at ${formatConcentration(steady)}.`;
}
