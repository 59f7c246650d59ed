/** Media that reach above the filter's lip: no water goes up there, so nothing settles there; by hand and closed form. */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { depositsAt, solidsLedger } from '../../sim/results/deposits.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { run, simulate } from '../../sim/simulate.ts';
import { type File, siteWith, thinLayer } from './sites.ts';

const DAY = 86400;
const off = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

/** Lip 1.00 m, media from 0.45 m: the mat is under it, 0.40 m of the bags' 0.45 m, and nothing of the pad. */
const tall = (change: (file: File) => void = () => {}): Scenario =>
  siteWith((file) => {
    file.filter.media.layers = [
      { name: 'mat', thickness: 0.15, porosity: 0.9, grain: 0.002, capture: 2 },
      { name: 'bags', thickness: 0.45, porosity: 0.8, grain: 0.008, capture: 0.3 },
      { name: 'pad', thickness: 0.03, porosity: 0.9, grain: 0.002, capture: 2 },
    ];
    change(file);
  });

describe('a file', () => {
  const with_ = (layer: number, deposit: string) => () =>
    tall(({ filter }) => (filter.media.layers[layer].deposit = deposit));

  test('holds no more in a layer partly above the lip than what is below it has room for', () => {
    // (0.8 − 0.15) · 0.42 m² · 0.40 m = 109.2 L; over the whole 0.45 m it would be 122.9 L.
    expect(with_(1, '109.1 L')).not.toThrow();
    expect(with_(1, '109.3 L')).toThrow('filter.media.layers[1].deposit');
    expect(with_(1, '109.3 L')).toThrow('at most 109 L, all that its pores take up to the filter’s lip');
    // (0.9 − 0.15) · 0.42 m² · 0.15 m = 47.25 L, all of it below the lip.
    expect(with_(0, '47.2 L')).not.toThrow();
    expect(with_(0, '47.3 L')).toThrow(/at most 47\.\d L, all that its pores take \(/);
  });

  test('holds nothing in a layer that lies above the lip altogether', () => {
    expect(with_(2, '0 L')).not.toThrow();
    expect(with_(2, '0.1 L')).toThrow('filter.media.layers[2].deposit');
  });
});

/** One layer of coarse stones from 0.95 m, half of its 0.1 m below the lip. */
const half = (debris: number, span: string): Scenario =>
  thinLayer(debris, span, ({ filter }) => {
    filter.media.bottom = 0.95;
    filter.media.layers[0].thickness = 0.1;
  });

describe('a layer half above the lip', () => {
  const captured = 1 - Math.exp(-5 * 0.05);

  test('keeps what first-order capture over its wet half does (Iwasaki 1937)', () => {
    const s = half(1e-7, '20 d');
    const q = balance(s).flows.media!;
    const { record } = run(s);
    for (const day of [0.4, 3, 20])
      expect(off(depositsAt(record, day * DAY).thin!, q * 1e-7 * captured * day * DAY)).toBeLessThan(2e-5);
  });

  test('is full when its wet half is, and passes on the rest', () => {
    const s = half(5e-5, '3 d');
    const { area } = s.filter!.media!;
    const room = (0.5 - 0.15) * area * 0.05;
    const full = room / (balance(s).flows.media! * 5e-5 * captured);
    expect(full).toBeLessThan(2.5 * DAY);
    const { record } = run(s);
    expect(depositsAt(record, full * 0.99).thin!).toBeLessThan(room * 0.995);
    expect(off(depositsAt(record, full * 1.01).thin!, room)).toBeLessThan(1e-12);
    const { came, held, passed } = solidsLedger(record);
    expect(off(held, room)).toBeLessThan(1e-12);
    expect(off(passed, came - room)).toBeLessThan(1e-9);
  });
});

describe('media that reach above the lip', () => {
  const dirty = tall((file) => Object.assign(file, { debris: 3e-5, span: '10 d' }));
  const { record, answer } = simulate(dirty);
  const held = depositsAt(record, 10 * DAY);

  test('hold nothing up there after days of debris', () => {
    expect(held.pad).toBe(0);
    expect(held.mat!).toBeGreaterThan(0.005);
    expect(held.bags!).toBeGreaterThan(0.001);
  });

  test('and, started with what has settled, have the balance in which that run ends', () => {
    const started = tall(({ filter }) => {
      for (const layer of filter.media.layers) layer.deposit = held[layer.name];
    });
    const now = balance(started);
    expect(off(now.mediaHead!, answer.media!.head.end)).toBeLessThan(2e-4);
    expect(off(now.channeled!, answer.media!.channeled.end)).toBeLessThan(2e-4);
    expect(now.mediaHead!).toBeGreaterThan(1.02 * balance(tall()).mediaHead!);
  });
});
