/** Hoses that are opened and shut: each clock time is a sum by hand. */
import { describe, expect, test } from 'vitest';
import { openingFor } from '../../sim/fill/opening.ts';
import { simulate } from '../../sim/simulate.ts';
import { FLOW, fullAt, planOf, siteOf } from './sites.ts';

/** What the site takes: 12.5 m² × 0.7 m and 6.1 L of pipe. */
const WHOLE = 12.5 * 0.7 + (((Math.PI / 4) * 0.05 ** 2 * 5) / 1.05) * 0.65;
const HOUR = 3600;
const NIGHT = [22 * HOUR, 7 * HOUR] as const;

describe('hoses by the clock', () => {
  test('several give together', () => {
    const plan = planOf((file) => {
      file.supply.hose = [
        { name: 'north', flow: '20 L/min', on: true, meter: 1 },
        { name: 'south', flow: '30 L/min', on: true },
        { name: 'shut', flow: '90 L/min', meter: 7 },
      ];
    });
    expect(fullAt(plan)).toBeCloseTo(WHOLE / (50e-3 / 60), 0);
    expect(plan.hoses[0].meter).toBeCloseTo(1 + 0.4 * WHOLE, 4);
    expect(plan.hoses[2]).toMatchObject({ volume: 0, meter: 7, stretches: [] });
  });

  test('a second one that joins at 20:00', () => {
    const plan = planOf((file) => {
      file.supply.hose = [
        { name: 'north', flow: '20 L/min', on: true },
        { name: 'south', flow: '30 L/min' },
      ];
      file.actions = [{ at: '2 h', do: 'hose', name: 'south', to: 'on' }];
    });
    expect(fullAt(plan)).toBeCloseTo(2 * HOUR + (WHOLE - FLOW * 2 * HOUR) / (50e-3 / 60), 0);
  });

  test('shut overnight by the file: 4 h in the evening, the rest from 07:00', () => {
    const plan = planOf((file) => {
      file.actions = [
        { at: 0, do: 'hose', to: 'on' },
        { at: '4 h', do: 'hose', to: 'off' },
        { at: '13 h', do: 'hose', to: 'on' },
      ];
    });
    expect(fullAt(plan)).toBeCloseTo(9 * HOUR + WHOLE / FLOW, 0);
    expect(plan.full?.clock).toBe('Mon 2 Jun 10:17');
    expect(plan.volume).toBeCloseTo(WHOLE, 4);
    expect(plan.hoses[0].stretches.map(({ from, to }) => [from.clock, to?.clock])).toEqual([
      ['18:00', '22:00'],
      ['Mon 2 Jun 07:00', undefined],
    ]);
  });

  test('shut every night from 22:00 to 07:00, as asked', () => {
    // 10 L/min gives 2.4 m³ in the evening and 6.356 m³ in 10 h 35.6 min from 07:00.
    const plan = planOf((file) => (file.supply.hose.flow = '10 L/min'), { nights: NIGHT });
    expect(plan.full?.clock).toBe('Mon 2 Jun 17:35');
    // 5 L/min: 1.2, then 4.5 a day, then 3.056 m³ in 10 h 11 min.
    const slow = planOf((file) => (file.supply.hose.flow = '5 L/min'), { nights: NIGHT });
    expect(slow.full?.clock).toBe('Tue 3 Jun 17:11');
  });

  test('shut by the file for good before it is full', () => {
    const plan = planOf((file) => {
      file.actions = [
        { at: 0, do: 'hose', to: 'on' },
        { at: '4 h', do: 'hose', to: 'off' },
      ];
    });
    expect(plan).toMatchObject({ full: null, never: 'shut' });
    // 4.8 m³ stand 0.384 m deep.
    expect(plan.series.pond.at(-1)).toBeCloseTo(-0.8 + 4.8 / 12.5, 3);
  });
});

