import { expect, test, vi } from 'vitest';
import { dammedFallsCheck } from '../../sim/results/checks/dammedFalls.ts';
import { drainBackChecks } from '../../sim/results/checks/drainBack.ts';
import { firstStartCheck } from '../../sim/results/checks/firstStart.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { plainSite } from '../trials/plainSite.ts';

vi.mock('../../sim/steady.ts', () => ({
  steadyVolumes: () => {
    throw new RunFailure('no solution', 0, 'running balance', 'the water course finds no running balance');
  },
}));

test('without a running balance drain-back fails in words, and the other stops are left out', () => {
  const checks = drainBackChecks(plainSite(), undefined);
  expect(checks).toHaveLength(1);
  expect(checks[0]).toMatchObject({ name: 'drain-back', verdict: 'fail', value: null, margin: null, limit: 0.025 });
  expect(checks[0].says).toContain('no running balance');
});

test('a first start needs none but for the water to add; dammed falls are left out', () => {
  const check = firstStartCheck(plainSite());
  expect(check?.verdict).toBe('pass');
  expect(check?.says).not.toContain('added');
  expect(dammedFallsCheck(plainSite())).toBeUndefined();
});
