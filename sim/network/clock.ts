import { parseMoment } from '../quantity/index.ts';

export const DAY = 86400;

/** The site's own clock: local, without zone and summer time; `starts` is `YYYY-MM-DDTHH:MM`. */
function epoch(starts: string): number {
  return parseMoment(starts) as number;
}

/** First moment of a run, s, at which the clock shows a time of day (s after midnight); then every day. */
export function firstMoment(starts: string, timeOfDay: number): number {
  return (((timeOfDay - epoch(starts)) % DAY) + DAY) % DAY;
}

/** Month (0 January .. 11) in force at a moment of a run. */
export function monthAt(starts: string, t: number): number {
  return new Date((epoch(starts) + t) * 1000).getUTCMonth();
}

/** The next moment after another at which a new month begins, s. */
export function nextMonth(starts: string, t: number): number {
  const begin = epoch(starts);
  const date = new Date((begin + t) * 1000);
  date.setUTCMonth(date.getUTCMonth() + 1, 1);
  date.setUTCHours(0, 0, 0, 0);
  return date.getTime() / 1000 - begin;
}