describe('a tank truck', () => {
  const truck = { name: 'truck', flow: '500 L/min' };

  test('that brings enough', () => {
    const plan = planOf((file) => {
      file.supply.hose = { ...truck, volume: '10 m3' };
      file.actions = [{ at: '14 h', do: 'hose', to: 'on' }];
    });
    expect(plan.open?.clock).toBe('Mon 2 Jun 08:00');
    expect(plan.lasts).toBeCloseTo(WHOLE / (0.5 / 60), 0);
  });

  test('of 6 m³ is empty after 12 min', () => {
    const plan = planOf((file) => (file.supply.hose = { ...truck, volume: '6 m3' }));
    expect(plan).toMatchObject({ full: null, never: 'shut' });
    expect(plan.hoses[0].stretches[0].to?.t).toBeCloseTo(720, 9);
  });

  test('beside the hose saves the hose its 3 m³', () => {
    const plan = planOf((file) => {
      file.supply.hose = [
        { name: 'hose', flow: '20 L/min', on: true },
        { ...truck, volume: '3 m3' },
      ];
      file.actions = [{ at: '1 h', do: 'hose', name: 'truck', to: 'on' }];
    });
    expect(fullAt(plan)).toBeCloseTo((WHOLE - 3) / FLOW, 0);
    expect(plan.hoses[1].volume).toBeCloseTo(3, 9);
  });

  const run = (actions: object[]) =>
    simulate(
      siteOf((file) => {
        file.pond.level = -0.5;
        file.span = '3 h';
        file.supply.hose = { flow: '20 L/min', volume: '1 m3', on: true };
        file.actions = actions;
      }),
    ).answer;

  test('in a run too gives what it has, and shuts', () => {
    const { ledger, events } = run([]);
    expect(ledger.in.hose).toBeCloseTo(1, 9);
    expect(events).toContainEqual({ t: expect.closeTo(3000, 6), what: 'hose hose off' });
  });

  test('in a run, shut for half an hour, gives the rest after; opened when empty, nothing', () => {
    const answer = run([
      { at: '30 min', do: 'hose', to: 'off' },
      { at: '60 min', do: 'hose', to: 'on' },
      { at: '2 h', do: 'hose', to: 'on' },
    ]);
    expect(answer.ledger.in.hose).toBeCloseTo(1, 9);
    expect(answer.events).toContainEqual({ t: expect.closeTo(4800, 6), what: 'hose hose off' });
  });
});

describe('to be full by a moment', () => {
  test('at 07:30: open 7 h 17 min 48 s before', () => {
    const opening = openingFor(siteOf(), 13.5 * HOUR);
    expect(Math.abs((opening?.open ?? 0) - (13.5 * HOUR - WHOLE / FLOW))).toBeLessThan(1.5);
    expect(opening?.full).toBeLessThanOrEqual(13.5 * HOUR);
  });

  test('over a night with the hoses shut: what is not run in by 22:00 waits for 07:00', () => {
    // By noon, 5 h from 07:00 give 6 m³; the other 2.756 m³ take 2 h 17 min 48 s before 22:00.
    const opening = openingFor(siteOf(), 18 * HOUR, { nights: NIGHT });
    expect(Math.abs((opening?.open ?? 0) - (9 * HOUR - WHOLE / FLOW))).toBeLessThan(1.5);
  });

  test('told too late: when it will be full instead', () => {
    const opening = openingFor(siteOf(), 6 * HOUR);
    expect(opening?.open).toBeNull();
    expect(opening?.full).toBeCloseTo(WHOLE / FLOW, 0);
  });

  test('with evaporation it is full to the second with that opening', () => {
    const s = siteOf((file) => (file.weather = { evaporation: '10 mm/d' }));
    const opening = openingFor(s, 20 * HOUR);
    expect(20 * HOUR - (opening?.full ?? 0)).toBeLessThan(1.5);
    expect(20 * HOUR - (opening?.full ?? 0)).toBeGreaterThanOrEqual(0);
  });

  test('never, where it never is full', () => {
    const s = siteOf((file) => (file.pond.leak = { elevation: -0.8, area: 2e-4 }));
    expect(openingFor(s, 20 * HOUR)).toEqual({ open: null, full: null });
  });
});
