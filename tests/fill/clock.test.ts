/** The clock on the wall against the rules of the zones, and the calendar file read back by a general library. */
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { calendarFile } from '../../sim/fill/calendar.ts';
import { instantOf, isZone, momentsOfDay, wallClock } from '../../sim/fill/clock.ts';
import { planOf } from './sites.ts';

const HOUR = 3600;
const utc = (starts: string, t: number, zone: string): string => new Date(instantOf(starts, t, zone)).toISOString();

/**
 * Europe: summer time from the last Sunday of March to the last of October, both at 01:00 UTC (Directive 2000/84/EC).
 * United States: from the second Sunday of March to the first of November, both at 02:00 (15 U.S.C. 260a).
 */
describe('the clock of a zone', () => {
  test.each([
    ['Europe/Berlin', '2031-01-15T12:00', '2031-01-15T11:00:00.000Z'],
    ['Europe/Berlin', '2031-07-15T12:00', '2031-07-15T10:00:00.000Z'],
    ['America/New_York', '2031-07-15T12:00', '2031-07-15T16:00:00.000Z'],
    ['Asia/Kolkata', '2031-07-15T02:00', '2031-07-14T20:30:00.000Z'],
    ['UTC', '2031-07-15T02:00', '2031-07-15T02:00:00.000Z'],
    // Shown twice: the first. Skipped: by the offset from before the gap (RFC 5545, 3.3.5).
    ['Europe/Berlin', '2031-10-26T02:30', '2031-10-26T00:30:00.000Z'],
    ['Europe/Berlin', '2031-03-30T02:30', '2031-03-30T01:30:00.000Z'],
    ['America/New_York', '2031-11-02T01:30', '2031-11-02T05:30:00.000Z'],
    ['America/New_York', '2031-03-09T02:30', '2031-03-09T07:30:00.000Z'],
  ])('in %s shows %s at %s', (zone, wall, instant) => {
    expect(utc(wall, 0, zone)).toBe(instant);
  });

  test('of a fill over the change to summer time is told by the clock of after', () => {
    const from = '2031-03-29T20:00';
    expect(wallClock(from, 7 * HOUR)).toBe('Sun 30 Mar 03:00');
    expect(wallClock(from, 5.5 * HOUR, 'Europe/Berlin')).toBe('Sun 30 Mar 01:30');
    expect(wallClock(from, 7 * HOUR, 'Europe/Berlin')).toBe('Sun 30 Mar 04:00');
  });

  test('of a fill over the change back too', () => {
    const from = '2031-10-25T20:00';
    expect(wallClock(from, 7 * HOUR, 'Europe/Berlin')).toBe('Sun 26 Oct 02:00');
    expect(wallClock(from, 12 * HOUR, 'Europe/Berlin')).toBe('Sun 26 Oct 07:00');
  });

  test('names the day over midnight, and the year when it turns', () => {
    expect(wallClock('2031-06-01T18:00', 5 * HOUR + 59 * 60 + 59)).toBe('23:59');
    expect(wallClock('2031-06-01T18:00', 6 * HOUR)).toBe('Mon 2 Jun 00:00');
    expect(wallClock('2031-12-31T18:00', 7 * HOUR)).toBe('Thu 1 Jan 2032 01:00');
  });

  test('has 22:00 once a day, an hour sooner by the run after the clock went forward', () => {
    const from = '2031-03-29T20:00';
    expect(momentsOfDay(from, 22 * HOUR, 50 * HOUR)).toEqual([-22, 2, 26, 50].map((h) => h * HOUR));
    expect(momentsOfDay(from, 22 * HOUR, 50 * HOUR, 'Europe/Berlin')).toEqual([-22, 2, 25, 49].map((h) => h * HOUR));
  });

  test('knows the names of zones', () => {
    expect(isZone('Europe/Berlin')).toBe(true);
    expect(isZone('Europe/Berlln')).toBe(false);
    expect(isZone('')).toBe(false);
  });
});

