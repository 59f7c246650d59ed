/** Sketches drawn over the sensible ranges: each is a valid scenario, and runs. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { balanceOrFailure } from '../../sim/balance.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { run, simulate } from '../../sim/simulate.ts';
import { expandSketch } from '../../sim/sketch/expand.ts';
import { sketch } from './randomSketch.ts';
import { problemsOf, siteOf } from './sites.ts';

// The last test runs whole days with every band.
vi.setConfig({ testTimeout: 300_000 });

const drawn = fc.sample(sketch, 2000);

describe('two thousand random sketches', () => {
  test('all expand to whole files that read without a problem, and to the same a second time', () => {
    for (const each of drawn) {
      const { file, problems } = expandSketch({ sketch: each });
      expect(problems, JSON.stringify(each)).toEqual([]);
      expect(problemsOf(file), JSON.stringify(each)).toEqual([]);
      expect(expandSketch(file).file).toBe(file);
    }
  });

  test('all find their running balance', () => {
    for (const each of drawn)
      expect(balanceOrFailure(siteOf({ sketch: each })), JSON.stringify(each)).not.toBeInstanceOf(RunFailure);
  });

  test('run their day through the stop at noon, every twentieth of them', () => {
    for (const each of drawn.filter((_, i) => i % 20 === 0)) {
      const { record } = run(siteOf({ sketch: each }));
      expect(record.time(record.length - 1), JSON.stringify(each)).toBe(86400);
    }
  });

  test('answer with all checks and bands, every two hundredth of them', () => {
    for (const each of drawn.filter((_, i) => i % 200 === 0)) {
      const { checks, ledger } = simulate(siteOf({ sketch: each })).answer;
      expect(ledger.closure).toBeLessThan(1e-9);
      expect(checks.find(({ name }) => name === 'volume')!.band).toBeGreaterThan(0);
      for (const { band } of checks) expect(Number.isFinite(band)).toBe(true);
    }
  });
});
