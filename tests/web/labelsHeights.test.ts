/** Heights measured on the drawing follow the water; their figures keep their seats. */
import { describe, expect, test } from 'vitest';
import { dimensionNow, dimensionsOf, type HeightRequest } from '../../web/section/labels/dimension.ts';

const yOf = (elevation: number): number => 100 - 100 * elevation;
const frame = { left: 0, top: 0, right: 400, bottom: 400 };
const fall: HeightRequest = { id: 'fall', upper: 0.6, lower: 0.2, x: 50, upperFrom: 20, lowerFrom: 50 };
const [drawn] = dimensionsOf([fall], yOf, 'metric', (text) => 6 * text.length, frame);

describe('a fall measured at a moment', () => {
  test('ends on the water of that moment and tells what lies between', () => {
    const now = dimensionNow(drawn!, { ...fall, lower: 0.35 }, yOf, 'metric');
    expect(now?.line.map(({ y }) => y)).toEqual([yOf(0.6), yOf(0.35)]);
    expect(now?.text).toBe('250 mm');
    expect(now?.ticks).toHaveLength(2);
  });

  test('keeps the seat of its figure, and the thin line at its crest', () => {
    const now = dimensionNow(drawn!, { ...fall, lower: 0.35, lowerFrom: 20 }, yOf, 'metric');
    expect(now?.at).toEqual(drawn!.at);
    expect(now?.extensions.map(([{ y }]) => y)).toEqual([yOf(0.6), yOf(0.35)]);
  });

  test('is gone once the water has risen to its crest', () => {
    expect(dimensionNow(drawn!, { ...fall, lower: 0.58 }, yOf, 'metric')).toBeUndefined();
    expect(dimensionNow(drawn!, { ...fall, lower: 0.7 }, yOf, 'metric')).toBeUndefined();
  });
});
