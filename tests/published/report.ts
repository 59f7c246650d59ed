/**
 * The published values beside ours: a table, worst error over tolerance first, or with `--json` a list.
 *
 * Ends with 1 if any check is out of its tolerance.
 */
import { checks, holds, outcomeOf } from './all.ts';

const outcomes = checks
  .map(outcomeOf)
  .sort((a, b) => b.error / b.tolerance - a.error / a.tolerance || a.id.localeCompare(b.id));

if (process.argv.includes('--json')) {
  const rows = outcomes.map(({ id, source, expected, got, error, tolerance, memory }) => ({
    id,
    source,
    expected,
    got,
    error,
    tolerance,
    memory,
  }));
  process.stdout.write(`${JSON.stringify(rows, null, 2)}\n`);
} else {
  const figure = (x: number): string => x.toPrecision(6).padStart(13);
  const percent = (x: number): string => `${(100 * x).toPrecision(2)} %`.padStart(10);
  const lines = outcomes.map((outcome) => {
    const { id, kind, memory, expected, got, error, tolerance, source } = outcome;
    const verdict = holds(outcome) ? ' ' : '✗';
    const basis = `${kind}${memory ? ', from memory' : ''}`;
    const figures = `${figure(expected)}${figure(got)}${percent(error)} of${percent(tolerance)}`;
    return `${verdict} ${id.padEnd(50)}${figures}  ${basis}: ${source}`;
  });
  const count = (kind: string): number => outcomes.filter((each) => each.kind === kind).length;
  const counts = `${count('published value')} published values, ${count('derived')} derived, ${count('library regression')} from libraries`;
  process.stdout.write(`${[...lines, counts].join('\n')}\n`);
}
if (!outcomes.every(holds)) process.exitCode = 1;
