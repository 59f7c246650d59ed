/** What is taken from a log's text, and what is told of it instead. */
import { describe, expect, test } from 'vitest';
import { readLog } from '../../sim/log/index.ts';

const told = (text: string): string[] =>
  readLog(text).problems.map(({ place, found, wanted }) => `${place}: found ${found}, wanted ${wanted}`);
const levels = (text: string): (number | undefined)[] => readLog(text).lines.map(({ level }) => level);
const times = (text: string): number[] => {
  const { lines } = readLog(text);
  return lines.map(({ t }) => (t - lines[0].t) / 3600);
};

describe('a log is read', () => {
  test.each([
    ['commas', '2031-06-02 07:30, 120 mm, on\n2031-06-03 19:00, 12.4 cm, off'],
    ['semicolons', '2031-06-02T07:30; 120 mm; on\n2031-06-03 7:00 pm; 0.124 m; off'],
    ['tabs and a head', 'date\ttime\tlevel (mm)\tpump\n2031-06-02\t07:30\t120\ton\n2031-06-03\t19:00\t124\tstopped'],
    ['times since the start', '0 h, 120 mm, on\n35.5 h, 124 mm, off'],
    ['bare days by the head', 'days,level mm,pump\n0,120,1\n1.4791666666667,124,0'],
    [
      'quotes, a byte order mark, carriage returns and a note',
      '\ufeff# June\r\n"2031-06-02 07:30","120 mm","on"\r\n\r\n"2031-06-03 19:00","124 mm","off"\r\n',
    ],
  ])('with %s', (_, text) => {
    expect(told(text)).toEqual([]);
    expect(levels(text)[0]).toBeCloseTo(0.12, 12);
    expect(levels(text)[1]).toBeCloseTo(0.124, 12);
    expect(times(text)[1]).toBeCloseTo(35.5, 6);
    expect(readLog(text).lines.map(({ pump }) => pump)).toEqual(['on', 'off']);
  });

  // 1 in = 25.4 mm exactly, 1 US gal = 231 in³ (NIST SP 811, App. B).
  test('in inches with fractions, a bare figure taking the unit of the line before', () => {
    const text = '2031-06-02 07:30, 4 3/4 in, on, added 10 gal\n2031-06-03 07:30, 4 7/8\n2031-06-04 07:30, 5"';
    expect(told(text)).toEqual([]);
    expect(levels(text).map((each) => (each as number) / 0.0254)).toEqual([4.75, 4.875, 5]);
    expect(readLog(text).lines[0].added).toBeCloseTo(10 * 231 * 0.0254 ** 3, 15);
  });

  test('with water added, rain and the pump in any order, and lines without a level', () => {
    const text =
      '0 d, 120 mm, on\n1 d, 122 mm, topped up 40 L, off\n30 h, , on\n2 d, 125 mm, rain 5 mm, windy and warm\n3 d, 120 mm, rain\n4 d, added 20 L';
    expect(told(text)).toEqual([]);
    const { lines } = readLog(text);
    expect(lines.map(({ added }) => added)).toEqual([undefined, 0.04, undefined, undefined, undefined, 0.02]);
    expect(lines.map(({ rain }) => rain)).toEqual([undefined, undefined, undefined, 0.005, 'unknown', undefined]);
    expect(lines.map(({ pump }) => pump)).toEqual(['on', 'off', 'on', undefined, undefined, undefined]);
    expect(lines[2].level).toBeUndefined();
  });

  test('measured down from the edge, or as a ruler in the water shows it where its head says so', () => {
    expect(readLog('0 d, 120 mm').measured).toBe('down');
    expect(readLog('time, ruler mm\n0 d, 120').measured).toBe('up');
    expect(readLog('time, depth below the edge, mm\n0 d, 120').measured).toBe('down');
    expect(readLog('0 d, 120 mm', 'up').measured).toBe('up');
  });

  test('with a band of evaporation', () => {
    const [low, high] = readLog('evaporation 3 to 5 mm/d\n0 d, 120 mm').evaporation as [number, number];
    expect([low * 864e5, high * 864e5].map((each) => Number(each.toFixed(9)))).toEqual([3, 5]);
    expect(told('evaporation much\n0 d, 120 mm')).toEqual([
      'line 1: found "much", wanted evaporation as ‘evaporation 3 to 5 mm/d’',
    ]);
  });
});

describe('what can’t be read is told by its line, and the other lines stay', () => {
  const good = ['2031-06-02 07:30, 120 mm, on', '2031-06-03 07:30, 124 mm', '2031-06-04 07:30, 128 mm'];
  test.each([
    ['02.06. 7:30, 121 mm', 'day and month can be read two ways'],
    ['6/2/2031 07:30, 121 mm', 'wanted a date as 2031-06-02'],
    ['2031-06-31 07:30, 121 mm', 'a day no calendar has'],
    ['2031-06-02 25:30, 121 mm', 'time of day can’t be read'],
    ['2031-06-02 09:00, wet', 'wanted a level with its unit'],
    ['2031-06-02 09:00, 121 L', 'found the unit L'],
    ['2031-06-02 09:00; 12,1 cm', 'comma can be read two ways'],
    ['2031-06-02 09:00', 'a comma between them'],
    ['2013-06-02 09:00, 121 mm', 'earlier than the line before'],
    ['2031-06-02 07:30, 121 mm', 'the same time as line 1'],
    ['3 d, 121 mm', 'a time since the start where the first line has a date'],
    ['2031-06-02 09:00, 121 mm, on, addded 40 L', 'found "addded 40 L"'],
    ['2031-06-02 09:00, 121 mm, of', 'found "of", wanted on or off'],
    ['2031-06-02 09:00, 121 mm, on, added 40 mm', 'found the unit mm'],
  ])('%s', (line, says) => {
    const text = [good[0], line, ...good.slice(1)].join('\n');
    const problems = told(text);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/^line 2: found /);
    expect(problems[0]).toContain(says);
    const kept = readLog(text).lines.map(({ line: at }) => at);
    expect(kept).toEqual(expect.arrayContaining([1, 3, 4]));
  });

  test.each([
    ['', 'found nothing'],
    [' \n\n', 'found nothing'],
    ['{"title": "a site"}', 'JSON, no log'],
    ['<!doctype html><p>', 'a web page'],
    ['%PDF-1.7', 'a PDF document'],
    ['\u0000\u0001', 'a file of another program'],
    ['0 d, 1 mm\n'.repeat(2001), 'found 2002 lines'],
  ])('a text that is no log: %#', (text, says) => {
    expect(told(text)).toHaveLength(1);
    expect(told(text)[0]).toContain(says);
    expect(readLog(text).lines).toEqual([]);
  });
});
