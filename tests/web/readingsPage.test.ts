/** Readings and wishes as the page takes them, and what the worker makes of them. */
import { describe, expect, test } from 'vitest';
import { balance, readScenario } from '../../sim/index.ts';
import { readBack } from '../../sim/readings/index.ts';
import { editsInFile, readBackGiven, setToGiven } from '../../web/engine/reading-answers.ts';
import { handleDrawing } from '../../web/readings/handle-view.ts';
import { rodRows } from '../../web/readings/rods.ts';
import { readingRows, readingsOf, type Typed } from '../../web/readings/rows.ts';
import { crestNames, typedShare } from '../../web/readings/wish.ts';
import { fittedBand, fittedFigure, flowWords } from '../../web/readings/words.ts';
import { chosen } from '../../web/state/dials-turned.ts';
import { siteText } from './sites.ts';

function scenarioOf(text: string) {
  const reading = readScenario(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

const courtyard = siteText('courtyard');

describe('rows of readings', () => {
  const s = scenarioOf(courtyard);
  const rows = readingRows(s, balance(s));

  test('are what a ruler, a watch and a bucket can be held to, with what the drawing shows there', () => {
    expect(rows.map(({ what }) => what)).toEqual([
      'head lip',
      'head broad stone',
      'head corner stone',
      'top feed',
      'fall',
    ]);
    expect(rows[1].words).toBe('The water over ‘broad stone’');
    expect(rows[1].drawn).toBeCloseTo(balance(s).stones['broad stone'].head, 9);
    expect(rows[4].drawn).toBeUndefined();
  });

  test('count where something was typed, with its own error', () => {
    const typed = new Map<string, Typed>([
      ['fall', { value: 0.03, error: 0.004 }],
      ['head lip', { error: 0.001 }],
      ['top feed', { value: 8 }],
    ]);
    expect(readingsOf(rows, typed, 0.01)).toEqual({
      of: ['top feed', 'fall'],
      readings: [
        { kind: 'bucket', volume: 0.01, seconds: 8, error: undefined },
        { kind: 'fall', fall: 0.03, error: 0.004 },
      ],
    });
  });
});

describe.each(['courtyard', 'backyard', 'gravel-basin'])('values read back on %s', (name) => {
  const text = siteText(name);
  const s = scenarioOf(text);
  const stone = crestNames(s)[0].name;
  const head = stone === 'lip' ? readingRows(s, balance(s))[0].drawn! : balance(s).stones[stone].head;
  const readings = [{ kind: 'head', over: stone, head: 0.8 * head }] as const;

  test('are put into the file so that it reads as the site that was fitted', () => {
    const fit = readBack(s, readings);
    const given = readBackGiven({ want: 'read back', text, display: undefined, readings });
    if (!fit.ok || given.kind !== 'read back' || !given.result.ok) throw new Error(JSON.stringify([fit, given]));
    const after = scenarioOf(JSON.stringify(chosen(JSON.parse(text), given.result.edits)));
    const [fitted, put] = [balance(fit.scenario), balance(after)];
    // Written to six digits.
    expect(put.flows.main).toBeCloseTo(fitted.flows.main, 7);
    for (const [each, { head: shown }] of Object.entries(fitted.stones))
      expect(put.stones[each].head).toBeCloseTo(shown, 5);
    expect(structuredClone(given)).toEqual(given);
  });
});

describe('a setting', () => {
  const both = { want: 'set to', display: undefined } as const;

  test('comes with the edits that bring it about', () => {
    const given = setToGiven({ ...both, text: courtyard, wish: { share: 0.5, over: 'broad stone', head: 0.025 } });
    if (given.kind !== 'set to' || !given.result.ok) throw new Error(JSON.stringify(given));
    const after = balance(scenarioOf(JSON.stringify(chosen(JSON.parse(courtyard), given.edits))));
    expect(after.split).toBeCloseTo(0.5, 3);
    expect(after.stones['broad stone'].head).toBeCloseTo(0.025, 4);
  });

  test('goes into a sketch beside its numbers', () => {
    const text = siteText('backyard');
    const given = setToGiven({ ...both, text, wish: { share: 0.4 } });
    if (given.kind !== 'set to') throw new Error(given.kind);
    expect(balance(scenarioOf(JSON.stringify(chosen(JSON.parse(text), given.edits)))).split).toBeCloseTo(0.4, 3);
  });

  test('of a file that cannot be read is refused', () => {
    expect(setToGiven({ ...both, text: '{', wish: {} })).toMatchObject({ kind: 'refused' });
    expect(readBackGiven({ want: 'read back', text: '{}', display: undefined, readings: [] })).toMatchObject({
      kind: 'refused',
    });
  });

  test('that cannot be says what is the matter', () => {
    const given = setToGiven({ ...both, text: courtyard, wish: { share: 0.5, over: 'broad stone', head: 3 } });
    expect(given).toMatchObject({ kind: 'set to', result: { ok: false }, edits: [] });
  });
});

test('edits of a sketch’s lists are put in whole, others where they belong', () => {
  const raw = JSON.parse(siteText('backyard'));
  const edits = editsInFile(raw, [
    { place: 'watercourse[0].stones[0].cd', value: 0.81234567 },
    { place: 'filter.lip.cd', value: 1.1 },
  ]);
  expect(edits.map(([place]) => place)).toEqual(['filter.lip.cd', 'watercourse']);
  const s = scenarioOf(JSON.stringify(chosen(raw, edits)));
  const [pool] = s.watercourse;
  expect(pool.kind === 'pool' && pool.stones[0].cd).toBe(0.812346);
  expect(s.filter?.lip.cd).toBe(1.1);
});

test.each([
  ['half', 0.5],
  ['about half', 0.5],
  ['1/3', 1 / 3],
  ['50', 0.5],
  ['50 %', 0.5],
  ['all', 1],
  ['0', 0],
])('a share typed as %s is read', (text, share) => {
  expect(typedShare(text)).toEqual({ value: expect.closeTo(share, 12) });
});

test.each(['120', '-5 %', 'most', '3/2', '1/'])('‘%s’ is no share', (text) => {
  expect(typedShare(text)).toEqual({ wrong: expect.stringContaining('half, or 50 %') });
});

test('figures are told as the trade reads them', () => {
  expect(flowWords({ value: 222 / 6e4, band: [214 / 6e4, 230.4 / 6e4] }, 'metric')).toBe(
    '222 L/min (214 to 230 L/min)',
  );
  expect(fittedFigure({ kind: 'pump' }, 0.962)).toBe('96 %');
  expect(fittedFigure({ kind: 'valve' }, 0.5)).toBe('45°');
  const valve = {
    kind: 'valve',
    place: '',
    words: '',
    value: 0.5,
    band: [0.4, 0.6],
    before: { value: 0.5, band: [0.3, 0.7] },
  } as const;
  expect(fittedBand(valve)).toBe('36° to 54°');
});

// Differential leveling, any surveying book: height of instrument less elevation.
test('heights are read by the rod against the benchmark, a bigger one lower', () => {
  const s = scenarioOf(courtyard);
  const rows = rodRows(s, { benchmark: 0.1, reading: 1.2 });
  expect(rows.find(({ name }) => name === 'edge')).toMatchObject({ rod: '1.300 m' });
  expect(rows.find(({ name }) => name === 'fill mark')).toMatchObject({ rod: '1.410 m' });
  expect(rodRows(s, { benchmark: 0, reading: 0.5 }).find(({ name }) => name === 'filter’s lip')!.rod).toMatch(
    /above the level/,
  );
  const [edge] = rodRows({ ...s, display: 'us' }, { benchmark: 0, reading: 4.375 * 0.0254 });
  expect(edge.rod).toBe('4⅜ in');
});

test('a handle is drawn at its angle: along the pipe open, across it shut', () => {
  const lever = (angle: number): string => {
    const { values } = handleDrawing({ opening: 1 - angle / 90, angle });
    return values.slice(-2).join(' ');
  };
  const points = (angle: number) => [...lever(angle).matchAll(/-?[\d.]+/g)].map(Number);
  expect(points(0)).toEqual([26, 32, 53, 32]);
  expect(points(90)).toEqual([30, 36, 30, 9]);
});
