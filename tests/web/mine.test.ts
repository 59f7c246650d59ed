import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../sim/quantity/index.ts';
import type { Check } from '../../sim/results/answer.ts';
import { assumptionWords } from '../../sim/results/checks/assumptionWords.ts';
import { readSite } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { SKETCH_NUMBERS } from '../../sim/sketch/numbers.ts';
import { withValueAt } from '../../sim/studies/place.ts';
import { assumedList } from '../../web/mine/assumed.ts';
import { boxEdit, curveEdit, pointEdit, steppedEdit, typedEdit } from '../../web/mine/edits.ts';
import { newSketch } from '../../web/mine/new-sketch.ts';
import { otherName } from '../../web/mine/other-names.ts';
import { pictureOf } from '../../web/mine/pictures.ts';
import { ROWS, type Row, rowAt, rowIn } from '../../web/mine/rows.ts';
import { bandWords, figureText, type Sketching, standingOf, valueWords } from '../../web/mine/standing.ts';
import { wrongWords } from '../../web/mine/wrong.ts';

const displays = ['us', 'metric'] as const;

function site(file: unknown, display: Sketching['display'] = 'us'): Sketching & { scenario: Scenario } {
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return { file, scenario: reading.scenario, display, typed: new Set() };
}

const row = (key: string): Row => rowAt(`sketch.${key}`)!;
const put = (file: unknown, edit: object | undefined): unknown => {
  const { place, value } = edit as { place: string; value?: unknown };
  return withValueAt(file, place, value);
};
const type = (at: Sketching, key: string, text: string, figure = 0): unknown =>
  put(at.file, typedEdit(at, row(key), row(key).figures[figure]!, text));
const texts = (at: Sketching, key: string): string[] => {
  const seen = rowIn(row(key), at.file);
  return seen.figures.map((figure) => figureText(at, seen, figure));
};

describe('every number of the sketch', () => {
  test('has one row, in the order of the parts the water passes', () => {
    expect(ROWS.map(({ number }) => number.key).sort()).toEqual(SKETCH_NUMBERS.map(({ key }) => key).sort());
    expect([...new Set(ROWS.map(({ part }) => part))]).toEqual([
      'the pond',
      'the intake and the pump',
      'the main line',
      'the filter',
      'the falls and the stream',
      'the supply and the weather',
    ]);
  });

  test.each(ROWS.map((each) => [each.number.key, each] as const))(
    '%s has a picture, a question and a way to be told',
    (key, each) => {
      for (const word of [undefined, ...each.words.map(([one]) => one)]) {
        const marks = pictureOf(key, word)!;
        expect(marks.length).toBeGreaterThan(1);
        for (const mark of marks) expect(JSON.stringify(mark)).not.toMatch(/NaN|undefined|Infinity/);
      }
      expect(each.number.asks).toMatch(/\?$/);
      expect(each.figures.length + each.words.length).toBeGreaterThan(0);
    },
  );

  test('has a picture of its own', () => {
    const drawn = ROWS.map(({ number }) => JSON.stringify(pictureOf(number.key)));
    expect(new Set(drawn).size).toBe(drawn.length);
  });

  test.each(displays)('is shown as assumed with a value and its band in the units of %s', (display) => {
    const at = site({ sketch: { ...(newSketch(display).sketch as object), autofill: 'pond' } }, display);
    const foreign = display === 'us' ? /\d (mm|m|L|L\/min|L\/h)\b/ : /\d (in|ft|gal|gpm|gph)\b/;
    for (const each of ROWS) {
      const standing = standingOf(at, each);
      if (standing !== 'assumed') continue;
      const value = valueWords(at, each);
      expect(value, each.place).not.toBe('');
      const band = bandWords(at, each);
      if (each.number.band) expect(band, each.place).toMatch(/[\d½¼¾⅛].* to .*\d/);
      // Inch pipe is sold by the inch everywhere.
      if (each.number.key !== 'pipe.size') expect(`${value} ${band}`).not.toMatch(foreign);
    }
  });

  test.each(displays)('can be stepped both ways in %s, and the text of the step reads back to the step', (display) => {
    const at = site(newSketch(display), display);
    for (const each of ROWS.filter((one) => standingOf(at, one) === 'assumed' && one.number.key !== 'stream')) {
      each.figures.forEach((figure) => {
        const [less, more] = [-1, 1].map((by) => put(at.file, steppedEdit(at, each, figure, by)));
        const value = (file: unknown): string => figureText({ ...at, file }, each, figure);
        const [low, now, high] = [value(less), figureText(at, each, figure), value(more)];
        expect(low === now && high === now, `${each.place} ${now}`).toBe(false);
        const read = readSite(more);
        expect(read.ok || read.problems.every(({ place }) => place !== each.place), each.place).toBe(true);
      });
    }
  });
});

