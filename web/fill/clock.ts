/** Clock times as they are said and typed: by the half day in US customary units, by 24 hours else. */
import { wallClock } from '../../sim/fill/clock.ts';
import type { Display } from '../../sim/quantity/index.ts';

export interface ClockWords {
  /** '4:03' or '16:03'. */
  readonly figure: string;
  /** 'am' or 'pm'; '' by 24 hours. */
  readonly half: string;
  /** 'Tue 3 Jun' on another day than that of the opening; else ''. */
  readonly day: string;
}

const HOUR = 3600;
const two = (n: number): string => String(n).padStart(2, '0');

/** A time of day, s after midnight, to the minute it has reached. */
export function timeWords(timeOfDay: number, display: Display): Omit<ClockWords, 'day'> {
  const hour = Math.floor(timeOfDay / HOUR);
  const minute = two(Math.floor((timeOfDay % HOUR) / 60));
  if (display === 'metric') return { figure: `${two(hour)}:${minute}`, half: '' };
  return { figure: `${hour % 12 === 0 ? 12 : hour % 12}:${minute}`, half: hour < 12 ? 'am' : 'pm' };
}

/**
 * A moment of a run as the clock on the wall says it.
 *
 * @param from the day it needs no name on, s from the start
 */
export function clockWords(starts: string, t: number, display: Display, zone?: string, from = 0): ClockWords {
  const parts = /^(?:(.*) )?(\d\d):(\d\d)$/.exec(wallClock(starts, t, zone));
  if (!parts) return { figure: 'never', half: '', day: '' };
  const [, day = '', hour, minute] = parts;
  const [today = ''] = wallClock(starts, from, zone).split(/ ?\d\d:\d\d$/);
  const time = timeWords(Number(hour) * HOUR + Number(minute) * 60, display);
  // The day of the start has no name on the wall: a later one is told apart from it all the same.
  return { ...time, day: day === today ? '' : day };
}

/** In one piece: 'Tue 3 Jun 5:40 am'. */
export const clockText = ({ figure, half, day }: ClockWords): string => [day, figure, half].filter(Boolean).join(' ');

/** Seconds after midnight of a typed time: '16:03', '4:03 pm', '4 pm', '1603'; undefined where it is none. */
export function typedTime(text: string): number | undefined {
  const parts = /^(\d{1,2})(?:[:.h]?(\d{2}))?\s*(?:([ap])\.?(?:m\.?)?)?$/i.exec(text.trim());
  if (!parts) return undefined;
  const [hour, minute, half] = [Number(parts[1]), Number(parts[2] ?? 0), parts[3]?.toLowerCase()];
  if (minute > 59) return undefined;
  if (half === undefined) return hour < 24 ? hour * HOUR + minute * 60 : undefined;
  if (hour < 1 || hour > 12) return undefined;
  return ((hour % 12) + (half === 'p' ? 12 : 0)) * HOUR + minute * 60;
}

/** A date and a time of day as a moment of a file: '2031-06-02T16:03'. */
export const momentOf = (date: string, timeOfDay: number): string =>
  `${date}T${two(Math.floor(timeOfDay / HOUR))}:${two(Math.floor((timeOfDay % HOUR) / 60))}`;

/** An instant as date and time of day on the wall of a zone. */
export function wallOf(instant: Date, zone: string): { readonly date: string; readonly time: number } {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  }).formatToParts(instant);
  const of = (type: string): string => parts.find((part) => part.type === type)?.value ?? '00';
  return {
    date: `${of('year')}-${of('month')}-${of('day')}`,
    time: Number(of('hour')) * HOUR + Number(of('minute')) * 60,
  };
}
