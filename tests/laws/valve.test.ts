import { describe, expect, test } from 'vitest';
import { ballValveLoss, cockLoss } from '../../sim/laws/valve.ts';
import { relativeError } from './differences.ts';

const openings = Array.from({ length: 400 }, (_, i) => (i + 1) / 400);

describe.each([
  ['ball valve', ballValveLoss],
  ['cock', cockLoss],
])('a %s', (_, loss) => {
  test('loses more the further it is shut, and passes nothing shut', () => {
    openings.slice(1).forEach((opening, i) => {
      expect(loss(opening)).toBeLessThanOrEqual(loss(openings[i]));
    });
    expect(loss(0)).toBe(Number.POSITIVE_INFINITY);
    expect(loss(-0.1)).toBe(Number.POSITIVE_INFINITY);
    expect(Number.isFinite(loss(1))).toBe(true);
  });

  test('has no jump as it is turned', () => {
    for (let opening = 0.09; opening < 1; opening += 0.001) {
      expect(relativeError(loss(opening + 1e-9), loss(opening))).toBeLessThan(1e-6);
    }
  });
});

test('a ball valve nearly shut is the square law of a slit: half the opening, four times the loss', () => {
  expect(relativeError(ballValveLoss(0.01), 4 * ballValveLoss(0.02))).toBeLessThan(1e-14);
  expect(relativeError(ballValveLoss(0.05 - 1e-9), ballValveLoss(0.05))).toBeLessThan(1e-3);
});

test('a cock is shut from 82.5° on', () => {
  expect(Number.isFinite(cockLoss(1 - 82.4 / 90))).toBe(true);
  expect(cockLoss(1 - 82.6 / 90)).toBe(Number.POSITIVE_INFINITY);
});
