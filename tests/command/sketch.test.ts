/** The command that writes the whole scenario file of a site from a sketch. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root, tumblebay } from './call.ts';

const backyard = 'scenarios/backyard.json';
const text = readFileSync(join(root, backyard), 'utf8');

describe('tumblebay sketch', () => {
  test('writes a file without a sketch that answers as the sketch does', () => {
    const { code, out, err } = tumblebay(['sketch', backyard]);
    expect([code, err]).toEqual([0, '']);
    expect(Object.keys(JSON.parse(out))).toEqual(expect.arrayContaining(['title', 'pond', 'watercourse', 'actions']));
    expect(JSON.parse(out)).not.toHaveProperty('sketch');
    expect(out).toContain('"length": "14 ft 6 in"');
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThan(400);
    expect(tumblebay(['balance', '-', '--json'], out).out).toBe(tumblebay(['balance', backyard, '--json']).out);
  });

  test('reads standard input, and writes the same file of its own file', () => {
    const once = tumblebay(['sketch', '-'], text).out;
    expect(once).toBe(tumblebay(['sketch', backyard]).out);
    expect(tumblebay(['sketch', '-'], once).out).toBe(once);
  });

  test('takes --json and --display as the others do', () => {
    const { out } = tumblebay(['sketch', backyard, '--json', '--display', 'metric']);
    expect(out).toBe(`${JSON.stringify(JSON.parse(out), null, 2)}\n`);
    expect(JSON.parse(out).display).toBe('metric');
  });

  test('ends with 2 and a line for each problem, named by the sketch’s own numbers', () => {
    const { code, out, err } = tumblebay(
      ['sketch', '-'],
      '{ "sketch": { "length": "3 1/", "width": 0, "depth": "400 m" } }',
    );
    expect([code, out]).toEqual([2, '']);
    expect(
      err
        .trimEnd()
        .split('\n')
        .map((line) => line.split(':')[0])
        .sort(),
    ).toEqual(['sketch.depth', 'sketch.length', 'sketch.pump', 'sketch.width']);
  });
});
