import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assemble } from '../../sim/network/assemble.ts';
import type { Network } from '../../sim/network/network.ts';
import { settingsOf, standingVolumes } from '../../sim/network/start.ts';
import { makeLinearization } from '../../sim/solver/system.ts';
import { site } from './randomSite.ts';

const SITES = Number(process.env['SITES'] ?? 150);

const shifted = (y: Float64Array, k: number, by: number): Float64Array => y.map((v, i) => (i === k ? v + by : v));

function rates(network: Network, y: Float64Array, t = 0): { f: Float64Array; g: Float64Array } {
  const f = new Float64Array(network.size);
  const g = new Float64Array(network.quadratures);
  network.rates(t, y, f, g);
  return { f, g };
}

/** A random state round the standing one: every basin a little above or below where it stands. */
const state = fc.record({
  scenario: site,
  shifts: fc.array(fc.double({ min: 0.55, max: 1.5, noNaN: true }), { minLength: 12, maxLength: 12 }),
  speed: fc.constantFrom(0, 0.4, 1),
});

describe('the slopes of the network', () => {
  /** One-sided differences on both sides: at a kink the analytic slope has to be one of the two, elsewhere both. */
  test('equal differences on both sides of their kinks', () => {
    fc.assert(
      fc.property(state, ({ scenario, shifts, speed }) => {
        const network = assemble(scenario);
        network.apply({ ...settingsOf(scenario, network, speed), evaporation: 1e-7 });
        const y = standingVolumes(scenario, network, -0.1).map((v, i) => (v + 1e-3) * shifts[i % shifts.length]);
        const at = makeLinearization(network);
        network.linearize(0, y, at);
        const { rows, columns } = network.jacobianPattern;
        for (let k = 0; k < network.size; k++) {
          const step = 1e-7 * y[k];
          const [low, mid, high] = [-step, 0, step].map((d) => rates(network, shifted(y, k, d)).f);
          for (let e = 0; e < rows.length; e++) {
            if (columns[e] !== k) continue;
            const r = rows[e];
            const sides = [(mid[r] - low[r]) / step, (high[r] - mid[r]) / step];
            const scale = Math.max(1e-4, ...sides.map(Math.abs), Math.abs(mid[r]) / y[k]);
            const miss = Math.min(...sides.map((side) => Math.abs(side - at.jacobian[e])));
            expect(miss / scale).toBeLessThan(2e-3);
          }
        }
      }),
      { numRuns: SITES, seed: 20310602 },
    );
  });

  test('conserve water: what leaves by a slope arrives by it, or is booked in the ledger', () => {
    fc.assert(
      fc.property(state, ({ scenario, shifts, speed }) => {
        const network = assemble(scenario);
        network.apply(settingsOf(scenario, network, speed));
        const y = standingVolumes(scenario, network, -0.1).map((v, i) => (v + 1e-3) * shifts[i % shifts.length]);
        const at = makeLinearization(network);
        network.linearize(0, y, at);
        const column = new Float64Array(network.size);
        const { jacobianPattern: j, quadraturePattern: q } = network;
        at.jacobian.forEach((v, e) => {
          column[j.columns[e]] += v;
        });
        // Rows 0..3 count water in, 4..11 water out, the rest no water of the balance.
        at.gradient.forEach((v, e) => {
          if (q.rows[e] < 12) column[q.columns[e]] += q.rows[e] < 4 ? -v : v;
        });
        const most = Math.max(...at.jacobian.map(Math.abs), 1e-9);
        for (const sum of column) expect(Math.abs(sum) / most).toBeLessThan(1e-12);
      }),
      { numRuns: SITES, seed: 20310603 },
    );
  });

  test('make I/(hγ) − J an M-matrix: a basin’s own slope is not positive, another’s not negative', () => {
    fc.assert(
      fc.property(state, ({ scenario, shifts, speed }) => {
        const network = assemble(scenario);
        network.apply(settingsOf(scenario, network, speed));
        const y = standingVolumes(scenario, network, -0.1).map((v, i) => (v + 1e-3) * shifts[i % shifts.length]);
        const at = makeLinearization(network);
        network.linearize(0, y, at);
        const { rows, columns } = network.jacobianPattern;
        const most = Math.max(...at.jacobian.map(Math.abs), 1e-9);
        at.jacobian.forEach((v, e) => {
          if (rows[e] === columns[e]) expect(v).toBeLessThanOrEqual(1e-12);
          else expect(v / most).toBeGreaterThanOrEqual(-1e-12);
        });
      }),
      { numRuns: SITES, seed: 20310604 },
    );
  });

  test('of the ledger’s rows, energy and pumped water among them, equal differences on one side or the other', () => {
    fc.assert(
      fc.property(state, ({ scenario, shifts, speed }) => {
        const network = assemble(scenario);
        network.apply({ ...settingsOf(scenario, network, speed), evaporation: 1e-7 });
        const y = standingVolumes(scenario, network, -0.1).map((v, i) => (v + 1e-3) * shifts[i % shifts.length]);
        const at = makeLinearization(network);
        network.linearize(0, y, at);
        const { rows, columns } = network.quadraturePattern;
        for (let k = 0; k < network.size; k++) {
          const step = 1e-7 * y[k];
          const [low, mid, high] = [-step, 0, step].map((d) => rates(network, shifted(y, k, d)).g);
          rows.forEach((r, e) => {
            if (columns[e] !== k) return;
            const sides = [(mid[r] - low[r]) / step, (high[r] - mid[r]) / step];
            const scale = Math.max(1e-4, ...sides.map(Math.abs), Math.abs(mid[r]) / y[k]);
            const miss = Math.min(...sides.map((side) => Math.abs(side - at.gradient[e])));
            expect(miss / scale).toBeLessThan(2e-3);
          });
        }
      }),
      { numRuns: SITES, seed: 20310605 },
    );
  });

  test('by time equal differences while the pump’s speed runs', () => {
    fc.assert(
      fc.property(state, fc.constantFrom([0, 1], [1, 0], [0.4, 1.2]), ({ scenario, shifts }, [from, to]) => {
        const network = assemble(scenario);
        network.apply({ ...settingsOf(scenario, network, 0), ramp: { from, to, start: 10, end: 13 } });
        const y = standingVolumes(scenario, network, -0.1).map((v, i) => (v + 1e-3) * shifts[i % shifts.length]);
        const at = makeLinearization(network);
        network.linearize(11.7, y, at);
        const step = 1e-7;
        const [low, mid, high] = [-step, 0, step].map((d) => rates(network, y, 11.7 + d));
        const compare = (slopes: Float64Array, of: 'f' | 'g'): void =>
          slopes.forEach((slope, r) => {
            const sides = [(mid[of][r] - low[of][r]) / step, (high[of][r] - mid[of][r]) / step];
            const scale = Math.max(1e-4, ...sides.map(Math.abs), Math.abs(mid[of][r]));
            const miss = Math.min(...sides.map((side) => Math.abs(side - slope)));
            expect(miss / scale).toBeLessThan(2e-3);
          });
        compare(at.fByTime, 'f');
        compare(at.gByTime, 'g');
      }),
      { numRuns: SITES, seed: 20310606 },
    );
  });
});
