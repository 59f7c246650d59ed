import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../sim/quantity/index.ts';
import { readSite } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { withValueAt } from '../../sim/studies/place.ts';
import { settingIn, withSetting } from '../../sim/studies/setting.ts';
import { type Dial, dialsFor, type Ruler } from '../../web/state/dials.ts';
import { asTyped, shownAs, stepOf, toFile, unitFor } from '../../web/state/typed.ts';
import { turnWords } from '../../web/views/turn-words.ts';

const folder = new URL('../../scenarios/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const fileOf = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

function siteOf(file: unknown): Scenario {
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

function dialsOf(file: unknown, about: 'stop' | 'filling' | 'filter' = 'stop'): Dial[] {
  const scenario = siteOf(file);
  return dialsFor(about, { now: scenario, base: scenario, file });
}

const rulers = (dials: readonly Dial[]): Ruler[] => dials.filter((dial) => dial.kind === 'ruler');

describe('figures as typed', () => {
  test.each([
    ['-110 mm', -0.0954, '-95 mm'],
    ['-4 3/8 in', -0.0254, '-1 in'],
    ['0.62 m', 0.6249, '0.625 m'],
    ['3 ft 6 in', 1.0922, '43 in'],
    [0.62, 0.6249, 0.625],
  ])('%s moved to %s m goes on as %s', (before, to, after) => {
    expect(asTyped('metric')(to, before, 'length')).toBe(after);
  });

  test('a value that was not there takes the unit of the page', () => {
    expect(asTyped('us')(0.0254, undefined, 'length')).toBe('1 in');
    expect(asTyped('metric')(0.0254, undefined, 'length')).toBe('25 mm');
    expect(asTyped('metric')(0.5, undefined, 'fraction')).toBe(0.5);
  });

  test('what is written reads back within half a step, in the unit that was typed', () => {
    const typed = fc.constantFrom('1 mm', '1 cm', '1 m', '1 in', '1 ft', '2 3/8 in');
    fc.assert(
      fc.property(typed, fc.double({ min: -3, max: 3, noNaN: true }), (before, value) => {
        const written = asTyped('metric')(value, before, 'length');
        const parsed = parseQuantity(String(written), 'length');
        expect(parsed.ok && Math.abs(parsed.value - value)).toBeLessThanOrEqual(
          stepOf(before, 'length', 'metric') / 2 + 1e-9,
        );
        expect(unitFor(written, 'length', 'metric')).toBe(unitFor(before, 'length', 'metric'));
      }),
    );
  });

  test('a field shows a true minus, and takes either', () => {
    expect(shownAs('-110 mm', 'length')).toBe('\u2212110 mm');
    expect(shownAs(-0.11, 'length')).toBe('\u22120.11 m');
    expect(toFile('\u2212110 mm', '-100 mm')).toBe('-110 mm');
    expect(toFile('-0.2', -0.11)).toBe(-0.2);
    expect(toFile('0.2', '0.3 m')).toBe('0.2 m');
    expect(toFile('5', '3.8 m2')).toBe('5 m2');
    expect(toFile('5', '3 ft 6 in')).toBe('5 in');
    expect(toFile('5', '')).toBe(5);
    expect(toFile('grass run', 'stream')).toBe('grass run');
  });
});

describe.each(names)('the dials of %s', (name) => {
  const file = fileOf(name);
  const all = (['stop', 'filling', 'filter'] as const).flatMap((about) => dialsOf(file, about));

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

  test('are no more than six to a question', () => {
    for (const about of ['stop', 'filling', 'filter'] as const)
      expect(dialsOf(file, about).length).toBeLessThanOrEqual(6);
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
      expect(dial.options.filter(({ chosen }) => chosen)).toHaveLength(1);
      for (const { edits } of dial.options) {
        const changed = edits.reduce((part, [place, value]) => withValueAt(part, place, value), file);
        expect(readSite(changed)).toMatchObject({ ok: true });
      }
    }
  });
});

describe('the words of a turn', () => {
  const ruler = rulers(dialsOf(fileOf('courtyard.json')))[0]!;
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