describe('a blank start', () => {
  test.each(displays)('in %s is the smallest file that is valid, in the units of the tape', (display) => {
    const { sketch } = newSketch(display) as { sketch: object };
    expect(Object.keys(sketch)).toEqual(['length', 'width', 'depth', 'pump']);
    const { scenario } = site(newSketch(display));
    expect(scenario.display).toBe(display);
    for (const key of Object.keys(sketch)) {
      const reading = readSite({ sketch: { ...sketch, [key]: undefined } });
      expect(reading.ok).toBe(false);
    }
  });

  test('says of its invented figures that they are an example’s until they are typed', () => {
    const at = site(newSketch('us'));
    for (const key of ['length', 'width', 'depth', 'pump']) expect(standingOf(at, row(key))).toBe('example');
    const file = type(at, 'length', '14 ft 6 in');
    expect(standingOf({ ...at, file }, row('length'))).toBe('given');
    expect(standingOf({ ...at, file, typed: new Set(['sketch.width']) }, row('width'))).toBe('given');
  });
});

describe('a typed text', () => {
  const at = site(newSketch('us'));

  test.each([
    ['edge', '3 1/2', 'sketch.edge', '3 1/2 in', 0.0889],
    ['edge', '3½', 'sketch.edge', '3½ in', 0.0889],
    ['length', '14', 'sketch.length', '14 ft', 4.2672],
    ['length', `14'6"`, 'sketch.length', `14'6"`, 4.4196],
    ['length', '4.2 m', 'sketch.length', '4.2 m', 4.2],
    ['bottomValve', '80', 'sketch.bottomValve', '80 %', undefined],
    ['pipe.elbows', '5', 'sketch.pipe.elbows', 5, undefined],
  ])('%s: %s goes into the file with its unit', (key, text, place, value, meters) => {
    const edit = typedEdit(at, row(key), row(key).figures[0]!, text);
    expect(edit).toMatchObject({ place, value });
    if (meters !== undefined) {
      const parsed = parseQuantity(String(value), 'length');
      expect(parsed.ok && parsed.value).toBeCloseTo(meters, 9);
    }
    expect(readSite(put(at.file, edit)).ok).toBe(true);
  });

  test('of the bucket and the shelf takes the other figure along, as it was assumed', () => {
    expect(typedEdit(at, row('bucket'), row('bucket').figures[1]!, '41')).toMatchObject({
      place: 'sketch.bucket',
      value: ['5 gal', '41 s'],
    });
    const shelf = type(at, 'shelf', '9 in') as { sketch: { shelf: { depth: string; width: string } } };
    expect(shelf.sketch.shelf).toEqual({ depth: '9 in', width: '16 in' });
    expect(readSite(shelf).ok).toBe(true);
  });

  test('that is empty takes the number back, of the pump only the one figure', () => {
    const cleared = (key: string): object => typedEdit(at, row(key), row(key).figures[0]!, ' ');
    expect(cleared('edge')).toEqual({ place: 'sketch.edge', label: 'liner edge taken back' });
    expect(cleared('bucket')).toMatchObject({ place: 'sketch.bucket' });
    expect(cleared('pump')).toMatchObject({ place: 'sketch.pump.flow' });
  });

  test('is off the list once it is given, and on it again once it is taken back', () => {
    const given = type(at, 'lip', '34');
    expect(assumedList(site(given), []).map(({ place }) => place)).not.toContain('sketch.lip');
    expect(assumedList(site(type(site(given), 'lip', '')), []).map(({ place }) => place)).toContain('sketch.lip');
  });

  test('of one system is shown in the other’s units unless it was typed here', () => {
    const file = type(at, 'length', '14 ft 6 in');
    const metric = { ...at, file, display: 'metric' as const };
    expect(texts(metric, 'length')).toEqual(['4.42 m']);
    expect(texts({ ...metric, typed: new Set(['sketch.length']) }, 'length')).toEqual(['14 ft 6 in']);
    expect(texts(metric, 'bucket')).toEqual(['10 L', '17.4 s']);
    expect(texts({ ...at, file: type(at, 'edge', '3 1/2') }, 'edge')).toEqual(['3½ in']);
  });
});

test('the pump by its curve has a field for each figure, and goes back to its box', () => {
  const at = site(newSketch('us'));
  const curved = put(at.file, curveEdit(at, row('pump')));
  const seen = site(curved);
  expect(texts(seen, 'pump')).toEqual(['0 gph', '14 ft', '1500 gph', '10.5 ft', '3000 gph', '0 ft']);
  const more = put(curved, pointEdit(seen, rowIn(row('pump'), curved), true));
  expect(texts(site(more), 'pump')).toHaveLength(8);
  const fewer = put(more, pointEdit(site(more), rowIn(row('pump'), more), false));
  expect(texts(site(fewer), 'pump')).toHaveLength(6);
  expect(put(curved, boxEdit(seen, row('pump')))).toEqual(at.file);
});

