import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSite } from '../../sim/scenario/read.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { type Dial, dialsFor, type Ruler } from '../../web/state/dials.ts';
import { sameDials } from '../../web/state/dials-same.ts';
import { moved, typedInto } from '../../web/state/dials-turned.ts';
import { wrongWords } from '../../web/state/dials-wrong.ts';
import { type Document, edited, openDocument, redone, undone } from '../../web/state/document.ts';

const text = readFileSync(new URL('../../scenarios/courtyard.json', import.meta.url), 'utf8');
const courtyard = openDocument('courtyard', text)!;
const base = (() => {
  const reading = readSite(courtyard.now.file);
  if (!reading.ok) throw new Error('the courtyard is read');
  return reading.scenario;
})();
const RIM = 'pond.rim.crest';

const setOf = (doc: Document, typed = new Map<string, string>()) =>
  dialsFor('stop', { now: base, base, file: doc.now.file, opened: doc.past[0]?.file ?? doc.now.file, typed });

const dial = (doc: Document, name: string): Dial => {
  const { shown, more } = setOf(doc);
  return [...shown, ...more].find((each) => each.name === name)!;
};
const rulerOf = (doc: Document, name: string): Ruler => dial(doc, name) as Ruler;

const type = (doc: Document, name: string, what: string): Document =>
  edited(doc, typedInto(doc, rulerOf(doc, name), what)!.file, name);

const problemsOf = ({ now }: Document) => {
  const reading = readSite(now.file);
  return reading.ok ? [] : reading.problems;
};

const wrong = (doc: Document, name: string, turned = true, display: 'metric' | 'us' = 'metric'): string =>
  wrongWords(dial(doc, name), doc.now.file, problemsOf(doc), display, turned);

describe('a text typed into a dial', () => {
  test('stands in the file as typed, what goes along with it moved', () => {
    const doc = type(courtyard, 'liner edge', '-1 in');
    expect(valueAt(doc.now.file, RIM)).toEqual([
      [0, '-1 in'],
      ['0.8 m', -0.0254],
      ['1.6 m', '-10.4 mm'],
    ]);
  });

  test('takes the unit the dial shows also where the file has no such figure', () => {
    // The courtyard's gap is assumed, and shown in millimeters.
    const of = { now: base, base, file: courtyard.now.file, opened: courtyard.now.file, typed: new Map() };
    const gap = dialsFor('filter', of).shown.find(({ name }) => name === 'gap round the mats') as Ruler;
    expect(gap.text).toBe('5 mm');
    expect(typedInto(courtyard, gap, '3')).toMatchObject({ value: '3 mm' });
  });

  test('takes the unit the dial shows where it has none', () => {
    expect(valueAt(type(courtyard, 'liner edge', '12').now.file, RIM)).toEqual([
      [0, '12 mm'],
      ['0.8 m', 0.012],
      ['1.6 m', '27 mm'],
    ]);
    expect(valueAt(type(courtyard, 'fill mark', '-95').now.file, 'pond.fillMark')).toBe('-95 mm');
  });

  test.each(['abc', '', '-4 kg', '4 3/', '1e99', '9999999 m'])('that is no figure, %j, stays in the field', (what) => {
    for (const name of ['fill mark', 'liner edge', 'broad stone', 'upper pool’s surface']) {
      const doc = type(courtyard, name, what);
      expect(problemsOf(doc)).not.toEqual([]);
      const { text, value, low, high } = rulerOf(doc, name);
      expect(text.replace('\u2212', '-')).toContain(what);
      expect([value >= low, value <= high, high - low < 10]).toEqual([true, true, true]);
    }
  });

  test.each(['abc', '', '1e99', '4 3/'])('that is no figure, %j, costs a crest nothing of its shape', (what) => {
    const bad = type(type(courtyard, 'liner edge', what), 'liner edge', 'worse');
    const good = type(bad, 'liner edge', '20 mm');
    expect(valueAt(good.now.file, RIM)).toEqual(valueAt(type(courtyard, 'liner edge', '20 mm').now.file, RIM));
    const stepped = moved(bad, rulerOf(bad, 'liner edge'), 0.02);
    expect(valueAt(stepped, RIM)).toEqual([
      [0, 0.02],
      ['0.8 m', 0.02],
      ['1.6 m', '35 mm'],
    ]);
  });

  test('is undone and done again key for key', () => {
    const doc = type(type(courtyard, 'liner edge', 'abc'), 'upper pool’s surface', '7 m²');
    const back = undone(undone(doc));
    expect(JSON.stringify(back.now.file)).toBe(JSON.stringify(JSON.parse(text)));
    expect(JSON.stringify(redone(redone(back)).now.file)).toBe(JSON.stringify(doc.now.file));
  });
});

