/** Where all checks hold: the borders of the region, its rings, and the limits of the file. */
import { describe, expect, test } from 'vitest';
import type { MapPoint } from '../../sim/map/answer.ts';
import { borderOf, regionOf } from '../../sim/map/lines.ts';
import { siteAt } from '../../sim/map/seeker.ts';
import { headroomCheck } from '../../sim/results/checks/headroom.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { velocityCheck } from '../../sim/results/checks/velocity.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { felted, mapOf, siteOf } from './sites.ts';

const felt = siteOf('courtyard', felted);
const feltMap = mapOf(felt);

describe('the region', () => {
  test('through the present point is bordered where the first check turns, to a tenth of a degree', () => {
    const turn = 1 / 900;
    let borders = 0;
    for (const top of [0.1, 0.3, 0.4, 0.5, 0.8]) {
      const site = siteAt(felt, { bottom: 0.5, top, speed: 1 });
      for (const { from, to, below, above } of mapOf(site).along.x) {
        if (from === 0) continue;
        for (const [edge, out, beyond] of [
          [from, -1, below],
          [to, 1, above],
        ] as const) {
          borders++;
          const failsAt = (bottom: number) => presentOf(siteAt(felt, { bottom, top, speed: 1 })).fails;
          expect(failsAt(edge - out * 1e-6), `${edge}, ${top}`).toBe(null);
          expect(beyond).not.toBe(null);
          expect(failsAt(edge + out * turn), `${edge}, ${top}`).toBe(beyond);
        }
      }
    }
    expect(borders).toBeGreaterThanOrEqual(6);
  });

  const presentOf = (site: Scenario): MapPoint => mapOf(site, 'valves', 2).now;

  test('as rings holds the points that hold, and no other', () => {
    const rings = regionOf(feltMap);
    const inside = (x: number, y: number): boolean =>
      rings.reduce((odd, ring) => {
        const crossed = ring.slice(1).filter(([x2, y2], k) => {
          const [x1, y1] = ring[k];
          return y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1);
        });
        return crossed.length % 2 === 1 ? !odd : odd;
      }, false);
    for (const { x, y, fails } of feltMap.points) {
      if (x === 0 || y === 0 || x === 1 || y === 1) continue;
      expect(inside(x + 1e-9, y + 1e-9), `${x}, ${y}`).toBe(fails === null);
    }
    expect(borderOf(feltMap).pieces.length).toBeGreaterThan(0);
  });
});

test('limits of the file are the map’s: with a lower one velocity fails, with a higher headroom none', () => {
  const slow = siteOf('courtyard', (file) => {
    file.limits = { velocity: '0.9 m/s' };
  });
  const map = mapOf(slow, 'valves', 5);
  for (const { bottom, top, fails } of map.points) {
    const site = siteAt(slow, { bottom: bottom ?? 0, top: top ?? 0, speed: 1 });
    const input = { scenario: site, balance: balanceOf(site) };
    if (headroomCheck(input)?.verdict === 'fail' || fails === 'falls') continue;
    expect(fails).toBe(velocityCheck(input)?.verdict === 'fail' ? 'velocity' : null);
  }
  expect(map.points.some(({ fails }) => fails === 'velocity')).toBe(true);
});
