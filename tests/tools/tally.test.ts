import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { browserNotes, browserTally, unitTally } from './tally.ts';

const folder = mkdtempSync(join(tmpdir(), 'tally-'));

function report(content: object): string {
  const file = join(folder, 'report.json');
  writeFileSync(file, JSON.stringify(content));
  return file;
}

describe('the tally of a test run', () => {
  test('counts a test that was skipped as failed', () => {
    expect(unitTally(report({ numPassedTests: 3, numTotalTests: 4 }), true)).toEqual({ passed: 3, failed: 1 });
    const stats = { expected: 3, unexpected: 0, flaky: 0, skipped: 1 };
    expect(browserTally(report({ stats }), true)).toEqual({ passed: 3, failed: 1 });
  });

  test('counts a test that passed only at the second try as failed', () => {
    const stats = { expected: 3, unexpected: 0, flaky: 1, skipped: 0 };
    expect(browserTally(report({ stats }), true)).toEqual({ passed: 3, failed: 1 });
  });

  test('counts a runner that left no report, or ran nothing, as failed', () => {
    expect(unitTally(join(folder, 'none.json'), true)).toEqual({ passed: 0, failed: 1 });
    expect(unitTally(report({ numPassedTests: 0, numTotalTests: 0 }), true)).toEqual({ passed: 0, failed: 1 });
  });

  test('counts an error outside of all tests as failed', () => {
    expect(unitTally(report({ numPassedTests: 4, numTotalTests: 4 }), false)).toEqual({ passed: 4, failed: 1 });
  });

  test('sums what browser tests counted besides themselves', () => {
    const tests = (seen: string) => [{ annotations: [{ type: 'views seen', description: seen }] }];
    const suites = [{ specs: [{ tests: tests('3') }], suites: [{ specs: [{ tests: tests('4') }] }] }];
    expect(browserNotes(report({ suites }))).toBe('7 views seen');
  });
});
