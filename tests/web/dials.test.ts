import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSite } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { expandSketch } from '../../sim/sketch/expand.ts';
import { valueAt, withValueAt } from '../../sim/studies/place.ts';
import { settingIn, withSetting } from '../../sim/studies/setting.ts';
import { type Choice, type Dial, type DialSet, dialsFor, type Ruler } from '../../web/state/dials.ts';
import { chosen } from '../../web/state/dials-turned.ts';
import { turnWords } from '../../web/views/inputs/turn-words.ts';

const folder = new URL('../../scenarios/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const fileOf = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

function siteOf(file: unknown): Scenario {
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

const questions = ['stop', 'filter'] as const;
type Question = (typeof questions)[number];

/** The dials of a file; `opened` where it was another when it was opened. */
function setOf(file: unknown, about: Question, opened = file): DialSet {
  const site = siteOf(file);
  return dialsFor(about, { now: site, base: siteOf(opened), file, opened, typed: new Map() });
}

function dialsOf(file: unknown, about: Question = 'stop', opened = file): Dial[] {
  const { shown, more } = setOf(file, about, opened);
  return [...shown, ...more];
}

const choiceOf = (file: unknown, name: string, opened = file): Choice =>
  dialsOf(file, 'stop', opened).find((dial): dial is Choice => dial.kind === 'choice' && dial.name === name)!;

const wordsOf = ({ options }: Choice): string[] => options.map(({ word }) => word);
const chosenIn = ({ options }: Choice): string[] => options.filter((each) => each.chosen).map(({ word }) => word);

function press(file: unknown, name: string, word: string, opened = file): unknown {
  return chosen(file, choiceOf(file, name, opened).options.find((each) => each.word === word)!.edits);
}

const rulers = (dials: readonly Dial[]): Ruler[] => dials.filter((dial) => dial.kind === 'ruler');

describe.each(names)('the dials of %s', (name) => {
  const file = expandSketch(fileOf(name), { listed: false }).file;
  const all = questions.flatMap((about) => dialsOf(file, about));

  test('stand within their ranges, where the file has them', () => {
    for (const { value, low, high, setting, step } of rulers(all)) {
      expect(low).toBeLessThan(high);
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
      expect(step).toBeGreaterThan(0);
      const inFile = settingIn(file, setting);
      if (inFile !== undefined) expect(value).toBe(inFile);
    }
  });

  test('are four to six at once for the pump’s stop, and each stands there once', () => {
    for (const about of questions) {
      const { shown, more } = setOf(file, about);
      const all = [...shown, ...more].map((dial) => dial.name);
      expect(new Set(all).size).toBe(all.length);
      expect(shown.length).toBeLessThanOrEqual(6);
      if (about === 'stop') expect(shown.length).toBeGreaterThanOrEqual(4);
    }
  });

  test('cover for the pump’s stop what decides it', () => {
    const names = dialsOf(file).map((dial) => dial.name);
    const { plumbing, watercourse } = siteOf(file);
    const stones = watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
    const pools = watercourse.filter(({ kind }) => kind === 'pool');
    expect(names).toEqual(
      expect.arrayContaining([
        ...['fill mark', 'liner edge', 'check valve', 'autofill', 'hose at the start', 'pump at the start'],
        ...stones.map((stone) => stone.name),
        ...pools.map((pool) => `${pool.name}’s surface`),
        ...(plumbing.topFeed ? ['top feed’s valve'] : []),
        ...(plumbing.bottomFeed ? ['bottom feed’s valve'] : []),
      ]),
    );
  });

  test('go from end to end over sites that can be read', () => {
    for (const { setting, low, high, name } of rulers(dialsOf(file))) {
      for (const to of [low, high]) {
        expect({ name, to, ...readSite(withSetting(file, setting, to)) }).toMatchObject({ ok: true });
      }
    }
  });

  test('move what they are named by, and nothing is lost on the way back', () => {
    for (const ruler of rulers(all)) {
      const to = ruler.value === ruler.high ? ruler.low : ruler.high;
      const moved = withSetting(file, ruler.setting, to);
      expect(settingIn(moved, ruler.setting)).toBeCloseTo(to, 9);
    }
  });

  test('choices lead to files that can be read', () => {
    for (const dial of all) {
      if (dial.kind !== 'choice' || siteOf(file).pond.level === 'empty') continue;
      expect(chosenIn(dial)).toHaveLength(1);
      for (const { edits } of dial.options) {
        expect(readSite(chosen(file, edits))).toMatchObject({ ok: true });
      }
    }
  });
});

const courtyard = fileOf('courtyard.json');
const without = (file: unknown, ...places: string[]): unknown =>
  places.reduce((part, place) => withValueAt(part, place, undefined), file);

describe('a site', () => {
  const bare = without(courtyard, 'supply');

  test.each([
    ['autofill', 'at a level', { flow: '5 L/min', set: '-110 mm', low: '-135 mm' }, 'supply.autofill'],
    ['hose at the start', 'open', { flow: '15 L/min', on: true }, 'supply.hose'],
    ['hose at the start', 'shut', { flow: '15 L/min' }, 'supply.hose'],
  ])('without it is given its %s ‘%s’, as the dial says, and is as it was when that is taken away', (...row) => {
    const [name, word, value, place] = row;
    const dial = choiceOf(bare, name);
    expect([chosenIn(dial), dial.note]).toEqual([['none'], expect.stringContaining(`${value.flow}`)]);
    const given = press(bare, name, word);
    expect(valueAt(given, place)).toEqual(value);
    expect(readSite(given)).toMatchObject({ ok: true });
    expect(chosenIn(choiceOf(given, name, bare))).toEqual([word]);
    expect(JSON.stringify(press(given, name, 'none', bare))).toBe(JSON.stringify(bare));
  });

  test('in inches is given them in the trade’s units', () => {
    const file = without(fileOf('storm.json'), 'supply');
    expect(valueAt(press(file, 'autofill', 'at a level'), 'supply.autofill')).toEqual({
      flow: '1.3 gpm',
      set: '-4 in',
      low: '-5 in',
    });
    expect(valueAt(press(file, 'hose at the start', 'open'), 'supply.hose.flow')).toBe('4 gpm');
  });

  test('has a flow and a float mark to turn once there is an autofill', () => {
    const given = press(bare, 'autofill', 'at a level');
    const names = rulers(dialsOf(given, 'stop', bare)).map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['autofill shuts at', 'autofill gives']));
    expect(names).not.toContain('hose, by a bucket test');
  });

  test('gets its own hose back as it was', () => {
    const gone = press(courtyard, 'hose at the start', 'none');
    expect(valueAt(gone, 'supply.hose')).toBeUndefined();
    expect(press(gone, 'hose at the start', 'shut', courtyard)).toEqual(courtyard);
    const open = press(gone, 'hose at the start', 'open', courtyard);
    expect(valueAt(open, 'supply.hose')).toEqual({ flow: '14 L/min', on: true });
  });

  test('keeps a hose or an autofill that something is done with later on', () => {
    expect(wordsOf(choiceOf(fileOf('first-start.json'), 'hose at the start'))).toEqual(['shut', 'open']);
    const used = withValueAt(press(courtyard, 'autofill', 'at a level'), 'actions[0]', {
      at: '1 h',
      do: 'autofill',
      to: 'off',
    });
    expect(wordsOf(choiceOf(used, 'autofill'))).toEqual(['at a level']);
  });

  test('with several hoses has a dial for each', () => {
    const file = withValueAt(courtyard, 'supply.hose', [
      { name: 'garden hose', flow: '14 L/min' },
      { name: 'neighbor’s hose', flow: '9 L/min', on: true },
    ]);
    const names = dialsOf(file).map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['garden hose at the start', 'neighbor’s hose, by a bucket test']));
    expect(chosenIn(choiceOf(file, 'neighbor’s hose at the start'))).toEqual(['open']);
    expect(readSite(press(file, 'neighbor’s hose at the start', 'shut'))).toMatchObject({ ok: true });
  });

  test('started another way gets that start back with its pump', () => {
    const file = fileOf('low-edge.json');
    const on = press(file, 'pump at the start', 'on');
    expect(valueAt(on, 'pump.running')).toBeUndefined();
    expect(valueAt(press(on, 'pump at the start', 'off', file), 'start')).toBe('standing');
    const off = press(courtyard, 'pump at the start', 'off');
    expect(valueAt(press(off, 'pump at the start', 'on', courtyard), 'start')).toBe('running');
  });
});

