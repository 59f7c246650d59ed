/**
 * What settles in the media of a running site, against the closed form of first-order capture at constant flow
 * (Iwasaki 1937): σ = u c (1 − e^(−λL)) t/L, and Ergun's loss at ε₀ − β σ.
 */
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { kinematicViscosity } from '../../sim/laws/water.ts';
import { depositsAt, solidsLedger } from '../../sim/results/deposits.ts';
import { restoreNetwork } from '../../sim/results/inside.ts';
import { run, simulate } from '../../sim/simulate.ts';
import { marchOf, siteWith, thinLayer } from './sites.ts';

const DAY = 86400;
const off = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

/** Ergun (1952), head per length, with water's viscosity of the site. */
function ergun(porosity: number, grain: number, nu: number, u: number): number {
  const solid = 1 - porosity;
  const viscous = (150 * nu * solid ** 2) / (9.80665 * porosity ** 3 * grain ** 2);
  return viscous * u + ((1.75 * solid) / (9.80665 * porosity ** 3 * grain)) * u * u;
}

describe('one thin layer at constant flow', () => {
  const s = thinLayer(1e-7, '20 d');
  const media = s.filter!.media!;
  const q = balance(s).flows.media!;
  const captured = 1 - Math.exp(-5 * 0.02);
  const march = run(s);
  const { record } = march;

  test('fills as the closed form says, at every moment', () => {
    for (const day of [0.37, 3, 11.2, 20])
      expect(off(depositsAt(record, day * DAY).thin!, q * 1e-7 * captured * day * DAY)).toBeLessThan(2e-5);
  });

  test('loses Ergun’s head at the porosity that is left', () => {
    const volumes = new Float64Array(record.network.size);
    for (const day of [0, 10, 19.9]) {
      restoreNetwork(record, day * DAY, volumes);
      const porosity = 0.5 - (q * 1e-7 * captured * day * DAY) / (media.area * 0.02);
      const through = record.network.parts.circuit.feeds.bottom.media;
      const expected = 0.02 * ergun(porosity, 0.05, kinematicViscosity(s.water.temperature), through / media.area);
      expect(off(record.network.mediaHead, expected)).toBeLessThan(1e-4);
    }
  });

  test('takes no more at a porosity of 0.15, at the moment of the closed form', () => {
    const soon = thinLayer(5e-5, '3 d');
    const flow = balance(soon).flows.media!;
    const room = (0.5 - 0.15) * media.area * 0.02;
    const full = room / (flow * 5e-5 * captured);
    expect(full).toBeLessThan(2 * DAY);
    const to = run(soon).record;
    expect(depositsAt(to, full * 0.999).thin!).toBeLessThan(room * 0.9995);
    expect(off(depositsAt(to, full * 1.001).thin!, room)).toBeLessThan(1e-12);
    expect(off(depositsAt(to, 3 * DAY).thin!, room)).toBeLessThan(1e-12);
  });

  test('gives way by β: seven times the pores go for the same deposit', () => {
    const bulky = thinLayer(5e-5, '1 d', (file) => (file.filter.media.layers[0].beta = 7));
    expect(off(depositsAt(run(bulky).record, DAY).thin!, (0.35 * media.area * 0.02) / 7)).toBeLessThan(1e-12);
  });
});

