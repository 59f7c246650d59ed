/** `tumblebay dye` as a shell calls it: what it prints, what it writes, and how it ends. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { changed, courtyard, tumblebay } from './call.ts';

const folder = mkdtempSync(join(tmpdir(), 'dye-'));

describe('the command dye', () => {
  test('prints ways, times and sentences, in the units asked for', () => {
    const { code, out } = tumblebay(['dye', courtyard]);
    expect(code).toBe(0);
    expect(out).toMatch(/^Courtyard spring · dye test of the filter at 0 s \(06:00\) · metric$/m);
    expect(out).toMatch(/^media +148 L\/min +300 L +2 min 2 s$/m);
    expect(out).toMatch(/^baffling, t10\/T +0\.53 average$/m);
    expect(out).toMatch(/nobody\s+has\s+measured/);
    expect(tumblebay(['dye', courtyard, '--display', 'us']).out).toMatch(/^media +2,3\d\d gph +79 gal/m);
  });

  test('gives the whole answer as one object, and the curve as a file', () => {
    const csv = join(folder, 'curve.csv');
    const { out } = tumblebay(['dye', courtyard, '--at', '2h', '--json', '--csv', csv]);
    const answer = JSON.parse(out);
    expect(out).toBe(`${JSON.stringify(answer, null, 2)}\n`);
    const keys = ['at', 'channeled', 'times', 'volumes', 'mean', 'variance', 't10', 't50', 't90', 'morrill', 'T'];
    for (const key of [...keys, 'baffling', 'class', 'recovered', 'curve']) expect(answer).toHaveProperty(key);
    expect(answer.at).toBe(7200);
    expect(Object.keys(answer.times)).toEqual(['plenum', 'media', 'gap', 'mixed']);
    expect(Object.keys(answer.volumes)).toEqual(['plenum', 'pore', 'gap', 'free']);
    const [t, , , passed] = answer.curve[answer.curve.length - 1];
    expect(t).toBeGreaterThanOrEqual(2.999 * answer.mean);
    expect(passed).toBeCloseTo(answer.recovered, 12);
    const rows = readFileSync(csv, 'utf8').trimEnd().split('\r\n');
    expect(rows[0]).toBe('t[s],E through[1/s],E round[1/s],F');
    expect(rows.length - 1).toBe(answer.curve.length);
    expect(rows[200].split(',').map(Number)).toEqual(answer.curve[199]);
  });

  test('says why there are no figures, and that is no failure', () => {
    const { code, out } = tumblebay(['dye', courtyard, '--at', '6.5h']);
    expect(code).toBe(0);
    expect(out).toContain('The pump stands');
    const none = changed(courtyard, (site) => delete site.filter.media);
    const { out: plain } = tumblebay(['dye', '-', '--json'], none);
    expect(JSON.parse(plain)).toMatchObject({ fed: false, at: null });
    expect(JSON.parse(plain).says).toContain('no media');
  });

  test('tells a moment that is none or lies outside the run', () => {
    const outside = tumblebay(['dye', courtyard, '--at', '30h']);
    expect(outside.code).toBe(2);
    expect(outside.err).toContain('--at: found 30h, wanted a time within the run of 24 h');
    expect(tumblebay(['dye', courtyard, '--at', 'noon']).err).toContain('--at');
    expect(tumblebay(['run', courtyard, '--at', '2h']).err).toContain('it with run, wanted it with dye alone');
  });
});
