/** The table of the sketch's numbers: each default stands beside its band and its origin. */
import { describe, expect, test } from 'vitest';
import { readSketch } from '../../sim/scenario/keys/sketch.ts';
import { Draft } from '../../sim/sketch/draft.ts';
import { bandOfNumber, SKETCH_NUMBERS } from '../../sim/sketch/numbers.ts';
import { least } from './sites.ts';

const given = { sketch: least() };
const draft = new Draft(
  given,
  readSketch(given.sketch, () => {}),
);
const assumed = SKETCH_NUMBERS.filter(({ fallback }) => fallback);

/** What is there or is not: no figure lies between, so there is no band. */
const CHOICES = ['shelf', 'pipe.size', 'pipe.checkValve', 'feeds', 'bottomValve', 'topValve', 'stream', 'autofill'];

describe('the numbers of a sketch', () => {
  test('stand once each, and ask one short question', () => {
    const keys = SKETCH_NUMBERS.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { asks } of SKETCH_NUMBERS) {
      expect(asks).toMatch(/^[A-Z].*\?$/);
      expect(asks.length).toBeLessThan(90);
    }
  });

  test('are required for the pond and the pump alone', () => {
    const required = SKETCH_NUMBERS.filter(({ fallback }) => !fallback).map(({ key }) => key);
    expect(required).toEqual(['length', 'width', 'depth', 'pump']);
  });

  test('have an origin beside each default, and a band unless they are a choice', () => {
    for (const each of assumed) expect(each.origin, each.key).toMatch(/^(common practice|our default)$/);
    expect(assumed.filter(({ band }) => !band).map(({ key }) => key)).toEqual(CHOICES);
  });

  test.each(assumed.filter(({ band }) => band).map((each) => [each.key, each] as const))(
    'have the default of %s within its band, and the band within its range',
    (_key, each) => {
      const value = draft.value(each.key);
      const [low = Number.NaN, high = Number.NaN] =
        bandOfNumber(each, typeof value === 'number' ? value : 0, draft) ?? [];
      const [from, to] = each.range!;
      expect(low).toBeLessThan(high);
      expect(low).toBeGreaterThanOrEqual(from);
      expect(high).toBeLessThanOrEqual(to);
      if (typeof value !== 'number') return;
      expect(value).toBeGreaterThanOrEqual(low - 1e-12);
      expect(value).toBeLessThanOrEqual(high + 1e-12);
    },
  );
});
