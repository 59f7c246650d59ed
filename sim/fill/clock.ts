import { parseMoment } from '../quantity/index.ts';

/**
 * The site's clock where it hangs: a moment of a run as an instant, and as what a clock on the wall shows then. The
 * run's own clock knows no zone; in a given one (IANA name, by the runtime's own tables) summer time comes and goes.
 */

/** A moment of a run: s from its start, and what the clock on the wall shows. */
export interface Moment {
  readonly t: number;
  readonly clock: string;
}

const DAY = 86400;
const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const two = (n: number): string => String(n).padStart(2, '0');

/** Whether the runtime knows a zone by this name. */
export function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    calendar: 'gregory',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  formats.set(zone, made);
  return made;
}

/** What the wall shows at an instant (ms), as ms of a calendar without zones. */
function wallAt(instant: number, zone: string): number {
  const part: Record<string, number> = {};
  for (const { type, value } of formatOf(zone).formatToParts(instant)) part[type] = Number(value);
  const shown = Date.UTC(part['year'], part['month'] - 1, part['day'], part['hour'], part['minute'], part['second']);
  return shown + (((instant % 1000) + 1000) % 1000);
}

/**
 * The instant (ms) at which the wall shows a time. One that is shown twice is its first; one that is skipped is read by
 * the offset from before the gap (RFC 5545, 3.3.5).
 */
function instantOfWall(wall: number, zone: string): number {
  const offset = (instant: number): number => wallAt(instant, zone) - instant;
  const before = offset(wall - DAY * 1000);
  const after = offset(wall + DAY * 1000);
  for (const each of [before, after]) if (offset(wall - each) === each) return wall - each;
  return wall - before;
}

const startWall = (starts: string): number => (parseMoment(starts) ?? 0) * 1000;

/** The instant, in ms since 1970 UTC, t seconds after `starts`, which is a time on the wall of the zone. */
export function instantOf(starts: string, t: number, zone: string): number {
  return instantOfWall(startWall(starts), zone) + t * 1000;
}

function wallOf(starts: string, t: number, zone: string | undefined): Date {
  const wall = zone === undefined ? startWall(starts) + t * 1000 : wallAt(instantOf(starts, t, zone), zone);
  return new Date(Math.floor(wall / 1000) * 1000);
}

/**
 * The clock on the wall t seconds after `starts`: '18:05' on the first day, then with its day, 'Tue 3 Jun 05:40'. In a
 * zone a run that begins before a change of the clock and ends after it is told by the clock of after.
 */
export function wallClock(starts: string, t: number, zone?: string): string {
  const date = wallOf(starts, t, zone);
  if (!Number.isFinite(date.getTime())) return 'never';
  const clock = `${two(date.getUTCHours())}:${two(date.getUTCMinutes())}`;
  const first = wallOf(starts, 0, zone);
  if (date.toISOString().slice(0, 10) === first.toISOString().slice(0, 10)) return clock;
  const year = date.getUTCFullYear() === first.getUTCFullYear() ? '' : ` ${date.getUTCFullYear()}`;
  return `${DAYS[date.getUTCDay()]} ${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}${year} ${clock}`;
}

/**
 * The moments of a run, s, at which the wall shows a time of day (s after midnight), from the day before its start on.
 *
 * @param until s from the start
 */
export function momentsOfDay(starts: string, timeOfDay: number, until: number, zone?: string): number[] {
  const start = startWall(starts);
  const midnight = Math.floor(start / (DAY * 1000)) * DAY * 1000;
  const origin = zone === undefined ? start : instantOfWall(start, zone);
  const moments: number[] = [];
  for (let day = -1; ; day++) {
    const wall = midnight + (day * DAY + timeOfDay) * 1000;
    const t = ((zone === undefined ? wall : instantOfWall(wall, zone)) - origin) / 1000;
    if (t > until) return moments;
    moments.push(t);
  }
}