describe('what is wrong', () => {
  test.each([
    ['abc', '‘abc’ is no figure. Type it like −110 mm, 0.62 m or −4⅜ in.'],
    ['', 'Nothing is typed here. Type it like'],
    ['-4 kg', '‘-4 kg’ is not a length. Type it like'],
    ['4 3/', 'The fraction in ‘4 3/’ is not finished. Type it like'],
    ['4 3/ in', 'The fraction in ‘4 3/ in’ is not finished. Type it like'],
    ['-0,11 m', 'The comma in ‘-0,11 m’ can be read two ways: put a point for decimals.'],
    ['6 in 3 ft', 'In ‘6 in 3 ft’ the greater unit comes first.'],
    ['1e99', '‘1e99 mm’ is beyond any site.'],
    ['20', 'It must be below the lowest point of the pond’s rim (0 mm).'],
  ])('with a fill mark of %j is said in a builder’s words', (what, words) => {
    expect(wrong(type(courtyard, 'fill mark', what), 'fill mark')).toContain(words);
  });

  test('is said in the units of the page', () => {
    expect(wrong(type(courtyard, 'fill mark', '20'), 'fill mark', true, 'us')).toBe(
      'It must be below the lowest point of the pond’s rim (0 in).',
    );
  });

  test('elsewhere is said where it came from, and at the figure itself', () => {
    const doc = type(courtyard, 'liner edge', '-150');
    expect(wrong(doc, 'liner edge')).toBe(
      'With this, the pond’s fill mark would have to be below the lowest point of the pond’s rim (−150 mm).',
    );
    expect(wrong(doc, 'fill mark', false)).toBe('It must be below the lowest point of the pond’s rim (−150 mm).');
    expect(wrong(doc, 'broad stone', false)).toBe('');
  });

  test('with a valve or a hose speaks of those', () => {
    expect(wrong(type(courtyard, 'top feed’s valve', '80 gpm'), 'top feed’s valve')).toContain(
      'Type it like 0.8 or 80 %',
    );
    expect(wrong(type(courtyard, 'top feed’s valve', '50'), 'top feed’s valve')).toBe(
      'It must be a fraction from 0 to 1.',
    );
    expect(wrong(type(courtyard, 'hose, by a bucket test', '4 mm'), 'hose, by a bucket test')).toContain('14 L/min');
  });

  test('is nothing where nothing is', () => {
    expect(wrong(courtyard, 'fill mark')).toBe('');
  });
});

test('only the dial that is turned is another one', () => {
  const before = setOf(courtyard);
  const after = sameDials(
    before,
    setOf(edited(courtyard, moved(courtyard, rulerOf(courtyard, 'fill mark'), -0.1), 'x')),
  );
  const all = ({ shown, more }: typeof before): Dial[] => [...shown, ...more];
  const changed = all(after).filter((each, i) => each !== all(before)[i]);
  expect(changed.map(({ name }) => name)).toContain('fill mark');
  expect(changed.filter(({ kind }) => kind === 'ruler').map(({ name }) => name)).toEqual(['fill mark']);
});

test('a figure typed here keeps its unit on a page in the other system', () => {
  const doc = type(courtyard, 'fill mark', '-95');
  const now = { ...base, display: 'us' } as const;
  const dials = (typed: Map<string, string>) =>
    dialsFor('stop', { now, base, file: doc.now.file, opened: courtyard.now.file, typed }).shown;
  const textOf = (from: readonly Dial[], name: string) => (from.find((each) => each.name === name) as Ruler).text;
  const typed = dials(new Map([['pond.fillMark', '-95 mm']]));
  expect([textOf(typed, 'fill mark'), textOf(typed, 'liner edge')]).toEqual(['−95 mm', '0 in']);
  expect(textOf(dials(new Map()), 'fill mark')).toBe('−3¾ in');
  const plain = dials(new Map([['pond.fillMark', '-3 3/4 in']]));
  expect(textOf(plain, 'fill mark')).toBe('−3¾ in');
});
