/** Reads how many tests passed and failed out of the report files of the two test runners. */
import { existsSync, readFileSync } from 'node:fs';

export interface Tally {
  passed: number;
  failed: number;
}

/** A runner that leaves no report, or ran nothing, has failed. A test that was skipped proves nothing, so it counts as failed. */
const nothingRan: Tally = { passed: 0, failed: 1 };

function read<Report>(file: string): Report | undefined {
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Report) : undefined;
}

function tally(passed: number, total: number, ranWell: boolean): Tally {
  if (total === 0) return nothingRan;
  const failed = total - passed;
  return { passed, failed: failed === 0 && !ranWell ? 1 : failed };
}

/** `ranWell`: the runner itself ended with exit code 0, which also covers what went wrong outside any test. */
export function unitTally(file: string, ranWell: boolean): Tally {
  const report = read<{ numPassedTests: number; numTotalTests: number }>(file);
  return report ? tally(report.numPassedTests, report.numTotalTests, ranWell) : nothingRan;
}

export function browserTally(file: string, ranWell: boolean): Tally {
  const report = read<{ stats: { expected: number; unexpected: number; flaky: number; skipped: number } }>(file);
  if (!report) return nothingRan;
  const { expected, unexpected, flaky, skipped } = report.stats;
  return tally(expected, expected + unexpected + flaky + skipped, ranWell);
}

interface Suite {
  readonly suites?: readonly Suite[];
  readonly specs?: readonly { tests: readonly { annotations: readonly Note[] }[] }[];
}

interface Note {
  readonly type: string;
  readonly description?: string;
}

const notesOf = ({ suites = [], specs = [] }: Suite): Note[] => [
  ...suites.flatMap(notesOf),
  ...specs.flatMap(({ tests }) => tests.flatMap(({ annotations }) => annotations)),
];

/** What browser tests counted besides themselves, summed over all of them: '153 views checked for accessibility'. */
export function browserNotes(file: string): string {
  const sums = new Map<string, number>();
  for (const { type, description } of notesOf(read<Suite>(file) ?? {})) {
    const count = Number(description);
    // The runner's own notes, that a test is slow, count nothing.
    if (Number.isFinite(count)) sums.set(type, (sums.get(type) ?? 0) + count);
  }
  return [...sums].map(([type, sum]) => `${sum} ${type}`).join(', ');
}
