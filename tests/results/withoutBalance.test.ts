import { expect, test, vi } from 'vitest';
import { dammedFallsCheck } from '../../sim/results/checks/dammedFalls.ts';
import { drainBackChecks } from '../../sim/results/checks/drainBack.ts';
import { firstStartCheck } from '../../sim/results/checks/firstStart.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { simulate } from '../../sim/simulate.ts';
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

test('a site that was to start running starts standing, and says so first', () => {
  const standing = { ...plainSite(), start: 'standing' as const };
  const { answer } = simulate({ ...standing, start: 'running' });
  expect(answer.cautions[0]).toMatch(/^No running balance is found .*, so the run starts standing;/);
  expect(answer.levels).toEqual(simulate(standing).answer.levels);
});
