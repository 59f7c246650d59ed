import { formatDuration, formatNumber, formatPercent } from '../quantity/index.ts';
import type { Care } from './answer.ts';

/** Weeks looked at: two years. */
export const LONGEST = 104;

/** When to clean, what it rests on, and what the figure takes for granted. */
export function careSays(found: Omit<Care, 'says'>): string {
  return [cleanSays(found), restsSays(found), GRANTED].filter((sentence) => sentence !== '').join(' ');
}

const GRANTED =
  'It takes the debris of the file for granted, day after day: twice as much halves the time. Clean sooner what ' +
  'smells or runs over.';

function cleanSays({ passing, weeks, band, limit, hoursADay, course }: Omit<Care, 'says'>): string {
  const most = formatPercent(limit);
  const on = hoursADay === 24 ? 'all day' : `${formatNumber(hoursADay, hoursADay % 1 === 0 ? 0 : 1)} hours a day`;
  if (passing.when === 'clean')
    return (
      `Even clean, ${formatPercent(course.channeled[0])} of the bottom feed slips round the media, more than the ` +
      `${most} that are wanted: no cleaning mends that, a narrower gap does.`
    );
  if (passing.when !== 'later')
    return `With the pump on ${on} the channeled share stays within ${most} for two years${bandSays(weeks, band)}.`;
  const often = weeks === 0 ? 'more than once a week' : `every ${weeks === 1 ? 'week' : `${weeks} weeks`}`;
  return (
    `Clean the media ${often}${bandSays(weeks, band)}: with the pump on ${on} it takes ` +
    `${formatDuration(passing.t)} until more than ${most} of the bottom feed slips round them.`
  );
}

/** ' (3 to 11)'; '' where the ends are the figure itself. */
function bandSays(weeks: Care['weeks'], [low, high]: Care['band']): string {
  if (low === high && low === weeks) return '';
  const text = (end: number | null): string =>
    end === null ? `over ${LONGEST}` : end === 0 ? 'under one' : String(end);
  return weeks === null || weeks === 0 ? ` (${text(low)} to ${text(high)} weeks)` : ` (${text(low)} to ${text(high)})`;
}

const CALLED: Readonly<Record<string, string>> = {
  'filter.media.gap': 'the gap round the media',
  'filter.media.submergedWeight': 'the media’s weight under water',
};

/** Which guess moves the weeks most. */
function restsSays({ rests }: Omit<Care, 'says'>): string {
  const spread = ({ atLow, atHigh }: Care['rests'][number]): number =>
    Math.abs((atHigh ?? LONGEST) - (atLow ?? LONGEST));
  const widest = [...rests].sort((a, b) => spread(b) - spread(a))[0];
  if (widest === undefined || spread(widest) === 0) return '';
  const what = CALLED[widest.place] ?? 'how much of the pores a deposit takes';
  return `Most of that span comes from ${what}, which nobody has measured.`;
}
