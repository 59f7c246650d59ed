import { formatNumber } from './format.ts';

/**
 * The site's own clock: local, without zone or summer time, on the calendar of its `starts`.
 * JavaScript's UTC calendar serves as a calendar without zones; no clock of the machine is read.
 */

const STARTS = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2}))?$/;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const two = (n: number): string => String(n).padStart(2, '0');

/** Seconds since 1970 on that calendar, or undefined where the text is no moment, as '2031-02-30T00:00' is none. */
export function parseMoment(text: string): number | undefined {
  const parts = STARTS.exec(text);
  if (!parts) return undefined;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = parts
    .slice(1)
    .map((each) => Number(each ?? 0));
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  date.setUTCHours(hour, minute, second);
  const kept = date.getUTCMonth() === month - 1 && date.getUTCDate() === day && date.getUTCHours() === hour;
  return kept && minute < 60 && second < 60 ? date.getTime() / 1000 : undefined;
}

/** Seconds after midnight of 'HH:MM', or undefined. */
export function parseTimeOfDay(text: string): number | undefined {
  const parts = /^(\d{2}):(\d{2})$/.exec(text);
  if (!parts) return undefined;
  const [hour, minute] = [Number(parts[1]), Number(parts[2])];
  return hour < 24 && minute < 60 ? hour * 3600 + minute * 60 : undefined;
}

/** Seconds of the month (0..11) of a year: 2,419,200 for a plain February. */
export function monthLength(year: number, month: number): number {
  return new Date(Date.UTC(year, month + 1, 0)).getUTCDate() * 86400;
}

const dateAt = (starts: string, t: number): Date => new Date(((parseMoment(starts) ?? 0) + t) * 1000);

/** The moment t seconds after `starts` as 'YYYY-MM-DDTHH:MM:SS'. */
export function momentText(starts: string, t: number): string {
  const date = dateAt(starts, Math.round(t));
  return Number.isFinite(date.getTime()) ? date.toISOString().slice(0, 19) : 'never';
}

/** The clock t seconds after `starts`: '12:03' on the first day, then '2 Jun 12:03', with the year when it turns. */
export function formatClock(starts: string, t: number): string {
  const date = dateAt(starts, Math.floor(t));
  if (!Number.isFinite(date.getTime())) return 'never';
  const first = dateAt(starts, 0);
  const clock = `${two(date.getUTCHours())}:${two(date.getUTCMinutes())}`;
  const day = `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
  if (date.getUTCFullYear() !== first.getUTCFullYear()) return `${day} ${date.getUTCFullYear()} ${clock}`;
  return date.toISOString().slice(0, 10) === first.toISOString().slice(0, 10) ? clock : `${day} ${clock}`;
}

const SCALE: readonly (readonly [seconds: number, name: string])[] = [
  [86400, 'd'],
  [3600, 'h'],
  [60, 'min'],
  [1, 's'],
];

/** Seconds as the two greatest parts: '3 min 10 s', '24 h', '1 d 4 h'; under 10 s with a decimal. Days from 72 h up. */
export function formatDuration(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'never';
  if (seconds < 0) return `\u2212${formatDuration(-seconds)}`;
  if (seconds < 9.95) return `${Number(seconds.toFixed(1))} s`;
  const from = seconds < 59.5 ? 3 : seconds < 3599.5 ? 2 : seconds < 259170 ? 1 : 0;
  const [big, name] = SCALE[from] ?? [1, 's'];
  const [small, minor] = SCALE[from + 1] ?? [1, ''];
  const rounded = Math.round(seconds / small) * small;
  const whole = Math.floor(rounded / big);
  const left = Math.round((rounded - whole * big) / small);
  return left === 0 || minor === ''
    ? `${formatNumber(whole)} ${name}`
    : `${formatNumber(whole)} ${name} ${left} ${minor}`;
}
