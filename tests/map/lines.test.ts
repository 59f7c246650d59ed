/** A map's lines lie where the map has their level, and end where it does. */
import { describe, expect, test } from 'vitest';
import type { OperatingMap } from '../../sim/map/answer.ts';
import { figureAt } from '../../sim/map/between.ts';
import { liftOnset, lineAt, roundLevels } from '../../sim/map/lines.ts';
import { siteAt } from '../../sim/map/seeker.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { felted, mapOf, siteOf } from './sites.ts';

const courtyard = siteOf('courtyard');
const felt = siteOf('courtyard', felted);
const feltMap = mapOf(felt);

/** A map of made-up figures on 5 by 4 points. */
function madeUp(headroom: (x: number, y: number) => number | null): OperatingMap {
  const [x, y] = [
    [0, 0.2, 0.5, 0.7, 1],
    [0, 0.25, 0.6, 1],
  ];
  const points = y.flatMap((b) => x.map((a) => ({ ...feltMap.points[0], x: a, y: b, headroom: headroom(a, b) })));
  return { ...feltMap, x, y, points };
}

describe('lines', () => {
  test('of a plane are straight, from edge to edge', () => {
    const { pieces } = lineAt(
      madeUp((x, y) => x + y),
      'headroom',
      0.8,
    );
    expect(pieces).toHaveLength(1);
    for (const [x, y] of pieces[0]) expect(x + y).toBeCloseTo(0.8, 12);
    const ends = [pieces[0][0], pieces[0][pieces[0].length - 1]].map(([x, y]) =>
      [x, y].map((v) => Math.round(v * 1e9) / 1e9),
    );
    expect(ends.sort((a, b) => a[0] - b[0])).toEqual([
      [0, 0.8],
      [0.8, 0],
    ]);
  });

  test('end beside blank points', () => {
    const whole = lineAt(
      madeUp((_, y) => y),
      'headroom',
      0.3,
    ).pieces.flat();
    const holed = lineAt(
      madeUp((x, y) => (x === 0.5 && y === 0.6 ? null : y)),
      'headroom',
      0.3,
    );
    expect(whole.map(([x]) => x)).toEqual(expect.arrayContaining([0, 0.2, 0.5, 0.7, 1]));
    expect(holed.pieces).toHaveLength(2);
    for (const [x, y] of holed.pieces.flat()) {
      expect(x <= 0.2 || x >= 0.7).toBe(true);
      expect(y).toBeCloseTo(0.3, 12);
    }
  });

  test.each(['channeled', 'pore', 'stone', 'headroom', 'lift'] as const)(
    'of %s lie where the map has their level',
    (figure) => {
      const units = { channeled: 0.01, pore: 1, stone: 1 / 60000, headroom: 0.001, lift: 0.1 };
      const levels = roundLevels(feltMap, figure, units[figure], 4);
      expect(levels.length).toBeGreaterThanOrEqual(2);
      for (const level of levels) {
        const { pieces } = lineAt(feltMap, figure, level);
        expect(pieces.length).toBeGreaterThan(0);
        for (const [x, y] of pieces.flat())
          expect((figureAt(feltMap, figure, Math.min(1, x), Math.min(1, y)) ?? Number.NaN) / level).toBeCloseTo(1, 9);
      }
    },
  );

  test('of the lift: on one side the media stay down, on the other they float', () => {
    const { pieces } = liftOnset(feltMap);
    expect(pieces).toHaveLength(1);
    for (const [x, y] of pieces[0]) {
      const lift = (by: number): number =>
        balanceOf(siteAt(felt, { bottom: Math.min(1, x + by), top: Math.max(0, y - by), speed: 1 }))?.answer.lift ??
        Number.NaN;
      expect(lift(-0.03)).toBeLessThan(1);
      if (x < 0.97 && y > 0.03) expect(lift(0.03)).toBeGreaterThan(1);
    }
  });

  test('of the lift lie within a quarter of a step of where the balance by itself has it', () => {
    const clogged = siteOf('teaching-filter', (file) => {
      file.filter.media.layers[0].deposit = '6 L';
    });
    const map = mapOf(clogged);
    const [piece] = liftOnset(map).pieces;
    expect(piece.length).toBeGreaterThan(15);
    for (const [x, top] of piece.filter((_, i) => i % 3 === 1)) {
      const floats = (bottom: number): boolean =>
        (balanceOf(siteAt(clogged, { bottom, top, speed: 1 }))?.answer.lift ?? 0) >= 1;
      let [still, afloat] = [x - 0.1, Math.min(1, x + 0.1)];
      expect([floats(still), floats(afloat)]).toEqual([false, true]);
      while (afloat - still > 1e-4) {
        const middle = (still + afloat) / 2;
        if (floats(middle)) afloat = middle;
        else still = middle;
      }
      expect(Math.abs(x - still), `${x}, ${top}`).toBeLessThan(0.0125);
    }
  });

  test('where the share that slips round hardly changes there is none, and a sentence says so', () => {
    const map = mapOf(courtyard);
    expect(roundLevels(map, 'channeled', 0.01, 4, 0.5)).toEqual([]);
    expect(map.says.join(' ')).toMatch(
      /At every setting 0\.5 % to 1\.2 % of the bottom feed’s water slips round .* the gap decides it/,
    );
  });
});
