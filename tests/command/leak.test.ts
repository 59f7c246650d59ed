/** `tumblebay leak` as a shell calls it. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { courtyard, tumblebay } from './call.ts';

const folder = mkdtempSync(join(tmpdir(), 'leak-'));
const LEAKS =
  'date, level mm, pump\n2031-06-02, 110, on\n2031-06-03, 128\n2031-06-04, 145\n2031-06-05, wet\n2031-06-06, 181\n';
const HOLDS =
  'date, level mm, pump\n2031-06-02, 110, on\n2031-06-03, 117\n2031-06-04, 124\n2031-06-05, 131\n2031-06-06, 138\n';

function logFile(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe('the command leak', () => {
  test('says how much is lost, and what it could not read, and ends with 1', () => {
    const { code, out, err } = tumblebay(['leak', courtyard, logFile('leaks.csv', LEAKS)]);
    expect([code, err]).toEqual([1, '']);
    expect(out).toMatch(/^It loses 1\d mm a day more than evaporation and splash explain/m);
    expect(out).toMatch(/^line 5: found "wet", which begins with no number/m);
    expect(out).toContain('licensed practice');
  });

  test('ends with 0 where the pond holds, the log on standard input, as plain data', () => {
    const { code, out } = tumblebay(['leak', courtyard, '-', '--json'], HOLDS);
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer.verdict).toBe('holds');
    expect(answer.problems).toEqual([]);
    expect(answer.loss.band[0]).toBeLessThan(0);
    expect(answer.plot.dots).toHaveLength(5);
  });

  test('takes a ruler that stands in the water, and shows in other units', () => {
    const path = logFile('ruler.csv', '0 d, 20 in\n1 d, 19 in\n2 d, 18 in\n3 d, 17 in\n');
    expect(tumblebay(['leak', courtyard, path]).out).toContain('less than evaporation and splash would make it');
    const { code, out } = tumblebay(['leak', courtyard, path, '--ruler', '--display', 'us']);
    expect(code).toBe(1);
    expect(out).toMatch(/^It loses 0\.7\d in a day more/m);
  });

  test('ends with 2 where there is nothing to say, each problem on a line of its own', () => {
    const two = tumblebay(['leak', courtyard, '-'], '0 d, 110 mm\n1 d, 120 L\n2 d, 130 mm\n');
    expect(two.code).toBe(2);
    expect(two.err.trim().split('\n')).toHaveLength(2);
    expect(two.err).toMatch(/^line 2: found the unit L/);
    expect(two.err).toContain('the log: found two readings');
    expect(tumblebay(['leak', courtyard]).err).toContain('the log: found nothing, wanted a text of levels');
    expect(tumblebay(['leak', '-', '-']).err).toContain('standard input a second time');
    expect(tumblebay(['leak', courtyard, 'a.txt', 'b.txt']).err).toContain('wanted a file and a log');
    expect(tumblebay(['leak', courtyard, courtyard]).err).toContain('JSON, no log');
    expect(tumblebay(['leak', courtyard, join(folder, 'none.txt')]).err).toContain('wanted a text of levels');
    expect(tumblebay(['run', courtyard, '--ruler']).code).toBe(2);
  });
});
