import { describe, expect, test } from 'vitest';
import { closureAt, ledgerOf, storedAt } from '../../sim/results/ledger.ts';
import { flowRanges, levelRanges } from '../../sim/results/ranges.ts';
import { seriesOf } from '../../sim/results/series.ts';
import { APART, marched, runningSite, smallSite, upright } from '../network/smallSite.ts';

describe('the range of a level', () => {
  const { record } = marched(
    runningSite({
      start: 'standing',
      span: '20 min',
      actions: [
        { at: 300, do: 'pump', to: 'off' },
        { at: 305, do: 'pump', to: 'on' },
        { at: 600, do: 'power', to: 'off', for: '1 min' },
      ],
    }),
  ).march;
  const ranges = levelRanges(record);
  const fine = seriesOf(record, 0.05);

  test.each(['pond', 'vault', 'riser', 'spring'])('of the %s takes in every moment inside the steps', (name) => {
    const levels = fine.levels[name];
    const { min, max, start, end } = ranges[name];
    for (const z of levels) {
      expect(z).toBeLessThanOrEqual(max.value + 1e-12);
      expect(z).toBeGreaterThanOrEqual(min.value - 1e-12);
    }
    expect([start, end]).toEqual([levels[0], levels[levels.length - 1]]);
    // Nothing beyond what is reached: a twentieth of a second before the extreme the level stands within 20 mm of it.
    expect(max.value - Math.max(...levels)).toBeLessThan(0.02);
    expect(Math.min(...levels) - min.value).toBeLessThan(0.02);
  });

  test.each(['pond', 'riser', 'spring'])(
    'of the %s is timed when the level first comes within a micrometer of it',
    (name) => {
      const { max, min } = ranges[name];
      for (const [extreme, sign] of [
        [max, 1],
        [min, -1],
      ] as const) {
        const before = fine.t.findIndex((t) => t >= extreme.t);
        for (let k = 0; k < before; k++)
          expect(sign * (extreme.value - fine.levels[name][k])).toBeGreaterThan(1e-6 - 1e-11);
      }
    },
  );

  test('of a pond under the sun is timed at its end, that of one at rest at its start', () => {
    const sunny = levelRanges(marched(smallSite({ ...APART, weather: { evaporation: '10 mm/d' } })).march.record).pond;
    expect([sunny.max.t, sunny.min.t]).toEqual([0, expect.closeTo(3600 - 1e-6 / (0.01 / 86400), 1)]);
    const still = levelRanges(marched(smallSite(APART)).march.record).pond;
    expect([still.max.t, still.min.t]).toEqual([0, 0]);
  });
});

describe('the range of a flow', () => {
  test('takes in both sides of a step, and the moment of it', () => {
    const { record } = marched(
      runningSite({
        span: '20 min',
        actions: [
          { at: 300, do: 'hose', to: 'on' },
          { at: 600, do: 'leak', in: 'pond', elevation: -0.4, area: 1e-5 },
          { at: 600, do: 'blockage', of: 'weir', to: 1 },
          { at: 600.5, do: 'blockage', of: 'weir', to: 0 },
        ],
        supply: { hose: { flow: '1 L/min' } },
      }),
    ).march;
    const { weir, leak } = flowRanges(record);
    expect(weir.min).toEqual({ t: 600, value: 0 });
    expect(weir.max.t).toBe(600.5);
    expect(weir.max.value).toBeGreaterThan(weir.start);
    expect(leak.min).toEqual({ t: 0, value: 0 });
    expect(leak.max.t).toBe(600);
    expect(leak.max.value).toBeGreaterThan(leak.end);
  });
});

describe('the ledger', () => {
  const run = marched(
    runningSite({
      starts: '2031-01-31T20:00',
      span: '1 d',
      pond: {
        ...upright(10, -1, -0.2),
        rim: {
          crest: [
            [0, -0.04],
            [1, -0.04],
          ],
        },
        runoff: { area: 20, coefficient: 0.5 },
        leak: { elevation: -0.9, area: 1e-6 },
        overflow: { elevation: -0.05, diameter: 0.05 },
      },
      supply: { hose: { flow: '10 L/min' }, autofill: { flow: '5 L/min', low: -0.22, set: -0.2 } },
      weather: {
        evaporation: Array.from({ length: 12 }, (_, m) => `${m + 2} mm/d`),
        rain: Array.from({ length: 12 }, (_, m) => `${20 * m + 10} mm`),
      },
      actions: [
        { at: '1 h', do: 'pump', to: 'off' },
        { at: '2 h', do: 'pump', to: 1.1 },
        { at: '3 h', do: 'storm', depth: '80 mm', lasting: '1 h', shape: 'scs2' },
        { at: '5 h', do: 'hose', to: 'on' },
        { at: '7 h', do: 'hose', to: 'off' },
        { at: '8 h', do: 'check valve', to: 'failed' },
        { at: '9 h', do: 'power', to: 'off', for: '30 min' },
        { at: '11 h', do: 'leak', in: 'riser', elevation: 0.2, area: 1e-5 },
        { at: '12 h', do: 'pump out', flow: '1 L/s', until: -0.3 },
        { at: '15 h', do: 'blockage', of: 'intake', to: 0.9 },
      ],
    }),
  );
  const { record } = run.march;

  test('of a busy day closes to 1e-9 at every row, and to rounding at its end', () => {
    for (let row = 0; row < record.length; row++) expect(closureAt(record, row)).toBeLessThan(1e-9);
    expect(ledgerOf(record).closure).toBeLessThan(1e-11);
    const { in: inward, out } = ledgerOf(record);
    for (const row of ['hose', 'rain', 'runoff', 'autofill'] as const) expect(inward[row]).toBeGreaterThan(1e-3);
    for (const row of ['evaporation', 'rim', 'overflow', 'leak', 'pumpedOut'] as const)
      expect(out[row]).toBeGreaterThan(1e-3);
  });

  test('says what an independent sum over its rows and volumes says', () => {
    const { in: inward, out, stored, closure, pumped } = ledgerOf(record);
    const sum = (rows: object): number => Object.values(rows).reduce((a: number, b: number) => a + b, 0);
    const rest = stored.end - stored.start + sum(out) - sum(inward);
    expect(closure).toBeCloseTo(Math.abs(rest) / Math.max(sum(inward), sum(out), pumped, stored.start), 15);
    expect([stored.start, stored.end]).toEqual([storedAt(record, 0), storedAt(record, record.length - 1)]);
  });
});
