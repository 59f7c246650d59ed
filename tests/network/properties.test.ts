import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RunFailure } from '../../sim/results/failure.ts';
import { closureAt } from '../../sim/results/ledger.ts';
import { run } from '../../sim/simulate.ts';
import { site } from './randomSite.ts';

const runs = Number(process.env['SITES'] ?? 150);

describe('any valid site', () => {
  test('runs, or is capped with its cause named; closes its ledger at every row; never goes below empty', () => {
    fc.assert(
      fc.property(site, (scenario) => {
        try {
          const { record } = run(scenario);
          for (let row = 0; row < record.length; row++) {
            expect(closureAt(record, row)).toBeLessThan(1e-11);
            for (let i = 0; i < record.network.size; i++) expect(record.volume(row, i)).toBeGreaterThanOrEqual(-1e-15);
            for (let k = 0; k <= record.network.flow.length; k++) expect(record.flow(row, k)).not.toBeNaN();
          }
        } catch (error) {
          if (!(error instanceof RunFailure)) throw error;
          expect(['capped', 'no solution']).toContain(error.kind);
          expect(error.part).not.toBe('');
        }
      }),
      { numRuns: runs, seed: 20310601 },
    );
  });
});
