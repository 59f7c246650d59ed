/** What a deposit takes of the pores is assumed, 1 to 7 times its volume: at the far end a layer may hold less than it does. */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { channelingCheck } from '../../sim/results/checks/channeling.ts';
import { balanceOf } from '../../sim/results/checks/variants.ts';
import { withValue } from '../../sim/results/checks/withValue.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { type File, siteWith } from './sites.ts';

const BETA = 'filter.media.layers[0].beta';
const off = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

const holding = (liters: number, more: (file: File) => void = () => {}): Scenario =>
  siteWith((file) => {
    Object.assign(file.filter.media.layers[0], { grain: 0.0008, deposit: `${liters} L` });
    more(file);
  });

const shareAt = (s: Scenario, beta: number): number => balance(withValue(s, BETA, beta)!).channeled!;
const channeling = (s: Scenario) => channelingCheck({ scenario: s, balance: balanceOf(s) })!;

/** At seven times its volume the mat has room for (0.9 − 0.15) · 0.42 m² · 0.1 m / 7 = 4.5 L. */
describe.each([5, 10, 20, 31])('%d L in a mat that would be full of less', (liters) => {
  const s = holding(liters);

  test('are read, and stand in the run whole', () => {
    expect(s.assumed).toContainEqual({ place: BETA, value: 1, band: [1, 7], from: 'default' });
    expect(simulate(s).answer.deposits['coarse mat']).toBeCloseTo(liters / 1000, 12);
  });

  test('count at the far end as a mat that is full: that of a clean one with pores of 15 %', () => {
    const full = holding(0, ({ filter }) => (filter.media.layers[0].porosity = 0.15));
    expect(off(shareAt(s, 7), balance(full).channeled!)).toBeLessThan(1e-7);
  });

  test('have a band of half the way to there, with what it rests on', () => {
    const { value, band, rests } = channeling(s);
    const model = 0.3 * value! * (1 - value!);
    const moves = (shareAt(s, 7) - shareAt(s, 1)) / 2;
    expect(rests).toEqual({ place: BETA, moves: expect.closeTo(moves, 9) });
    expect(band).toBeCloseTo(moves + model, 9);
  });
});

test('what the band’s end tells goes over into the full mat without a jump', () => {
  const [under, at, over] = [4.499, 4.5, 4.501].map((liters) => shareAt(holding(liters), 7));
  expect(under!).toBeLessThan(at!);
  expect(off(under!, at!)).toBeLessThan(1e-4);
  expect(off(over!, at!)).toBeLessThan(1e-9);
});

test('whether the media float is unsure where they would at the far end', () => {
  const lift = (s: Scenario, beta: number): number => balance(withValue(s, BETA, beta)!).lift!;
  const [little, more] = [holding(0.5), holding(4)];
  for (const s of [little, more]) expect(1.3 * lift(s, 1)).toBeLessThan(1);
  expect(lift(little, 7)).toBeLessThan(1);
  expect(lift(more, 7)).toBeGreaterThan(1);
  expect(channeling(little).places[0]).toMatchObject({ name: 'lift', verdict: 'pass' });
  expect(channeling(more).places[0]).toMatchObject({ name: 'lift', verdict: 'tight' });
  expect(channeling(more).says).toContain('too near to be sure');
});