describe('a fill in a zone', () => {
  const berlin = { zone: 'Europe/Berlin' };

  test.each([
    // 7 h 17 min 48 s from 20:00.
    ['2031-03-28T20:00', 'Sat 29 Mar 03:17'],
    ['2031-03-29T20:00', 'Sun 30 Mar 04:17'],
    ['2031-10-25T20:00', 'Sun 26 Oct 02:17'],
  ])('opened at %s is full at %s', (starts, full) => {
    expect(planOf((file) => (file.starts = starts), berlin).full?.clock).toBe(full);
  });

  test('that waits for 07:00 waits an hour less over the change to summer time', () => {
    const nights = [22 * HOUR, 7 * HOUR] as const;
    const plan = planOf((file) => (file.starts = '2031-03-29T20:00'), { ...berlin, nights });
    const [evening, morning] = plan.hoses[0].stretches;
    expect(evening.to?.t).toBe(2 * HOUR);
    expect(morning.from).toEqual({ t: 10 * HOUR, clock: 'Sun 30 Mar 07:00' });
  });
});

describe('the calendar file', () => {
  const event = {
    title: 'Shut the hose; pond full, 05:40',
    description:
      'North, 20 L/min\nmeter 12\\34 · “Weiße Wäsche”, ein Märchen über Bäche und Teiche 🪷 and so on 🪷🪷🪷🪷🪷🪷🪷',
    at: Date.UTC(2031, 2, 30, 2, 17, 48, 900),
    alarmBefore: 600,
    uid: '7a1@tumblebay',
    stamp: Date.UTC(2031, 2, 29, 18, 0, 0),
  };
  const file = calendarFile(event);
  const calendar = new ICAL.Component(ICAL.parse(file));
  const vevent = calendar.getFirstSubcomponent('vevent') as ICAL.Component;
  const alarm = vevent.getFirstSubcomponent('valarm') as ICAL.Component;

  test('reads back word for word', () => {
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(vevent.getFirstPropertyValue('summary')).toBe(event.title);
    expect(vevent.getFirstPropertyValue('description')).toBe(event.description);
    expect(vevent.getFirstPropertyValue('uid')).toBe(event.uid);
    expect(String(vevent.getFirstPropertyValue('dtstamp'))).toBe('2031-03-29T18:00:00Z');
  });

  test('begins at the instant, in UTC', () => {
    const begin = vevent.getFirstPropertyValue('dtstart') as ICAL.Time;
    expect(begin.zone.tzid).toBe('UTC');
    expect(begin.toJSDate().toISOString()).toBe('2031-03-30T02:17:48.000Z');
    expect((vevent.getFirstPropertyValue('dtend') as ICAL.Time).compare(begin)).toBe(1);
  });

  test('rings ten minutes before, or at the moment', () => {
    expect(alarm.getFirstPropertyValue('action')).toBe('DISPLAY');
    expect(alarm.getFirstPropertyValue('description')).toBe(event.title);
    expect((alarm.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds()).toBe(-600);
    const now = new ICAL.Component(ICAL.parse(calendarFile({ ...event, alarmBefore: 0 })));
    const trigger = now
      .getFirstSubcomponent('vevent')
      ?.getFirstSubcomponent('valarm')
      ?.getFirstPropertyValue('trigger');
    expect((trigger as ICAL.Duration).toSeconds()).toBe(0);
  });

  test('has lines of 75 octets at most, each ended by CRLF, no character split', () => {
    expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true);
    const lines = file.split('\r\n').slice(0, -1);
    expect(lines.some((line) => line.startsWith(' '))).toBe(true);
    for (const line of lines) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\r\n\uFFFD]/);
    }
  });

  test('leaves out what no calendar takes', () => {
    expect(calendarFile({ ...event, title: 'a\u0007b\r\nc' })).toContain('SUMMARY:ab\\nc\r\n');
  });

  test('of a fill over the change to summer time begins at the instant at which it is full', () => {
    const starts = '2031-03-29T20:00';
    const plan = planOf((site) => (site.starts = starts), { zone: 'Europe/Berlin' });
    const at = instantOf(starts, plan.full?.t ?? 0, 'Europe/Berlin');
    const read = new ICAL.Component(ICAL.parse(calendarFile({ ...event, at }))).getFirstSubcomponent('vevent');
    const begin = read?.getFirstPropertyValue('dtstart') as ICAL.Time;
    // 19:00 UTC and 7 h 17 min 48 s.
    expect(begin.toJSDate().toISOString()).toBe('2031-03-30T02:17:48.000Z');
  });
});
