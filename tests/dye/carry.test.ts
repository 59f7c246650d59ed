/** Dye carried between places, and plug flow, beside their closed forms. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Carrier } from '../../sim/dye/carry.ts';
import { Plug } from '../../sim/dye/plug.ts';
import { agree, type WaterWay } from '../../sim/dye/waterWays.ts';

const FAST = 1e9;

describe('dye between mixed places', () => {
  test('leaves a tank by e^(−t/τ), at one step or many', () => {
    for (const steps of [1, 7, 400]) {
      const carrier = new Carrier(2);
      carrier.flow(0, 1, 2e-3);
      const mass = Float64Array.of(1, 0);
      for (let k = 0; k < steps; k++) carrier.carry(mass, Float64Array.of(0.5, 0), 600 / steps, FAST);
      expect(Math.abs(mass[0] - Math.exp(-2.4))).toBeLessThan(1e-13);
      expect(Math.abs(mass[0] + mass[1] - 1)).toBeLessThan(1e-13);
    }
  });

  test('goes round between two tanks to equal concentration, as c₁ − c₂ falls by e^(−q t (1/V₁ + 1/V₂))', () => {
    const carrier = new Carrier(2);
    carrier.flow(0, 1, 1e-3);
    carrier.flow(1, 0, 1e-3);
    const mass = Float64Array.of(1, 0);
    carrier.carry(mass, Float64Array.of(0.2, 0.3), 200, FAST);
    expect(mass[0] / 0.2 - mass[1] / 0.3).toBeCloseTo(5 * Math.exp(-0.2 * (1 / 0.2 + 1 / 0.3)), 12);
  });

  test('turns with the water: a negative flow carries from its far end', () => {
    const carrier = new Carrier(2);
    carrier.flow(0, 1, -1e-3);
    const mass = Float64Array.of(0, 1);
    carrier.carry(mass, Float64Array.of(1, 1), 1000, FAST);
    expect(mass[1]).toBeCloseTo(Math.exp(-1), 12);
  });

  test('is counted without being taken', () => {
    const carrier = new Carrier(3);
    carrier.flow(0, 1, 1e-3);
    carrier.count(0, 2, 1e-3);
    const mass = Float64Array.of(1, 0, 0);
    carrier.carry(mass, Float64Array.of(1, 1, 1), 500, FAST);
    expect(mass[2]).toBeCloseTo(mass[1], 14);
  });

  test('of any mass and flows keeps its sum and never falls below nothing, however stiff', () => {
    const flow = fc.record({ from: fc.nat(5), to: fc.nat(5), water: fc.constantFrom(1e-12, 1e-6, 1e-3, 0.3, -0.02) });
    const amounts = fc.array(fc.constantFrom(0, 1e-12, 1e-4, 1, 30), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(fc.array(flow, { maxLength: 20 }), amounts, amounts, (flows, masses, volumes) => {
        const carrier = new Carrier(6);
        for (const { from, to, water } of flows) if (from !== to) carrier.flow(from, to, water);
        const mass = Float64Array.from(masses);
        const before = mass.reduce((sum, m) => sum + m, 0);
        carrier.carry(mass, Float64Array.from(volumes), 30, 20);
        const after = mass.reduce((sum, m) => sum + m, 0);
        expect(Math.abs(after - before)).toBeLessThanOrEqual(1e-12 * before);
        for (const m of mass) expect(m).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 300, seed: 20310601 },
    );
  });
});

describe('plug flow', () => {
  test('gives what was put in, in its order, after its own volume has passed', () => {
    const plug = new Plug(10);
    plug.put(1, 5, 'low');
    for (let k = 0; k < 10; k++) expect(plug.take(1, 'high').mass).toBe(k < 10 ? 0 : 5);
    expect(plug.take(0.25, 'high').mass).toBeCloseTo(1.25, 15);
    expect(plug.take(1, 'high')).toEqual({ volume: 0.75, mass: 3.75 });
    expect(plug.volume).toBe(0);
  });

  test('gives it back at the end where it came in when the water turns', () => {
    const plug = new Plug(10);
    plug.put(1, 5, 'low');
    expect(plug.take(1, 'low')).toEqual({ volume: 1, mass: 5 });
    expect(plug.take(20, 'low')).toEqual({ volume: 10, mass: 0 });
  });

  test('spreads over cells without loss', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(9), fc.nat(9)), { minLength: 1 }),
        fc.integer({ min: 1, max: 40 }),
        (all, cells) => {
          const plug = new Plug(0);
          for (const [volume, mass] of all) plug.put(volume, mass, 'high');
          const out = new Float64Array(cells + 2);
          plug.spread(cells, out, 1);
          expect(out.reduce((sum, m) => sum + m, 0)).toBeCloseTo(plug.mass, 9);
          expect([out[0], out[cells + 1]]).toEqual([0, 0]);
        },
      ),
      { numRuns: 200, seed: 20310601 },
    );
  });
});

describe('flows between basins', () => {
  const way = (from: number, to: number, flow: number): WaterWay => ({
    kind: 'other',
    from,
    to,
    flow,
    splash: 0,
    least: 0,
  });

  test('are made to fill and empty them as they did, by corrections no greater than that asks', () => {
    // A ring of four with a short cut, and a way out; the last basin closes what the rest does not.
    const ways = [
      way(0, 1, 2e-3),
      way(1, 2, 1.5e-3),
      way(2, 3, 1e-3),
      way(3, 0, 1.8e-3),
      way(1, 3, 4e-4),
      way(2, -1, 1e-4),
    ];
    const before = ways.map(({ flow }) => flow);
    const short = Float64Array.of(1e-4, -2e-5, 5e-5, 0);
    agree(ways, short);
    for (const basin of [0, 1, 2]) {
      const gained = ways.reduce((sum, { from, to, flow }, i) => {
        const change = flow - before[i];
        return sum + (to === basin ? change : 0) - (from === basin ? change : 0);
      }, 0);
      expect(gained).toBeCloseTo(short[basin], 15);
    }
    expect(ways[5].flow).toBe(1e-4);
    for (const [i, { flow }] of ways.entries()) expect(Math.abs(flow - before[i])).toBeLessThan(2e-4);
  });

  test('leave a pipe at rest at rest, and what is cut off alone', () => {
    const ways = [way(0, 1, 1e-3), way(1, 2, 0)];
    agree(ways, Float64Array.of(-1e-5, 1e-5, 0));
    expect(ways[1].flow).toBe(0);
    expect(ways[0].flow).toBeCloseTo(1.01e-3, 15);
  });
});