describe('two layers', () => {
  const two = siteWith((file) => {
    file.debris = 1e-5;
    file.span = '10 d';
    file.filter.media.gap = 0;
    const layer = { thickness: 0.02, porosity: 0.5, grain: 0.5, capture: 20 };
    file.filter.media.layers = [
      { ...layer, name: 'lower' },
      { ...layer, name: 'upper', thickness: 0.04 },
    ];
  });
  const { record } = run(two);

  test('the upper gets what the lower leaves, and all of it once the lower is full', () => {
    const q = balance(two).flows.media!;
    const [lower, upper] = [1 - Math.exp(-0.4), 1 - Math.exp(-0.8)];
    const room = 0.35 * two.filter!.media!.area * 0.02;
    const full = room / (q * 1e-5 * lower);
    const before = depositsAt(record, full / 2);
    expect(off(before.upper! / before.lower!, ((1 - lower) * upper) / lower)).toBeLessThan(1e-9);
    const after = depositsAt(record, 1.5 * full);
    const expected = q * 1e-5 * full * ((1 - lower) * upper + 0.5 * upper);
    expect(after.lower! / room).toBeCloseTo(1, 10);
    expect(off(after.upper!, expected)).toBeLessThan(5e-4);
  });

  test('hold, pass on and lose by cleaning all that came', () => {
    const cleaned = siteWith((file) => {
      file.debris = 1e-5;
      file.span = '12 d';
      file.actions = [
        { at: '3 d', do: 'clean filter' },
        { daily: ['08:00', '22:00'], do: 'pump' },
        { at: '5 d', do: 'bottom valve', to: 0.4 },
        { at: '9 d', do: 'clean filter' },
      ];
    });
    const { came, held, cleaned: out, passed } = solidsLedger(run(cleaned).record);
    expect(held).toBeGreaterThan(0);
    expect(out).toBeGreaterThan(0);
    expect(off(held + out + passed, came)).toBeLessThan(1e-9);
  });
});

describe('a cleaning', () => {
  const twice = siteWith((file) => {
    file.debris = 1e-5;
    file.span = '8 d';
    file.actions = [{ at: '5 d', do: 'clean filter' }];
  });
  const { answer, record } = simulate(twice);

  test('takes all out, and the log says so', () => {
    expect(answer.events).toContainEqual({ t: 5 * DAY, what: 'filter cleaned' });
    expect(Object.values(depositsAt(record, 5 * DAY))).toEqual([0, 0]);
    expect(depositsAt(record, 5 * DAY - 1)['coarse mat']).toBeGreaterThan(0.003);
  });

  test('gives the clean site back, whose deposits then grow as from the start', () => {
    for (const [name, held] of Object.entries(answer.deposits))
      expect(off(held, depositsAt(record, 3 * DAY)[name]!)).toBeLessThan(1e-6);
    expect(answer.media!.channeled.max.t).toBe(5 * DAY);
  });
});

describe('media that clog until they lift', () => {
  const fine = siteWith((file) => {
    file.debris = 1e-5;
    file.span = '20 d';
    Object.assign(file.filter.media.layers[0], { grain: 0.0005, porosity: 0.9 });
  });
  const end = (fineness: number): number => depositsAt(marchOf(fine, fineness).record, 20 * DAY)['coarse mat']!;

  test('are counted so finely that half the distance changes nothing, to second order', () => {
    const [whole, half, quarter] = [end(1), end(2), end(4)];
    expect(off(whole, half)).toBeLessThan(3e-5);
    expect(Math.abs(whole - half) / Math.abs(half - quarter)).toBeGreaterThan(3);
  });

  test('lift at the moment when the head across them is the lift head', () => {
    const { answer, record } = simulate(fine);
    const lifts = answer.events.filter(({ what }) => what === 'media lifts');
    expect(lifts).toHaveLength(1);
    const volumes = new Float64Array(record.network.size);
    restoreNetwork(record, lifts[0]!.t, volumes);
    expect(off(record.network.mediaHead, record.network.parts.circuit.feeds.liftHead)).toBeLessThan(1e-5);
  });

  test('split, channel and load the pump otherwise than clean ones', () => {
    const { flows, media } = simulate(fine).answer;
    expect(media!.channeled.end).toBeGreaterThan(0.5);
    expect(flows['bottom feed']!.end).toBeLessThan(flows['bottom feed']!.start);
    expect(flows['top feed']!.end).toBeGreaterThan(flows['top feed']!.start);
    expect(flows.main!.end).toBeLessThan(flows.main!.start);
  });
});
