import { type Display, formatDuration, formatFine, formatNumber, formatPercent } from '../quantity/index.ts';
import type { Care } from './answer.ts';

/** Weeks looked at: two years. */
export const LONGEST = 104;
const WEEK = 604800;

/** When to clean, what it rests on, and what the figure takes for granted. */
export function careSays(found: Omit<Care, 'says'>, display: Display): string {
  return [cleanSays(found), sinceSays(found), restsSays(found, display), GRANTED]
    .filter((sentence) => sentence !== '')
    .join(' ');
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
    `${timeText(passing.t)} until more than ${most} of the bottom feed slips round them.`
  );
}

/** What has settled in them by the file, as time since a cleaning. */
function sinceSays({ since, course: { t } }: Omit<Care, 'says'>): string {
  if (since === 0) return '';
  return since === null
    ? `By now they hold more than settles in ${timeText(t[t.length - 1])}.`
    : `By now they hold what settles in ${timeText(since)}.`;
}

/** Weeks, from two of them up; days and hours below. */
function timeText(t: number): string {
  return t < 2 * WEEK ? formatDuration(t) : `${formatNumber(t / WEEK, 1)} weeks`;
}

function weeksText(weeks: number | null): string {
  if (weeks === null) return `over ${LONGEST}`;
  return weeks === 0 ? 'under one' : weeks === 1 ? 'one' : String(weeks);
}

const counted = (weeks: number | null): string => `${weeksText(weeks)} week${weeks !== null && weeks < 2 ? '' : 's'}`;

/** ' (3 to 11)'; '' where the ends are the figure itself. */
function bandSays(weeks: Care['weeks'], [low, high]: Care['band']): string {
  if (low === high && low === weeks) return '';
  return weeks === null || weeks === 0
    ? ` (${weeksText(low)} to ${weeksText(high)} weeks)`
    : ` (${weeksText(low)} to ${weeksText(high)})`;
}

/** What is guessed of the media, and how its ends are written. */
const GUESSES: Readonly<Record<string, { what: string; end: (value: number, display: Display) => string }>> = {
  'filter.media.gap': { what: 'the gap round the media', end: gapText },
  'filter.media.submergedWeight': {
    what: 'the media’s weight under water',
    end: (value) => `${formatNumber(value)} N`,
  },
};
const DEPOSIT = { what: 'how much of the pores a deposit takes', end: timesText };

function gapText(gap: number, display: Display): string {
  return gap === 0 ? 'none' : formatFine(gap, display);
}

function timesText(beta: number): string {
  return beta === 1 ? 'its own volume' : `${formatNumber(beta, beta % 1 === 0 ? 0 : 1)} times its volume`;
}

/** Which guess moves the weeks most, and what they are at its ends. */
function restsSays({ rests }: Omit<Care, 'says'>, display: Display): string {
  const spread = ({ atLow, atHigh }: Care['rests'][number]): number =>
    Math.abs((atHigh ?? LONGEST) - (atLow ?? LONGEST));
  const widest = [...rests].sort((a, b) => spread(b) - spread(a))[0];
  if (widest === undefined || spread(widest) === 0) return '';
  const { what, end } = GUESSES[widest.place] ?? DEPOSIT;
  const [low, high] = widest.ends.map((value) => end(value, display));
  return (
    `Most of that span comes from ${what}, which nobody has measured: ${counted(widest.atLow)} at ${low}, ` +
    `${counted(widest.atHigh)} at ${high}.`
  );
}
