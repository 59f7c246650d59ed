import { describe, expect, test } from 'vitest';
import { type Check, checks, outcomeOf } from './all.ts';

const kinds = ['published value', 'derived', 'library regression'] as const;

describe.each(kinds)('%s', (kind) => {
  const ofKind: readonly Check[] = checks.filter((check) => check.kind === kind);
  test.each(ofKind)('$id ($source)', (check) => {
    const { error, tolerance, got, expected } = outcomeOf(check);
    expect(error, `${got} for ${expected}`).toBeLessThanOrEqual(tolerance);
  });
});

test('forty values at least come from print', () => {
  expect(checks.filter(({ kind }) => kind === 'published value').length).toBeGreaterThanOrEqual(40);
});

test('twelve values from print at least are answered by a site', () => {
  const bySite = checks.filter(({ id, kind }) => id.startsWith('site-') && kind === 'published value');
  expect(bySite.length).toBeGreaterThanOrEqual(12);
});
