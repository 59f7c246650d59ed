import { describe, expect, test } from 'vitest';
import { seriesOf } from '../../sim/results/series.ts';
import { FEED, MAIN, marched, runningSite } from '../network/smallSite.ts';

/** A busy hour: stops and starts, a cut, a valve turned, leaves, a hose, a storm, all on whole minutes. */
const ACTIONS = [
  { at: 300, do: 'pump', to: 'off' },
  { at: 600, do: 'pump', to: 'on' },
  { at: 900, do: 'bottom valve', to: 0.6 },
  { at: 1200, do: 'blockage', of: 'weir', to: 0.5 },
  { at: 1500, do: 'hose', to: 'on' },
  { at: 1800, do: 'power', to: 'off', for: '3 min' },
  { at: 2400, do: 'storm', depth: '10 mm', lasting: '10 min' },
];
const { record } = marched(
  runningSite({
    span: '1 h',
    supply: { hose: { flow: '10 L/min' } },
    plumbing: { main: MAIN, tee: 0.8, bottomFeed: { ...FEED, inlet: 0.75 } },
    actions: ACTIONS,
  }),
).march;

describe('the series of a run', () => {
  const own = seriesOf(record);

  test('has a row at each step’s end, and two at an action: levels alike, the flow it changes on both its sides', () => {
    expect(own.t.length).toBe(record.length);
    const rows = (t: number): number[] => [...own.t.keys()].filter((row) => own.t[row] === t);
    for (const { at } of ACTIONS) expect(rows(at).length).toBe(2);
    const [before, after] = rows(1200);
    for (const level of Object.values(own.levels)) expect(level[after]).toBe(level[before]);
    expect(own.flows.weir[after] / own.flows.weir[before]).toBeCloseTo(0.5, 12);
    const [sure] = rows(300);
    expect(own.flows.main[sure]).toBeGreaterThan(3e-3);
    expect([own.t[0], own.t[own.t.length - 1]]).toEqual([0, 3600]);
  });

  test('in even rows says the same at the same moments: after an action that falls on one', () => {
    const even = seriesOf(record, 60);
    expect([...even.t]).toEqual(Array.from({ length: 61 }, (_, k) => 60 * k));
    let shared = 0;
    for (let k = 0; k < 60; k++) {
      const row = record.rowAt(even.t[k]);
      if (own.t[row] !== even.t[k]) continue;
      shared++;
      for (const [name, level] of Object.entries(own.levels)) expect(even.levels[name][k]).toBe(level[row]);
      for (const [name, flow] of Object.entries(own.flows)) expect(even.flows[name][k]).toBeCloseTo(flow[row], 10);
    }
    expect(shared).toBeGreaterThanOrEqual(ACTIONS.length + 2);
  });

  test('in even rows lies between the own rows where these run straight on', () => {
    const fine = seriesOf(record, 7);
    for (let k = 0; k < fine.t.length; k++) {
      const row = record.rowAt(fine.t[k]);
      if (row + 1 >= record.length) continue;
      const [z0, z1, z] = [own.levels.pond[row], own.levels.pond[row + 1], fine.levels.pond[k]];
      expect(Math.abs(z - (z0 + z1) / 2)).toBeLessThan(Math.abs(z1 - z0) / 2 + 1e-5);
    }
  });

  test('ends with the run, whatever the spacing', () => {
    expect([...seriesOf(record, 1000).t]).toEqual([0, 1000, 2000, 3000, 3600]);
    expect([...seriesOf(record, 1e5).t]).toEqual([0, 3600]);
    expect(seriesOf(record, 1000).levels.pond[4]).toBe(own.levels.pond[record.length - 1]);
  });
});