describe('the list of what is assumed', () => {
  const at = site(newSketch('us'));
  const check = (name: string, place: string): Check => ({ name, rests: { place, moves: 0.01 } }) as Check;

  test('holds each once, with its value, and where it comes from', () => {
    const list = assumedList(at, []);
    expect(list.map(({ place }) => place).sort()).toEqual(at.scenario.assumed.map(({ place }) => place).sort());
    for (const each of list) expect(each).toMatchObject({ value: /./, origin: /^(common practice|our default)/ });
    expect(list.find(({ place }) => place === 'sketch.stone')).toMatchObject({
      band: /in to|to .* in/,
      origin: /^common practice, by the flow/,
    });
  });

  test('begins with what moves the answer most, then what moves the others, then what has a band', () => {
    const list = assumedList(at, [
      check('drain-back', 'sketch.rock'),
      check('first start', 'sketch.stone'),
      check('reach', 'pump.curve'),
      check('split', 'sketch.rock'),
    ]);
    expect(list.slice(0, 3).map(({ place, moves }) => [place, moves])).toEqual([
      ['sketch.rock', ['drain-back', 'split']],
      ['sketch.stone', ['first start']],
      ['pump.curve', ['reach']],
    ]);
    const bands = list.slice(3).map(({ band }) => band !== '');
    expect(bands).toEqual([...bands].sort((a, b) => Number(b) - Number(a)));
  });

  test('calls what no number asks for as the answers do', () => {
    const banded = at.scenario.assumed.filter(({ place, band }) => band && !rowAt(place));
    expect(banded.length).toBeGreaterThan(4);
    for (const each of banded) expect(otherName(each.place, at.scenario)).toBe(assumptionWords(at.scenario, each));
  });
});

describe('what cannot be', () => {
  const at = site(newSketch('us'));
  const wrong = (key: string, text: string, display: Sketching['display'] = 'us', figure = 0): string => {
    const file = put(at.file, typedEdit({ ...at, display }, row(key), row(key).figures[figure]!, text));
    const reading = readSite(file);
    return reading.ok ? '' : wrongWords(row(key), file, reading.problems, display);
  };

  test.each([
    ['depth', '0', 'Zero can’t be built. The pond’s depth makes sense from 10 in to 12 ft; the nearest is 10 in.'],
    [
      'depth',
      '-2 ft',
      'Less than zero can’t be built. The pond’s depth makes sense from 10 in to 12 ft; the nearest is 10 in.',
    ],
    ['depth', '400 m', 'The pond’s depth makes sense from 10 in to 12 ft; the nearest is 12 ft.'],
    ['depth', '500 gal', '‘500 gal’ is not a length. Type it like 30 in or 2 ft 6 in.'],
    ['depth', '3 1/', 'The fraction in ‘3 1/’ is not finished. Type it like 30 in or 2 ft 6 in.'],
    ['depth', '3 1/ in', 'The fraction in ‘3 1/ in’ is not finished. Type it like 30 in or 2 ft 6 in.'],
    ['depth', 'deep', '‘deep’ is no figure. Type it like 30 in or 2 ft 6 in.'],
    ['depth', '1e99', 'The pond’s depth makes sense from 10 in to 12 ft; the nearest is 12 ft.'],
    ['depth', '', 'Nobody can guess the pond’s depth. Type it like 30 in or 2 ft 6 in.'],
    ['pump', '0', 'Zero can’t be built. Type it like 3000 gph.'],
    ['pump', '', 'Nobody can guess the pump: most flow. Type it like 3000 gph.'],
    ['pump', '9e12 gph', '‘9e12 gph’ is beyond any site. Type it like 3000 gph.'],
    ['pipe.elbows', 'two', '‘two’ is no plain number. Type it like 4.'],
    ['edge', '1 in 2 ft', 'In ‘1 in 2 ft’ the greater unit comes first. Type it like 3 1/2 in.'],
  ])('%s ‘%s’ is said in words of a builder', (key, text, says) => {
    expect(wrong(key, text)).toBe(says);
  });

  test('is said in the units of the page, not of the reader', () => {
    expect(wrong('depth', '4 ft 999 in', 'metric')).toBe(
      'The pond’s depth makes sense from 254 mm to 3.66 m; the nearest is 3.66 m.',
    );
  });

  test('of the rest of the site is said as the reader has it', () => {
    expect(wrong('pump', '2 ft', 'us', 1)).toMatch(
      /^A head of 2 ft: it takes more than the 2 ft 10 in the water is lifted/,
    );
    expect(wrong('shelf', '4 ft')).toMatch(/^A shelf 4 ft down: it takes less than the pond’s depth of 2 ft/);
  });
});
