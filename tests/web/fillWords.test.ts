/** Clock times, tide marks, sentences and edits of the fill question. */
import { describe, expect, test } from 'vitest';
import { readScenario } from '../../sim/index.ts';
import { fillGiven, siteOn } from '../../web/engine/fill-answers.ts';
import type { FillDay, FillMore, FillPlanned } from '../../web/engine/fill-asked.ts';
import { dateWords, shutOff } from '../../web/fill/calendar.ts';
import { clockText, clockWords, momentOf, timeWords, typedTime, wallOf } from '../../web/fill/clock.ts';
import { clockTicks, courseScale } from '../../web/fill/course.ts';
import { bucketEdits, formEdits, hoseEdits, hoseRows, lessEdits, moreEdits } from '../../web/fill/edits.ts';
import { levelAt, seated, type TideMark, tideMarks } from '../../web/fill/tide.ts';
import { fileText, flowText, shownFigure, typedFigure } from '../../web/fill/typed-figure.ts';
import { type FillSeen, fillAnswer, fillSentences, pumpSentences } from '../../web/fill/words.ts';
import { chosen } from '../../web/state/dials-turned.ts';
import { siteText } from './sites.ts';

const GALLON = 0.003785411784;

function scenarioOf(text: string) {
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

function planned(text: string, day: FillDay = {}, display?: 'us' | 'metric'): FillPlanned {
  const given = fillGiven({ want: 'fill', text, display, day, part: 'plan' });
  if (given.kind !== 'fill plan') throw new Error(JSON.stringify(given));
  return given;
}

function seenOf(text: string, day: FillDay = {}, display: 'us' | 'metric' = 'metric', whole = false): FillSeen {
  const more = whole ? fillGiven({ want: 'fill', text, display, day, part: 'more' }) : undefined;
  const edge = Math.min(...scenarioOf(text).pond.rim.crest.map(([, z]) => z));
  return { planned: planned(text, day, display), more: more as FillMore | undefined, display, zone: day.zone, edge };
}

const courtyard = siteText('courtyard');
const with_ = (text: string, edits: readonly (readonly [string, unknown])[]): string =>
  JSON.stringify(chosen(JSON.parse(text), edits));

describe('a clock time', () => {
  test('is told by the half day in inches and gallons, by 24 hours else', () => {
    const at = (hour: number, minute: number) => hour * 3600 + minute * 60;
    expect(timeWords(at(16, 3), 'us')).toEqual({ figure: '4:03', half: 'pm' });
    expect(timeWords(at(16, 3), 'metric')).toEqual({ figure: '16:03', half: '' });
    expect(timeWords(at(0, 5), 'us')).toEqual({ figure: '12:05', half: 'am' });
    expect(timeWords(at(12, 0), 'us')).toEqual({ figure: '12:00', half: 'pm' });
    expect(timeWords(at(0, 0), 'metric')).toEqual({ figure: '00:00', half: '' });
  });

  test('names its day once midnight has passed, and not again for what happens on the day it counts from', () => {
    const starts = '2031-06-02T18:00';
    expect(clockText(clockWords(starts, 3600, 'us'))).toBe('7:00 pm');
    expect(clockText(clockWords(starts, 11.5 * 3600, 'us'))).toBe('Tue 3 Jun 5:30 am');
    expect(clockText(clockWords(starts, 11.5 * 3600, 'metric'))).toBe('Tue 3 Jun 05:30');
    expect(clockText(clockWords(starts, 12 * 3600, 'metric', undefined, 11 * 3600))).toBe('06:00');
  });

  // The clocks of Berlin went from 02:00 to 03:00 on 29 March 2026 (EU Directive 2000/84/EC: last Sunday of March).
  test('keeps to the zone over a change to summer time', () => {
    expect(clockText(clockWords('2026-03-28T20:00', 8 * 3600, 'metric', 'Europe/Berlin'))).toBe('Sun 29 Mar 05:00');
  });

  test.each([
    ['16:03', 16 * 3600 + 180],
    ['4:03 pm', 16 * 3600 + 180],
    ['4:03pm', 16 * 3600 + 180],
    ['4 p.m.', 16 * 3600],
    ['12 am', 0],
    ['12:30 PM', 12.5 * 3600],
    ['7', 7 * 3600],
    ['0710', 7 * 3600 + 600],
  ])('typed as %s is read', (text, seconds) => {
    expect(typedTime(text)).toBe(seconds);
  });

  test.each(['25:00', '13 pm', '0 am', '4:75', 'noon', '', '4:0', '-3'])('typed as ‘%s’ is none', (text) => {
    expect(typedTime(text)).toBeUndefined();
  });

  test('of an instant is that of the zone’s wall', () => {
    expect(wallOf(new Date('2026-07-01T23:30:00Z'), 'Europe/Berlin')).toEqual({ date: '2026-07-02', time: 5400 });
    expect(momentOf('2026-07-02', 5400)).toBe('2026-07-02T01:30');
  });
});

describe('a typed figure', () => {
  test('counts in the unit its field shows where it has none', () => {
    expect(typedFigure('14¼', 'length', 'us')).toEqual({ value: expect.closeTo(14.25 * 0.0254, 12) });
    expect(typedFigure('14 1/4 in', 'length', 'metric')).toEqual({ value: expect.closeTo(14.25 * 0.0254, 12) });
    expect(typedFigure('5', 'volume', 'us')).toEqual({ value: expect.closeTo(5 * GALLON, 12) });
    expect(typedFigure('33', 'time', 'us')).toEqual({ value: 33 });
    expect(typedFigure('', 'time', 'us')).toEqual({ value: undefined });
  });

  test('that cannot be read says how to give it', () => {
    expect(typedFigure('14 1/', 'length', 'us')).toEqual({ wrong: expect.stringContaining('2 3/4 in') });
    expect(typedFigure('lots', 'volume', 'metric')).toEqual({ wrong: '"lots" can’t be read: give it as 10 L.' });
    expect(typedFigure('3 kg', 'volume', 'metric')).toEqual({ wrong: expect.stringContaining('10 L') });
  });

  test('comes back as it was typed', () => {
    expect(shownFigure(14.25 * 0.0254, 'length', 'us')).toBe('14¼ in');
    expect(shownFigure(0.34, 'length', 'metric')).toBe('340 mm');
    expect(shownFigure(33, 'time', 'us')).toBe('33 s');
    expect(shownFigure(5 * GALLON, 'volume', 'us')).toBe('5 gal');
    expect(flowText((5 * GALLON) / 33, 'us')).toBe('9.0909 gpm');
    expect(fileText(3e5, 'pressure', 'metric')).toBe('3 bar');
  });
});

describe('the answer', () => {
  test('is when to shut the hose, from an empty pond where nobody says how the water stands', () => {
    const seen = seenOf(courtyard, {}, 'metric', true);
    const { lead, clock } = fillAnswer(seen);
    expect(lead).toBe('Shut the hose at');
    // 14 L/min for what the pond holds.
    const { plan } = seen.planned;
    expect(plan!.full!.t).toBeCloseTo(plan!.volume! / (14e-3 / 60), 3);
    expect(clock!.figure).toBe(plan!.full!.clock);
    const says = fillSentences(seen).join(' ');
    expect(says).toMatch(/ L from 06:00, give or take \d+ min, moved most by the bucket test\./);
    expect(says).toContain('110 mm below the edge');
  });

  test('says it is full already, and never, in words', () => {
    const water = scenarioOf(courtyard).pond.fillMark;
    expect(fillAnswer(seenOf(courtyard, { water })).lead).toMatch(/full already/);
    const weak = with_(courtyard, [['supply.hose.volume', '200 L']]);
    expect(fillAnswer(seenOf(weak))).toEqual({
      lead: expect.stringMatching(/^It is never: the last hose is shut, or empty/),
      clock: undefined,
    });
    const none = with_(courtyard, [['supply.hose', undefined]]);
    expect(fillAnswer(seenOf(none)).lead).toMatch(/^Give it a hose/);
    expect(planned(none).plan).toBeNull();
  });

  test('passes midnight with the day’s name, in the wished opening’s clock', () => {
    const { clock } = fillAnswer(seenOf(courtyard, { opened: '2026-11-25T22:00' }, 'us'));
    expect(clock!.half).toBe('am');
    expect(clock!.day).toBe('Thu 26 Nov');
  });

  test('for an hour is the latest opening: hose and clock meet at the hour', () => {
    const seen = seenOf(courtyard, { opened: '2026-11-25T12:00', by: 7 * 3600 });
    const { lead, clock } = fillAnswer(seen);
    expect(lead).toBe('Open the hose at');
    const lasts = seen.planned.plan!.lasts!;
    // 07:00 on the next day less how long it lasts.
    expect(seen.planned.opening!.open).toBeCloseTo(19 * 3600 - lasts, -1);
    expect(clock!.figure).toBe(timeWords((31 * 3600 - lasts) % 86400, 'metric').figure);
    expect(fillSentences(seen)[0]).toMatch(/^Shut it at (Thu 26 Nov )?0[67]:\d\d\.$/);
  });

  test('waits through a night in which the hose is shut', () => {
    const day = { opened: '2026-11-25T20:00' };
    const through = planned(courtyard, day).plan!.full!.t;
    const broken = planned(courtyard, { ...day, nights: [22 * 3600, 6 * 3600] }).plan!.full!.t;
    // Evaporation of eight hours more is all that comes on top.
    expect(broken - through).toBeGreaterThanOrEqual(8 * 3600 - 1);
    expect(broken - through).toBeLessThan(8.2 * 3600);
  });

  test('tells of the pump: how far the pond falls, how much more, then the mark', () => {
    const [falls, more] = pumpSentences(seenOf(courtyard, {}, 'us', true));
    expect(falls).toMatch(/^Then the pump, the hose still running: the pond falls .* in \(.* in with the hose shut\)/);
    expect(falls).not.toMatch(/\d\/\d/);
    expect(more).toMatch(
      /^Let [\d,.]+ gal more run in, .*: at .* [ap]m it stands at the fill mark again\. Only then draw the mark\.$/,
    );
  });

  test('reads the meter', () => {
    const metered = with_(courtyard, [['supply.hose.meter', '48212 gal']]);
    const seen = seenOf(metered, {}, 'us');
    const reads = Math.round(48212 + seen.planned.plan!.volume! / GALLON);
    expect(fillSentences(seen).join(' ')).toContain(`The meter then reads ${reads.toLocaleString('en')} gal.`);
  });
});

describe('tide marks', () => {
  test('stand from the fill mark down, each with its clock and its level below the edge', () => {
    const marks = tideMarks(seenOf(courtyard, {}, 'us'));
    expect(marks[0]).toMatchObject({ kind: 'full', below: '4⅜ in' });
    expect(marks.at(-1)).toMatchObject({ kind: 'opened', clock: '6:00' });
    expect(marks.map(({ level }) => level)).toEqual(marks.map(({ level }) => level).sort((a, b) => b - a));
  });

  test('that crowd give way to the fill mark and the opening', () => {
    const at = (level: number, kind: TideMark['kind']): TideMark => ({
      name: '',
      level,
      clock: '',
      day: '',
      below: '',
      kind,
    });
    const marks = [at(0, 'full'), at(-1, 'mark'), at(-3, 'mark'), at(-3.5, 'opened')];
    expect(seated(marks, (z) => -10 * z, 17).map(({ level }) => level)).toEqual([0, -3.5]);
    expect(seated(marks, (z) => -18 * z, 17).map(({ level }) => level)).toEqual([0, -1, -3.5]);
  });

  test('and the water between them follow the plan', () => {
    const { plan, water } = planned(courtyard);
    expect(levelAt(plan!, 0).level).toBeCloseTo(water, 6);
    expect(levelAt(plan!, plan!.full!.t).level).toBeCloseTo(plan!.fillMark, 6);
    expect(levelAt(plan!, plan!.full!.t / 2).volume).toBeCloseTo(plan!.volume! / 2, 6);
    const scale = courseScale(plan!, 328);
    const ticks = clockTicks(plan!, scale, undefined);
    expect(ticks.every((t) => t % 3600 === 0 && t > 0 && t < plan!.full!.t)).toBe(true);
    expect(scale.t(scale.x(5000))).toBeCloseTo(5000, 6);
  });
});

describe('what is typed of a hose', () => {
  const rowsOf = (text: string) => hoseRows(scenarioOf(text), JSON.parse(text), new Map());
  const edited = (text: string, edits: readonly (readonly [string, unknown])[]) => scenarioOf(with_(text, edits));

  test('as bucket and seconds is its flow, and comes back as the same seconds', () => {
    const [row] = rowsOf(courtyard);
    const edits = bucketEdits(row, JSON.parse(courtyard), 5 * GALLON, 33, 'us');
    const { hoses } = edited(courtyard, edits);
    expect(hoses[0].flow).toBeCloseTo((5 * GALLON) / 33, 8);
    const [again] = hoseRows(edited(courtyard, edits), JSON.parse(with_(courtyard, edits)), new Map([[0, 5 * GALLON]]));
    expect(shownFigure(again.seconds, 'time', 'us')).toBe('33 s');
  });

  test('goes into a sketch as its bucket', () => {
    const text = siteText('backyard');
    const [row] = rowsOf(text);
    expect(shownFigure(row.bucket, 'volume', 'us')).toBe('5 gal');
    expect(shownFigure(row.seconds, 'time', 'us')).toBe('41 s');
    const edits = bucketEdits(row, JSON.parse(text), 5 * GALLON, 33, 'us');
    expect(edits).toEqual([['sketch.bucket', ['5 gal', '33 s']]]);
    expect(edited(text, edits).hoses[0].flow).toBeCloseTo((5 * GALLON) / 33, 9);
    expect(edited(text, hoseEdits(row, 'meter', '100 gal')).hoses[0]).toMatchObject({
      flow: expect.closeTo((5 * GALLON) / 41, 9),
    });
  });

  test.each(['courtyard', 'backyard'])('of %s may be a pressure instead, and a bucket again', (name) => {
    const text = siteText(name);
    const [row] = rowsOf(text);
    const pressed = with_(text, formEdits(row, JSON.parse(text), 'pressure', 'metric'));
    const s = scenarioOf(pressed);
    expect(s.hoses[0].by).toBe('pressure');
    const [again] = hoseRows(s, JSON.parse(pressed), new Map());
    expect(again.pressed).toEqual({ pressure: 3e5, length: 15, bore: 0.013 });
    const back = scenarioOf(with_(pressed, formEdits(again, JSON.parse(pressed), 'bucket', 'metric')));
    expect(back.hoses[0].by).toBeUndefined();
    expect(back.hoses[0].flow).toBeCloseTo(s.hoses[0].flow, 7);
  });

  test.each(['courtyard', 'backyard'])('of %s may be several, and a tank truck with its load', (name) => {
    const text = siteText(name);
    const flow = scenarioOf(text).hoses[0].flow;
    const two = with_(text, moreEdits(scenarioOf(text), JSON.parse(text), 'hose'));
    const three = with_(two, moreEdits(scenarioOf(two), JSON.parse(two), 'truck'));
    const { hoses } = scenarioOf(three);
    expect(hoses.map((hose) => hose.name)).toEqual(['hose', 'hose 2', 'tank truck']);
    expect(hoses[0].flow).toBeCloseTo(flow, 8);
    expect(hoses[2].volume).toBeGreaterThan(7);
    const rows = hoseRows(scenarioOf(three), JSON.parse(three), new Map());
    expect(scenarioOf(with_(three, lessEdits(rows[1]))).hoses.map((hose) => hose.name)).toEqual(['hose', 'tank truck']);
  });

  test('may be the first hose of a site', () => {
    const none = with_(courtyard, [['supply.hose', undefined]]);
    expect(edited(none, moreEdits(scenarioOf(none), JSON.parse(none), 'hose')).hoses).toHaveLength(1);
    expect(edited(none, moreEdits(scenarioOf(none), JSON.parse(none), 'truck')).hoses[0].volume).toBe(8);
  });
});

describe('the day of a fill', () => {
  test('moves the whole run to where its first hose opens then', () => {
    const text = with_(courtyard, [['actions', [{ at: '2 h', do: 'hose', to: 'on' }]]]);
    const site = siteOn(scenarioOf(text), { opened: '2026-11-25T14:10' });
    expect(site.starts).toBe('2026-11-25T12:10');
    expect(planned(text, { opened: '2026-11-25T14:10' }).plan!.open!.clock).toBe('14:10');
  });

  test('is told by a calendar file that rings at the instant of the wall’s clock', () => {
    const zone = 'America/New_York';
    const { plan } = planned(courtyard, { opened: '2026-07-04T18:00', zone });
    const file = shutOff(scenarioOf(courtyard), plan!, zone, 0)!;
    const at = new Date(Date.UTC(2026, 6, 4, 22) + Math.floor(plan!.full!.t) * 1000);
    expect(file).toContain(`DTSTART:${at.toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`);
    expect(file).toContain('TRIGGER:-PT600S');
    expect(dateWords('2026-07-04T18:00')).toBe('4 Jul 2026');
    const full = planned(courtyard, { water: plan!.fillMark });
    expect(shutOff(scenarioOf(courtyard), full.plan!, zone, 0)).toBeUndefined();
  });

  test('of a file that cannot be read is refused with what is wrong', () => {
    const text = with_(courtyard, [['supply.hose.flow', 'lots']]);
    const given = fillGiven({ want: 'fill', text, display: undefined, day: {}, part: 'plan' });
    expect(given).toMatchObject({ kind: 'refused', problems: [{ place: 'supply.hose.flow' }] });
  });
});
