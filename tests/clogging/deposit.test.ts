/** Media that hold something at the start: against the long run that brought them there, and against what was lost. */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { care } from '../../sim/clogging/care.ts';
import { operatingMap } from '../../sim/map/map.ts';
import { depositsAt, solidsLedger } from '../../sim/results/deposits.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run, simulate } from '../../sim/simulate.ts';
import { type File, siteWith } from './sites.ts';

const DAY = 86400;
const off = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

const clogging = (change: (file: File) => void = () => {}): Scenario =>
  siteWith((file) => {
    file.debris = 1e-5;
    file.span = '20 d';
    change(file);
  });

/** The site as its own run leaves it: what has settled is written in the file. */
const later = (held: Record<string, number>): Scenario =>
  clogging((file) => {
    for (const layer of file.filter.media.layers) layer.deposit = held[layer.name];
  });

describe('what has settled at the start', () => {
  const clean = clogging();
  const { record, answer } = simulate(clean);
  const after = later(depositsAt(record, 20 * DAY));

  test('gives the balance that a run of that time ends in', () => {
    const now = balance(after);
    expect(off(now.channeled!, answer.media!.channeled.end)).toBeLessThan(2e-4);
    expect(off(now.mediaHead!, answer.media!.head.end)).toBeLessThan(2e-4);
    expect(now.channeled!).toBeGreaterThan(1.05 * balance(clean).channeled!);
  });

  test('shortens the time in the pores by what it takes of them', () => {
    const media = after.filter!.media!;
    const taken = media.layers.reduce((sum, { deposit, beta }) => sum + beta * deposit, 0);
    const pores = media.area * media.layers.reduce((sum, l) => sum + l.porosity * l.thickness, 0);
    const { contact, flows } = balance(after);
    expect(off(contact!.pore, (pores - taken) / flows.media!)).toBeLessThan(1e-12);
  });

  test('is told as the time that it took to settle', () => {
    const answered = care(after);
    if (!answered.care) throw new Error(answered.says);
    expect(off(answered.since!, 20 * DAY)).toBeLessThan(0.01);
    expect(answered.says).toContain('By now they hold what settles in 2.9 weeks.');
    const fresh = care(clean);
    expect(fresh.care && fresh.since).toBe(0);
  });

  test('does not change how long a cleaning lasts', () => {
    const [a, b] = [care(clean), care(after)];
    if (!a.care || !b.care) throw new Error('nothing to clean');
    expect(b.passing).toEqual(a.passing);
  });

  test('is in the map of the site', () => {
    const map = operatingMap(after, { n: 3 });
    if (!map.ok) throw new Error(map.says);
    expect(off(map.now.channeled!, balance(after).channeled!)).toBeLessThan(1e-6);
  });

  test('holds its mass, with what comes and what a cleaning takes out', () => {
    const cleaned = clogging((file) => {
      file.span = '6 d';
      file.actions = [{ at: '3 d', do: 'clean filter' }];
      file.filter.media.layers[0].deposit = '1.5 L';
    });
    const { before, came, held, cleaned: out, passed } = solidsLedger(run(cleaned).record);
    expect(before).toBeCloseTo(0.0015, 12);
    expect(out).toBeGreaterThan(before);
    expect(off(held + out + passed, before + came)).toBeLessThan(1e-9);
  });

  test('stands there without any debris in the water, and a cleaning takes it out', () => {
    const still = siteWith((file) => {
      file.span = '2 h';
      file.actions = [{ at: '1 h', do: 'clean filter' }];
      file.filter.media.layers[0].deposit = '10 L';
    });
    const { answer: told } = simulate(still);
    const fresh = balance(siteWith());
    expect(told.media!.channeled.max.value).toBeGreaterThan(1.05 * fresh.channeled!);
    expect(off(told.media!.channeled.end, fresh.channeled!)).toBeLessThan(1e-4);
    expect(told.deposits).toEqual({ 'coarse mat': 0, 'bagged media': 0 });
  });

  test('settles no further from water without debris, which is said in place of weeks', () => {
    const still = siteWith((file) => (file.filter.media.layers[0].deposit = '10 L'));
    expect(care(still)).toEqual({ care: false, says: expect.stringContaining('stays until it is rinsed out') });
    expect(care(siteWith())).toEqual({ care: false, says: expect.stringContaining('stay as clean as they are') });
  });

  test('is refused where the layer has no room for it, with the most it takes', () => {
    // (0.9 − 0.15) · 0.42 m² · 0.1 m = 31.5 L
    const full = (deposit: string) => () => clogging((file) => (file.filter.media.layers[0].deposit = deposit));
    expect(full('31.6 L')).toThrow('at most 31.5 L, all that its pores take (15 % stay open)');
    expect(full('31.5 L')).not.toThrow();
  });
});
