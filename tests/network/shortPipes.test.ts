import { expect, test } from 'vitest';
import { volumeAt } from '../../sim/laws/storage.ts';
import { riserStorage } from '../../sim/network/plumbing.ts';
import { closureAt } from '../../sim/results/ledger.ts';
import { simulate } from '../../sim/simulate.ts';
import { plainFile, siteOf } from '../trials/plainSite.ts';

/** The plain site, its pipes of a length in m. */
function withPipes(length: number) {
  const file = plainFile();
  const { main, bottomFeed, topFeed } = file.plumbing;
  for (const pipe of [main, bottomFeed, topFeed]) if (pipe) pipe.length = length;
  return siteOf(file);
}

const bore = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

test('pipes that are shorter than they rise hold what stands straight up in them', () => {
  const { plumbing, pump } = withPipes(0);
  const { main, tee, bottomFeed, topFeed } = plumbing;
  const top = Math.max(tee, topFeed?.outlet ?? bottomFeed?.inlet ?? tee);
  const straight =
    bore(main.diameter) * (tee - pump.suction) +
    (bottomFeed ? bore(bottomFeed.diameter) * Math.abs(bottomFeed.inlet - tee) : 0) +
    (topFeed ? bore(topFeed.diameter) * Math.abs(topFeed.outlet - tee) : 0);
  expect(volumeAt(riserStorage(plumbing, pump.suction), top)).toBeCloseTo(straight, 12);
  const long = withPipes(20).plumbing;
  const pipes = [long.main, long.bottomFeed, long.topFeed].reduce((sum, p) => sum + (p ? 20 * bore(p.diameter) : 0), 0);
  expect(volumeAt(riserStorage(long, pump.suction), top)).toBeCloseTo(pipes, 12);
});

test('a site whose pipes have no length runs, starts standing or running, and closes its ledger', () => {
  for (const start of ['standing', 'running', 'overnight'] as const) {
    const { answer, record } = simulate({ ...withPipes(0), start });
    expect(closureAt(record, record.length - 1)).toBeLessThan(1e-9);
    expect(answer.checks.find(({ name }) => name === 'reach')?.verdict).toBe('pass');
  }
});