describe('the check valve', () => {
  const place = 'plumbing.main.checkValve';

  test.each([
    ['true', true, ['sound', 'none'], 'sound'],
    ['false', false, ['sound', 'none'], 'none'],
    ['unknown', 'unknown', ['sound', 'none', 'not known'], 'not known'],
    ['a leak', { leak: '2 cm2' }, ['sound', 'none', 'leaks'], 'leaks'],
    ['nothing', undefined, ['sound', 'none'], 'sound'],
  ])('of which the file says %s stands as that', (_, value, words, stands) => {
    const dial = choiceOf(withValueAt(courtyard, place, value), 'check valve');
    expect([wordsOf(dial), chosenIn(dial)]).toEqual([words, [stands]]);
  });

  test.each([['unknown'], [{ leak: '2 cm2' }]])('%j is kept, and put back as it was', (value) => {
    const opened = withValueAt(courtyard, place, value);
    const word = typeof value === 'string' ? 'not known' : 'leaks';
    const none = press(opened, 'check valve', 'none', opened);
    expect(valueAt(none, place)).toBe(false);
    expect(JSON.stringify(press(none, 'check valve', word, opened))).toBe(JSON.stringify(opened));
  });
});

describe('the words of a turn', () => {
  const ruler = rulers(dialsOf(courtyard))[0]!;
  const { low, high } = ruler;

  test.each([
    [[], 'no turn in this range'],
    [[[low, high]], 'fails throughout this range'],
    [[[-0.057, high]], 'fails above \u221257 mm'],
    [[[low, -0.2]], 'fails below \u2212200 mm'],
    [[[-0.2, -0.1]], 'fails from \u2212200 mm to \u2212100 mm'],
  ] as [[number, number][], string][])('%j: %s', (failing, words) => {
    expect(turnWords(ruler, failing, 'metric')).toBe(words);
  });

  test('are none before they are known', () => {
    expect(turnWords(ruler, undefined, 'metric')).toBe('');
  });
});
