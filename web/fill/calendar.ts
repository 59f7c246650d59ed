/** The shut-off as an event of a calendar that rings before. */
import { calendarFile } from '../../sim/fill/calendar.ts';
import { instantOf } from '../../sim/fill/clock.ts';
import type { FillPlan } from '../../sim/fill/plan.ts';
import { FILL_CAUTION, meterText } from '../../sim/fill/words.ts';
import { formatVolume } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** It rings so long before the hose is to be shut, s. */
export const ALARM = 600;

/** undefined where the pond is never full, or is already. */
export function shutOff({ title, display }: Scenario, plan: FillPlan, zone: string, stamp: number): string | undefined {
  const { full, volume, hoses, starts } = plan;
  if (full === null || full.t === 0) return undefined;
  const meters = hoses.flatMap(({ name, meter }) =>
    meter === null ? [] : [`The meter of ${name} then reads ${meterText(meter, display)}.`],
  );
  const at = instantOf(starts, full.t, zone);
  return calendarFile({
    title: `Shut the hose: ${title}`,
    description: [`${formatVolume(volume ?? 0, display)} have run in.`, ...meters, FILL_CAUTION].join('\n'),
    at,
    alarmBefore: ALARM,
    uid: `fill-${Math.round(at)}@tumblebay`,
    stamp,
  });
}

const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** '3 Jun 2031', of a moment of a file. */
export function dateWords(moment: string): string {
  const [year = '', month = '1', day = '1'] = moment.slice(0, 10).split('-');
  return `${Number(day)} ${MONTHS[Number(month) - 1]} ${year}`;
}
