import { describe, expect, test } from 'vitest';
import { openedFile } from '../../web/keep/opened.ts';
import { siteNames, siteText } from './sites.ts';

const why = (name: string, text: string): string => {
  const opened = openedFile(name, text);
  return opened.kind === 'other' ? opened.why : 'a site';
};

describe('a file that is opened', () => {
  test.each(siteNames)('is a site: %s', (name) => {
    const text = siteText(name);
    expect(openedFile(`${name}.json`, text)).toEqual({ kind: 'site', text });
  });

  test('is a site where its figures are wrong: the reader tells each with its place', () => {
    expect(why('mine.json', siteText('courtyard').replace('"24 h"', '"soon"'))).toBe('a site');
    expect(why('mine.json', '{"sketch": {}}')).toBe('a site');
  });

  test.each([
    ['plan.pdf', '%PDF-1.7 ...', 'a PDF document'],
    ['plan.xlsx', 'PK\u0003\u0004\u0014', 'office document'],
    ['photo.png', '\ufffdPNG\r\n', 'a picture'],
    ['photo.jpg', '\ufffd\ufffd\ufffd\ufffd\u0000\u0010JFIF', 'a picture'],
    ['page.html', '<!doctype html><p>', 'a web page'],
    ['plan.xml', '<?xml version="1.0"?>', 'an XML file'],
    ['levels.csv', 'time,level\n06:00,-110', 'another program'],
    ['plan.dwg', 'AC1032\u0000\u0000', 'another program'],
    ['other.json', '{"layers": []}', 'no pond and no pump'],
    ['list.json', '[1, 2]', 'another program'],
    ['empty.json', ' \n', 'is empty'],
    ['long.json', `{"pond": "${'x'.repeat(2_000_001)}"}`, 'longer than any'],
  ])('%s is told for what it is, by its name', (name, text, words) => {
    expect(why(name, text)).toContain(words);
    expect(why(name, text)).toContain(`‘${name}’`);
  });

  test('cut short anywhere is told as cut, with the place', () => {
    const text = siteText('courtyard').trimEnd();
    for (let end = 1; end < text.length; end += 7)
      expect(why('mine.json', text.slice(0, end))).toMatch(/cut short.*line \d+:/);
  });

  test('with a slip of a hand in it is told with the place', () => {
    expect(why('mine.json', '{"pond": {},,}')).toMatch(/cannot be read \(line 1:13/);
  });
});
