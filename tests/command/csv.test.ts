/** The series as CSV: RFC 4180, SI, rows at each step's end and two where the run restarts. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { RunAnswer } from '../../sim/results/answer.ts';
import { csvLines } from '../../sim/results/csv.ts';
import { changed, courtyard, tumblebay } from './call.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tumblebay-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function csvOf(...args: string[]): { text: string; rows: string[][]; column: (name: string) => number[] } {
  const file = join(folder, 'out.csv');
  const { code } = tumblebay(['run', courtyard, '--csv', file, ...args]);
  expect(code).toBe(0);
  const text = readFileSync(file, 'utf8');
  const rows = text
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));
  return { text, rows, column: (name) => rows.slice(1).map((row) => Number(row[rows[0].indexOf(name)])) };
}

describe('the series of a run', () => {
  test('begins with its columns, ends every line in CRLF, and has every row as long as the first', () => {
    const { text, rows } = csvOf();
    expect(rows[0].slice(0, 3)).toEqual(['t[s]', 'clock', 'pond[m]']);
    const firstFlow = rows[0].findIndex((name) => name.endsWith('[m3/s]'));
    expect(rows[0][firstFlow]).toBe('main[m3/s]');
    expect(rows[0].slice(2).every((name, i) => name.endsWith(i < firstFlow - 2 ? '[m]' : '[m3/s]'))).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(rows.filter((row) => row.length !== rows[0].length)).toEqual([]);
  });

  test('has two rows where the pump stops and starts, levels equal on both sides', () => {
    const { rows } = csvOf();
    for (const stop of ['21600', '25200']) {
      const pair = rows.filter((row) => row[0] === stop);
      expect(pair).toHaveLength(2);
      expect(pair[0].slice(0, 3)).toEqual(pair[1].slice(0, 3));
    }
    const noon = rows.find((row) => row[0] === '21600')!;
    expect(noon[1]).toBe('2031-06-02T12:00:00');
  });

  test('is SI whatever is shown, and agrees with the answer', () => {
    const { column, text } = csvOf('--display', 'us', '--json');
    expect(csvOf().text).toBe(text);
    const { levels, flows, work } = JSON.parse(tumblebay(['run', courtyard, '--json']).out) as RunAnswer;
    const pond = column('pond[m]');
    expect(pond[0]).toBe(levels['pond'].start);
    expect(pond.at(-1)).toBe(levels['pond'].end);
    expect(Math.max(...column('main[m3/s]'))).toBe(flows['main'].max.value);
    const t = column('t[s]');
    expect([t[0], t.at(-1)]).toEqual([0, 86400]);
    const repeated = t.filter((moment, i) => i > 0 && moment === t[i - 1]).length;
    // Rows are steps, the first row, and one more at each restart.
    expect(t.length).toBe(work.steps + 1 + repeated);
  });

  test('is even by --every, with the end as its last row', () => {
    const every = (spacing: string): number[] => csvOf('--every', spacing).column('t[s]');
    expect(every('10min')).toEqual(Array.from({ length: 145 }, (_, i) => 600 * i));
    expect(every('7 h')).toEqual([0, 25200, 50400, 75600, 86400]);
  });
});

test('a name with a comma or a quote is quoted', () => {
  const one = Float64Array.of(-0);
  const series = { t: one, levels: { 'pool, the "upper"': one, pond: one }, flows: { main: Float64Array.of(1e-9) } };
  const [head, row] = [...csvLines(series, '2031-01-01T00:00')];
  expect(head).toBe('t[s],clock,pond[m],"pool, the ""upper""[m]",main[m3/s]\r\n');
  expect(row).toBe('0,2031-01-01T00:00:00,0,0,1e-9\r\n');
});

describe('a run of water that brings something along', () => {
  const dirty = changed(courtyard, (site) => {
    site.debris = 1e-5;
    site.concentration = '20 mg/L';
    site.filter.media.layers[0].capture = 5;
    site.filter.media.layers[0].deposit = '0.5 L';
    site.filter.media.removal = 0.002;
  });

  test('has columns of what settles and of the waste, which end as the answer does', () => {
    const file = join(folder, 'dirty.csv');
    tumblebay(['run', '-', '--csv', file, '--every', '1 h'], dirty);
    const rows = readFileSync(file, 'utf8').trimEnd().split('\r\n');
    const table = rows.map((line) => line.split(','));
    expect(table[0].slice(-3)).toEqual(['settled in coarse mat[m3]', 'settled in bagged media[m3]', 'waste[kg/m3]']);
    const { deposits, concentration } = JSON.parse(tumblebay(['run', '-', '--json'], dirty).out) as RunAnswer;
    const last = table.at(-1)!.slice(-3).map(Number);
    expect(last[0]).toBeCloseTo(deposits['coarse mat'], 12);
    expect(last[2]).toBeCloseTo(concentration, 12);
    expect(Number(table[1].at(-3))).toBe(0.0005);
    expect(Number(table[1].at(-1))).toBe(0.02);
    const settled = table.slice(1).map((row) => Number(row.at(-3)));
    expect(settled.every((held, i) => i === 0 || held >= settled[i - 1])).toBe(true);
  });

  test('tells both in its text, and nothing of them where there is neither', () => {
    const { out } = tumblebay(['run', '-'], dirty);
    expect(out).toMatch(/^muck +[\d.]+ L settled in coarse mat[\s\S]*mg\/L of waste in the water/m);
    expect(tumblebay(['run', courtyard]).out).not.toMatch(/^muck/m);
  });
});
