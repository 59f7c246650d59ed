/** `tumblebay map` as a shell calls it: what it prints, what it writes, and how it ends. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import { felted } from '../map/sites.ts';
import { changed, courtyard, tumblebay } from './call.ts';

const folder = mkdtempSync(join(tmpdir(), 'map-'));
const FELT = changed(courtyard, felted);
const map = (...options: string[]) => tumblebay(['map', '-', ...options], FELT);

describe('the command map', () => {
  test('prints where the site lies, where all checks hold, a table and the cautions', () => {
    const { code, out } = map();
    expect(code).toBe(0);
    const said = out.replace(/\s+/g, ' ');
    expect(said).toMatch(
      /As it is \(the bottom valve 18° closed, the top valve 40° closed\) the pump lifts 235 L\/min/,
    );
    expect(said).toContain('The check ‘headroom’ fails.');
    expect(said).toMatch(/all checks hold with the bottom valve/);
    expect(said).toMatch(/All checks hold at \d+ of the map’s 441 points/);
    expect(said).toContain('Bottom valve across, top valve down, by the angle that each is closed.');
    expect(out).toMatch(/^ +shut +75° +60° .*open$/m);
    expect(out).toMatch(/^60°( +(holds|falls|channels|headroom)){7}$/m);
    expect(out).toContain('Local codes and licensed practice come first');
    expect(map('--display', 'us').out).toContain('gph');
  });

  test.each(['valves', 'flow'])('fits a terminal of 80 columns, plane of %s', (plane) => {
    const clogged = changed('scenarios/teaching-filter.json', (file) => {
      file.filter.media.layers[0].deposit = '6 L';
      file.pump.speed = 0.95;
    });
    for (const site of [FELT, clogged]) {
      const { out } = tumblebay(['map', '-', '--plane', plane], site);
      expect(out.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
      expect(out).toContain('channels');
    }
  });

  test('answers rows at given openings, each the balance of the file so set', () => {
    const { code, out } = map('--bottom', '0,0.3,1', '--top', '0.25,0.5', '--json');
    expect(code).toBe(0);
    const { rows } = JSON.parse(out);
    expect(rows.map(({ bottom, top }: { bottom: number; top: number }) => [bottom, top])).toEqual([
      [0, 0.25],
      [0.3, 0.25],
      [1, 0.25],
      [0, 0.5],
      [0.3, 0.5],
      [1, 0.5],
    ]);
    expect(rows[0]).toMatchObject({ split: 0, channeled: null, lift: expect.any(Number), ebct: null, pore: null });
    const site = changed(courtyard, (file) => {
      felted(file);
      file.plumbing.bottomFeed.valve = 0.3;
      file.plumbing.topFeed.valve = 0.5;
    });
    const balance: BalanceAnswer = JSON.parse(tumblebay(['balance', '-', '--json'], site).out);
    expect(rows[4].flow).toBeCloseTo(balance.flows['main'], 12);
    expect(rows[4].stone).toBeCloseTo(balance.flows['broad stone'], 12);
    expect(rows[4].pore).toBeCloseTo(balance.contact?.pore ?? 0, 5);
    expect(rows[4].channeled).toBeCloseTo(balance.channeled ?? 0, 9);
  });

  test('maps pump speed and share, and writes a row for each point', () => {
    const csv = join(folder, 'map.csv');
    const { code, out } = map('--plane', 'flow', '--csv', csv);
    expect(code).toBe(0);
    expect(out).toContain('Pump’s speed across');
    expect(out.replace(/\s+/g, ' ')).toMatch(/points are left blank: no setting of the valves splits the water so/);
    const rows = readFileSync(csv, 'utf8').trimEnd().split('\r\n');
    expect(rows[0]).toMatch(/^share asked,bottom valve,top valve,speed,main\[m3\/s\],/);
    expect(rows).toHaveLength(442);
    for (const row of rows.slice(1)) expect(row.split(',')).toHaveLength(13);
  });

  test('tells a site without two valves in a sentence, and a call that makes no sense', () => {
    const one = tumblebay(['map', 'scenarios/low-edge.json']);
    expect([one.code, one.out]).toEqual([0, expect.stringMatching(/^There is no bottom feed: /)]);
    const none = JSON.parse(tumblebay(['map', 'scenarios/gravel-basin.json', '--json']).out);
    expect(none).toMatchObject({ ok: false, says: expect.stringMatching(/^There is no top feed: /) });
    const { code, err } = map('--plane', 'sideways', '--bottom', '0,2', '--top', '0.5');
    expect(code).toBe(2);
    expect(err).toContain('--plane: found "sideways", wanted valves or flow');
    expect(err).toContain('--bottom: found "0,2", wanted openings from 0 to 1');
    expect(err).toContain('--top: found "0.5"');
    expect(tumblebay(['run', courtyard, '--plane', 'flow']).err).toContain('it with run');
  });
});
