import { pondWater } from '../../pondwater/figures.ts';
import { treatmentSays } from '../../pondwater/words.ts';
import { formatDuration, formatPercent, formatVolume } from '../../quantity/index.ts';
import type { Check } from '../answer.ts';
import { type CheckInput, told } from './check.ts';

/** How long the pump takes to move all the circulating water once, and what of it is treated. */
export function turnoverCheck({ scenario, balance }: CheckInput): Check | undefined {
  if (!balance) return undefined;
  const { flows } = balance.answer;
  const volume = balance.volumes.reduce((sum, v) => sum + v, 0);
  const time = flows.main > 1e-9 ? volume / flows.main : null;
  const all = formatVolume(volume, scenario.display);
  const says =
    time === null
      ? `None of the ${all} is moved.`
      : `All ${all} that circulate pass the pump once in ${formatDuration(time)}.`;
  const media = scenario.filter?.media ? Math.max(0, flows.media) : undefined;
  const treated =
    time === null || media === undefined
      ? ''
      : media > 0
        ? ` ${formatPercent(media / flows.main)} of the flow goes through the media, all of it once in ${formatDuration(volume / media)}.`
        : ' None of it goes through the media.';
  const rule =
    ' Common practice: once an hour, half of that for a planted pond.' +
    (media === undefined
      ? ''
      : ' It counts what the pump moves; what goes by the top feed or round the media comes back as it went.');
  const waste = scenario.filter?.media?.removal || scenario.load > 0;
  const treatment = waste ? ` ${treatmentSays(scenario, pondWater(scenario, balance))}` : '';
  return told({ name: 'turnover', value: time, unit: 's', says: `${says}${treated}${rule}${treatment}` });
}
