/** Whatever the pond and its hoses: no water appears, marks follow each other, and what is opened in time is full in time. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openingFor } from '../../sim/fill/opening.ts';
import { fillPlan } from '../../sim/fill/plan.ts';
import { siteOf } from './sites.ts';

const HOUR = 3600;
const time = fc.integer({ min: 0, max: 23 }).map((h) => h * HOUR);

const sites = fc
  .record({
    floor: fc.double({ min: 2, max: 20, noNaN: true }),
    brim: fc.double({ min: 20, max: 40, noNaN: true }),
    level: fc.oneof(fc.constant('empty'), fc.double({ min: -0.79, max: -0.15, noNaN: true })),
    evaporation: fc.double({ min: 0, max: 1e-7, noNaN: true }),
    flows: fc.array(fc.double({ min: 1e-4, max: 2e-3, noNaN: true }), { minLength: 1, maxLength: 3 }),
    load: fc.option(fc.double({ min: 0.1, max: 5, noNaN: true }), { nil: undefined }),
  })
  .map(({ floor, brim, level, evaporation, flows, load }) =>
    siteOf((file) => {
      file.pond.profile = [
        [-0.8, floor],
        [0.1, brim],
      ];
      file.pond.level = level;
      file.weather = { evaporation };
      file.supply.hose = flows.map((flow, i) => ({
        name: `hose ${i}`,
        flow,
        on: i === 0,
        ...(i === 1 && load !== undefined ? { volume: load } : {}),
      }));
      if (flows.length > 1) file.actions = [{ at: '1 h', do: 'hose', name: 'hose 1', to: 'on' }];
    }),
  );

test('a fill keeps account of its water and comes to its marks in order', () => {
  fc.assert(
    fc.property(sites, fc.tuple(time, time), (s, nights) => {
      const plan = fillPlan(s, { nights });
      expect(plan).toBeDefined();
      if (plan === undefined || plan.full === null) return;
      const loads = plan.hoses.map(({ volume }) => volume ?? 0);
      // Evaporation takes no more than from the mark's whole surface all the time, and gives nothing.
      const most = (s.weather.evaporation as number) * (plan.marks.at(-1)?.surface ?? 0) * plan.full.t;
      expect(plan.lost).toBeGreaterThan(-1e-9);
      expect(plan.lost).toBeLessThan(most + 1e-9);
      expect(loads.reduce((a, b) => a + b, 0)).toBeCloseTo(plan.volume ?? Number.NaN, 9);
      s.hoses.forEach(({ volume }, i) => {
        expect(loads[i]).toBeLessThanOrEqual((volume ?? Infinity) * (1 + 1e-12));
      });
      const reached = plan.marks.map((mark) => mark.reached?.t ?? Number.NaN);
      reached.forEach((t, i) => {
        if (i > 0) expect(t).toBeGreaterThanOrEqual(reached[i - 1]);
      });
      for (const { stretches } of plan.hoses) {
        for (const { from, to } of stretches) expect((to?.t ?? Infinity) - from.t).toBeGreaterThan(0);
      }
    }),
    { numRuns: 100 },
  );
});

test('an opening in time is full in time, and a later one is not', () => {
  fc.assert(
    fc.property(sites, fc.tuple(time, time), fc.integer({ min: 1, max: 72 }), (s, nights, hours) => {
      const by = hours * HOUR;
      const opening = openingFor(s, by, { nights });
      const full = (open: number): number => fillPlan(s, { nights, open })?.full?.t ?? Number.POSITIVE_INFINITY;
      if (opening === undefined || opening.open === null) {
        expect(full(0)).toBeGreaterThan(by);
        return;
      }
      expect(full(opening.open)).toBeLessThanOrEqual(by);
      // Within a night with the hoses shut a later opening comes to the same; that is no fault.
      const later = opening.open + 10;
      if (later < by) expect(full(later)).toBeGreaterThan(by - 10);
    }),
    { numRuns: 60 },
  );
});
