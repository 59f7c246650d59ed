/** What physics demands of a map. */
import { describe, expect, test } from 'vitest';
import type { MapPoint, OperatingMap } from '../../sim/map/answer.ts';
import { felted, mapOf, siteOf } from './sites.ts';

const courtyard = siteOf('courtyard');
const felt = siteOf('courtyard', felted);
const feltMap = mapOf(felt);

/** Pairs of neighbors along an axis, both with a balance. */
function pairs({ x, points }: OperatingMap, axis: 'x' | 'y'): (readonly [MapPoint, MapPoint])[] {
  const by = axis === 'x' ? 1 : x.length;
  return points.flatMap((point, k) => {
    const next = points[k + by];
    const beside = next !== undefined && (axis === 'y' || next.y === point.y);
    return beside && point.found && next.found ? [[point, next] as const] : [];
  });
}

const bottomFlow = ({ flow, split }: MapPoint): number => (flow ?? 0) * (split ?? 0);
const topFlow = (point: MapPoint): number => (point.flow ?? 0) - bottomFlow(point);
/** Rounding in which Newton's method stops, m³/s. */
const ROUNDING = 1e-11;

describe('as physics demands', () => {
  test.each([
    ['courtyard', courtyard],
    ['felted courtyard', felt],
    ['backyard', siteOf('backyard')],
    ['storm', siteOf('storm')],
  ])('in the %s a valve opened gives its own feed more, the other less, and the pump more in all', (_, site) => {
    const map = mapOf(site);
    for (const [less, more] of pairs(map, 'x')) {
      expect(bottomFlow(more) - bottomFlow(less)).toBeGreaterThan(-ROUNDING);
      expect(topFlow(more) - topFlow(less)).toBeLessThan(ROUNDING);
      expect((more.flow ?? 0) - (less.flow ?? 0)).toBeGreaterThan(-ROUNDING);
    }
    for (const [less, more] of pairs(map, 'y')) {
      expect(topFlow(more) - topFlow(less)).toBeGreaterThan(-ROUNDING);
      expect(bottomFlow(more) - bottomFlow(less)).toBeLessThan(ROUNDING);
      expect((more.flow ?? 0) - (less.flow ?? 0)).toBeGreaterThan(-ROUNDING);
    }
  });

  test('media carry a head that grows with the flow through them, and water stands the higher the more there is', () => {
    for (const axis of ['x', 'y'] as const)
      for (const [a, b] of pairs(feltMap, axis)) {
        if (a.lift !== null && b.lift !== null && a.pore !== null && b.pore !== null) {
          const [more, through] = [b.lift - a.lift, 1 / b.pore - 1 / a.pore];
          if (Math.abs(through) > 1e-9) expect(Math.sign(more)).toBe(Math.sign(through));
        }
        expect((a.headroom ?? 0) - (b.headroom ?? 0)).toBeGreaterThan(-1e-9);
      }
  });

  test('what goes through the media times its contact time is the volume of the bed, and of its pores', () => {
    const layers = felt.filter?.media?.layers ?? [];
    const area = felt.filter?.media?.area ?? 0;
    const bed = area * layers.reduce((sum, { thickness }) => sum + thickness, 0);
    const pores = area * layers.reduce((sum, { thickness, porosity }) => sum + thickness * porosity, 0);
    for (const point of feltMap.points) {
      if (point.emptyBed === null || point.pore === null) continue;
      const through = bottomFlow(point) * (1 - (point.channeled ?? 0));
      expect((through * point.emptyBed) / bed).toBeCloseTo(1, 8);
      expect((through * point.pore) / pores).toBeCloseTo(1, 8);
    }
  });

  test('at one share a faster pump lifts more', () => {
    for (const site of [courtyard, felt])
      for (const [slow, fast] of pairs(mapOf(site, 'flow'), 'x')) {
        expect(slow.split === null || Math.abs(slow.split - slow.y) < 2e-6 || slow.flow === 0).toBe(true);
        expect((fast.flow ?? 0) - (slow.flow ?? 0)).toBeGreaterThan(-ROUNDING);
      }
  });
});
