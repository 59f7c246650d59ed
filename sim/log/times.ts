import { parseMoment, parseQuantity } from '../quantity/index.ts';

/** When a line was taken down: a moment of a calendar or a time since the start. */
export type LineTime =
  | { readonly ok: true; readonly kind: 'date' | 'since'; readonly t: number; readonly noon?: boolean }
  | { readonly ok: false; readonly found: string; readonly wanted: string };

export const DATE_WANTED = 'a date as 2031-06-02, or with its time of day as 2031-06-02 07:30';
const SINCE_WANTED = 'a date as 2031-06-02 07:30, or a time since the start as 3 d or 36 h';
const NOON = 43200;

const DATE = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]\s*(.+))?$/;
/** Figures of a date that can be read in more than one way: 02.06., 6/2/31. */
const TURNED = /^\d{1,4}\s*(?:\/\s*\d|\.\s*\d{1,2}\s*\.|\.\d{1,2}\s+\d)/;

const two = (text: string): string => text.padStart(2, '0');

/** Seconds after midnight of '7:30', '07:30:15' or '7:30 pm'; undefined where it is none. */
export function timeOfDay(text: string): number | undefined {
  const parts = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?\s*([ap])?\.?(?:m\.?)?$/i.exec(text.trim());
  if (!parts) return undefined;
  const [, hours, minutes, seconds = '0', half] = parts;
  const hour = Number(hours);
  if (half !== undefined && (hour < 1 || hour > 12)) return undefined;
  const h = half === undefined ? hour : (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  const [m, s] = [Number(minutes), Number(seconds)];
  return h < 24 && m < 60 && s < 60 ? h * 3600 + m * 60 + s : undefined;
}

/**
 * Reads when a line was taken down: an ISO date (ISO 8601) with or without a time of day, or a time since the start.
 * A date that can be read in two ways is refused.
 * @param bare unit of a bare number, where the log's head names one
 */
export function lineTime(text: string, bare: 'd' | 'h' | undefined): LineTime {
  const plain = text.trim();
  const quoted = JSON.stringify(plain);
  const date = DATE.exec(plain);
  if (date) {
    const [, year, month, day, clock] = date;
    const midnight = parseMoment(`${year}-${two(month)}-${two(day)}T00:00`);
    if (midnight === undefined) return { ok: false, found: `${quoted}, a day no calendar has`, wanted: DATE_WANTED };
    if (clock === undefined) return { ok: true, kind: 'date', t: midnight + NOON, noon: true };
    const seconds = timeOfDay(clock.replace(/Z$/, ''));
    if (seconds === undefined)
      return { ok: false, found: `${quoted}, whose time of day can’t be read`, wanted: DATE_WANTED };
    return { ok: true, kind: 'date', t: midnight + seconds };
  }
  if (plain === '') return { ok: false, found: 'no time', wanted: SINCE_WANTED };
  if (TURNED.test(plain))
    return { ok: false, found: `${quoted}, whose day and month can be read two ways`, wanted: DATE_WANTED };
  return sinceStart(plain, bare);
}

function sinceStart(plain: string, bare: 'd' | 'h' | undefined): LineTime {
  const counted = /^day\s+(\d+(?:\.\d+)?)$/i.exec(plain);
  const number = /^\d+(?:\.\d+)?$/.test(plain);
  const text = counted ? `${counted[1]} d` : number && bare !== undefined ? `${plain} ${bare}` : plain;
  const parsed = parseQuantity(text, 'time');
  if (parsed.ok && parsed.value >= 0) return { ok: true, kind: 'since', t: parsed.value };
  const found = parsed.ok ? `${JSON.stringify(plain)}, a time before the start` : parsed.found;
  return { ok: false, found, wanted: SINCE_WANTED };
}
