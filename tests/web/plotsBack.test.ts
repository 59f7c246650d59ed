import { describe, expect, test } from 'vitest';
import { makeStorage, volumeAt } from '../../sim/laws/storage.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { answerTo } from '../../web/engine/answers.ts';
import { intoPond, runsBack, volumeUnder } from '../../web/plots/back.ts';
import { valueAt } from '../../web/plots/thin.ts';
import { siteNames, siteText } from './sites.ts';

const column = (...values: number[]): Float64Array => Float64Array.from(values);

describe('the volume under a flow', () => {
  test('of a triangle is half its base by its height', () => {
    expect(volumeUnder(column(0, 10), column(0.004, 0), 0, 10)).toBeCloseTo(0.02, 15);
    expect(volumeUnder(column(0, 10), column(0.004, 0), 0, 5)).toBeCloseTo(0.015, 15);
  });

  test('of a flow that dies away by e^(−t/τ) is the flow by τ', () => {
    const t = Float64Array.from({ length: 20_001 }, (_, i) => i * 0.1);
    const q = t.map((each) => 0.004 * Math.exp(-each / 60));
    expect(volumeUnder(t, q, 0, 2000)).toBeCloseTo(0.004 * 60, 6);
  });

  test('begins after a jump at its first moment and ends before one at its last', () => {
    expect(volumeUnder(column(0, 10, 10, 20, 20, 30), column(9, 9, 1, 1, 9, 9), 10, 20)).toBeCloseTo(10, 12);
  });
});

describe('what runs back', () => {
  const t = column(0, 100, 100, 101, 160, 220, 300, 300, 400);
  const main = column(0.004, 0.004, 0.004, 0, 0, 0, 0, 0.004, 0.004);
  const into = column(0.004, 0.004, 0.004, 0.004, 0.001, 0, 0, 0, 0.004);

  test('is counted from the stop until the pump lifts again', () => {
    const back = runsBack({ t, levels: {}, flows: { main } }, into, 100);
    expect(back.end).toBe(300);
    expect(back.volume).toBeCloseTo(0.004 + 59 * 0.0025 + 60 * 0.0005, 12);
  });

  test('had nine tenths of it come at a moment after which a tenth is left', () => {
    const { most, third, volume } = runsBack({ t, levels: {}, flows: { main } }, into, 100);
    expect(third).toBeLessThan(most);
    expect(volumeUnder(t, into, 100, third) / volume).toBeCloseTo(1 / 3, 9);
    expect(volumeUnder(t, into, 100, most) / volume).toBeCloseTo(0.9, 9);
  });

  test('is nothing where the pump goes on', () => {
    const on = { t: column(0, 1000), levels: {}, flows: { main: column(0.004, 0.004) } };
    expect(runsBack(on, column(0.004, 0.004), 100).volume).toBe(0);
  });

  test('comes over the last stones, by a top feed to the pond, and back down the main line', () => {
    const site = (parts: object): Scenario =>
      ({ filter: {}, watercourse: [], plumbing: { topFeed: { to: 'pond' } }, ...parts }) as unknown as Scenario;
    const flows = { lip: column(1, 1), 'top feed': column(2, 0), main: column(3, -4), brook: column(8, 8) };
    const series = { t: column(0, 1), levels: {}, flows };
    expect([...intoPond(series, site({}))]).toEqual([3, 5]);
    expect([...intoPond(series, site({ watercourse: [{ kind: 'stream', name: 'brook' }], plumbing: {} }))]).toEqual([
      8, 12,
    ]);
  });

  test('is what pond and vault gain by their own areas, on every demo site with a stop that no rain, hose or spill meets', () => {
    const tried = siteNames.filter((name) => {
      const text = siteText(name);
      const outcome = answerTo({ text, display: undefined, depth: 'quick', about: 'stop' });
      const reading = readScenario(text);
      if (outcome.kind !== 'answered' || !reading.ok) throw new Error(name);
      const { scenario, answer, series } = outcome;
      const stop = answer.events.find(({ what }) => what === 'pump off')?.t;
      const { in: gained, out } = answer.ledger;
      const beside = [gained.hose, gained.rain, gained.runoff, out.rim, out.overflow, out.leak, out.pumpedOut];
      if (stop === undefined || beside.some((volume) => volume > 1e-6)) return false;
      const back = runsBack(series, intoPond(series, scenario), stop);
      const stored = (key: 'pond' | 'vault', at: number): number => {
        const { profile, displaced } = scenario[key];
        return volumeAt(makeStorage(profile, displaced), valueAt(series.t, series.levels[key]!, at));
      };
      const gain = (key: 'pond' | 'vault'): number => stored(key, back.end) - stored(key, back.stop);
      const up = volumeUnder(
        series.t,
        series.flows['main']!.map((flow) => Math.max(0, flow)),
        stop,
        back.end,
      );
      const evaporated = (out.evaporation * (back.end - stop)) / answer.span;
      const expected = gain('pond') + gain('vault') + up + evaporated;
      // Evaporation of all basins by the run's mean rate; a liter is a drop in a pond of cubic meters.
      expect(Math.abs(back.volume - expected), name).toBeLessThan(0.003 + 0.005 * back.volume);
      return true;
    });
    expect(tried).toEqual(expect.arrayContaining(['courtyard', 'gravel-basin', 'low-edge']));
  });
});
