import { expect, test } from 'vitest';
import { criticalDepth, reachOfSheet } from '../../sim/laws/sheet.ts';
import { relativeError } from './differences.ts';

test('at the critical depth the Froude number is 1', () => {
  for (const q of [1e-4, 0.01, 1]) {
    const y = criticalDepth(q);
    expect(relativeError(q / y / Math.sqrt(9.80665 * y), 1)).toBeLessThan(1e-14);
  }
});

test('a sheet lands where free fall from its critical velocity takes it', () => {
  const velocity = 0.01 / criticalDepth(0.01);
  const time = Math.sqrt((2 * 0.6) / 9.80665);
  expect(relativeError(reachOfSheet(0.01, 0.6), velocity * time)).toBeLessThan(1e-14);
  expect(reachOfSheet(0, 0.6)).toBe(0);
  expect(reachOfSheet(0.01, 0)).toBe(0);
  expect(reachOfSheet(0.01, -1)).toBe(0);
});
