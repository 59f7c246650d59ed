/** An event of a calendar: a moment, with an alarm before it. */
export interface CalendarEvent {
  readonly title: string;
  readonly description: string;
  /** The moment itself, ms since 1970 UTC or a Date. */
  readonly at: Date | number;
  /** How long before the moment it rings, s; 0: then. */
  readonly alarmBefore: number;
  /** Told apart from every other event by it. */
  readonly uid: string;
  /** When the file is made. */
  readonly stamp: Date | number;
}

/** How long the event stands in the calendar, ms. */
const LASTS = 15 * 60_000;
/** Octets of a line (RFC 5545, 3.1). */
const LINE = 75;

/**
 * A calendar file with one event that rings (RFC 5545): instants in UTC, which every calendar shows by its own clock,
 * over a change to summer time and back.
 */
export function calendarFile({ title, description, at, alarmBefore, uid, stamp }: CalendarEvent): string {
  const begin = Number(at);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//tumblebay//fill//EN',
    'BEGIN:VEVENT',
    `UID:${text(uid)}`,
    `DTSTAMP:${utc(Number(stamp))}`,
    `DTSTART:${utc(begin)}`,
    `DTEND:${utc(begin + LASTS)}`,
    `SUMMARY:${text(title)}`,
    `DESCRIPTION:${text(description)}`,
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `TRIGGER:${before(alarmBefore)}`,
    `DESCRIPTION:${text(title)}`,
    'END:VALARM',
    'END:VEVENT',
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

/** 20310615T054000Z; a moment is told to the whole second, never late. */
function utc(instant: number): string {
  return `${new Date(Math.floor(instant / 1000) * 1000).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;
}

function before(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  return whole === 0 ? 'PT0S' : `-PT${whole}S`;
}

/** A text value (3.3.11): backslash, semicolon, comma and line breaks escaped, other control characters left out. */
function text(value: string): string {
  return value
    .replace(/\\/g, '\\\\')
    .replace(/[;,]/g, (mark) => `\\${mark}`)
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/(?!\t)\p{Cc}/gu, '');
}

const encoder = new TextEncoder();

/** Breaks a line before its 76th octet, never within a character; each next line begins with a blank. */
function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > LINE) {
      out += '\r\n ';
      octets = 1;
    }
    out += character;
    octets += size;
  }
  return out;
}
