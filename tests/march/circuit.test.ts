import { describe, expect, test } from 'vitest';
import { GRAVITY } from '../../sim/laws/constants.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { LEDGER } from '../../sim/network/ledger.ts';
import { settingsOf, standingVolumes } from '../../sim/network/start.ts';
import { ledgerOf } from '../../sim/results/ledger.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { FEED, MAIN, marched, RUNNING, type Run, runningSite, stone, uprightPool } from '../network/smallSite.ts';

const crest = (z: number) => ({
  crest: [
    [0, z],
    [0.6, z],
  ],
});
/** Half a square meter, its floor a hand under the bottom inlet at 0.75 m, its lip at 1.6 m. */
const filter = {
  profile: [
    [0.7, 0.5],
    [2, 0.5],
  ],
  lip: crest(1.6),
  rim: crest(1.9),
};
const broken = { ...MAIN, checkValve: false };
const bottom = { ...FEED, inlet: 0.75 };
const top = { ...FEED, outlet: 1.7 };

/** The pump is stopped out of the balance; twelve hours later. */
function stopped(plumbing: object, more: object = {}): Run {
  return marched(runningSite({ filter, plumbing, span: '12 h', actions: [{ at: 0, do: 'pump', to: 'off' }], ...more }));
}
const HALF_DAY = 12 * 3600;

describe('through a failed check valve', () => {
  test('the filter drains to its bottom inlet and stays there where no air gets in at the tee', () => {
    const run = stopped({ main: broken, tee: 1.2, bottomFeed: bottom, topFeed: { ...top, valve: 0 } });
    expect(run.levelAt('filter', HALF_DAY)).toBeCloseTo(0.75, 4);
  });

  test('it drains to the tee alone where the top feed lets air in: a high tee breaks the siphon', () => {
    const run = stopped({ main: broken, tee: 1.2, bottomFeed: bottom, topFeed: top });
    expect(run.levelAt('filter', HALF_DAY)).toBeCloseTo(1.2, 4);
  });

  test('a tee under the inlet breaks nothing', () => {
    const run = stopped({ main: broken, tee: 0.3, bottomFeed: bottom, topFeed: top });
    expect(run.levelAt('filter', HALF_DAY)).toBeCloseTo(0.75, 4);
  });

  test('an outlet under water siphons back until the level is down to it', () => {
    const low = { ...FEED, outlet: 1.4 };
    const run = stopped({ main: broken, tee: 0.8, bottomFeed: { ...bottom, valve: 0 }, topFeed: low });
    expect(run.levelAt('filter', HALF_DAY)).toBeCloseTo(1.4, 4);
  });

  test('an outlet in the air gives nothing back', () => {
    const run = stopped({ main: broken, tee: 0.8, bottomFeed: { ...bottom, valve: 0 }, topFeed: top });
    expect(run.levelAt('filter', HALF_DAY)).toBeCloseTo(1.6, 4);
  });

  test('the pond takes what filter, pipe and spring give: 10 m² of pond and half a square meter of vault', () => {
    const run = stopped({ main: broken, tee: 0.3, bottomFeed: bottom });
    const fell = (basin: string, to: number): number => run.levelAt(basin, 0) - to;
    // Without a top feed the pipe is full up to its inlet; over it, it goes on with a twentieth of its area.
    const pipes = (Math.PI / 4) * (0.05 ** 2 * 8 + 0.045 ** 2 * 3);
    const area = pipes / (0.75 + 1.1);
    const inPipe = 0.05 * area * fell('riser', 0.75) + area * (0.75 - run.levelAt('riser', HALF_DAY));
    const given = 0.5 * fell('filter', 0.75) + fell('spring', 1.2) + inPipe;
    const taken =
      10 * -fell('pond', run.levelAt('pond', HALF_DAY)) + 0.5 * -fell('vault', run.levelAt('vault', HALF_DAY));
    expect(given).toBeGreaterThan(0.4);
    expect(Math.abs(taken / given - 1)).toBeLessThan(1e-4);
    expect(run.levelAt('riser', HALF_DAY)).toBeCloseTo(run.levelAt('pond', HALF_DAY), 3);
  });

  test('a sound one gives back only what stands over the ways out', () => {
    const run = stopped({ main: MAIN, tee: 0.3, bottomFeed: bottom });
    expect(run.levelAt('filter', HALF_DAY)).toBeCloseTo(1.6, 4);
    const main = run.march.record.network.parts.flowNames.indexOf('main');
    expect(run.march.record.flow(run.march.record.length - 1, main)).toBe(0);
  });
});

/** A site's network with everything standing, its pump at a speed, some levels changed. */
function standing(s: Scenario, speed: number, levels: Record<string, number>) {
  const network = assemble(s);
  network.apply(settingsOf(s, network, speed));
  const y = standingVolumes(s, network, -0.2);
  network.parts.basins.forEach(({ name, storage }, i) => {
    if (name in levels) y[i] = (levels[name] - storage.z[0]) * storage.area[0];
  });
  const g = new Float64Array(network.quadratures);
  network.rates(0, y, new Float64Array(network.size), g);
  const flow = (name: string): number => network.flow[network.parts.flowNames.indexOf(name)];
  return { flow, power: g[LEDGER.energy] };
}

describe('the pump', () => {
  const starved = (minimum: number) => runningSite({ pump: { ...(RUNNING['pump'] as object), minimum } });

  test('gives a share that falls straight from its minimum to its suction, and draws the same power', () => {
    const whole = standing(starved(-1.09), 1, { vault: -1.05 });
    const quarter = standing(starved(-0.9), 1, { vault: -1.05 });
    expect(whole.flow('main')).toBeGreaterThan(1e-3);
    expect(quarter.flow('main') / whole.flow('main')).toBeCloseTo(0.25, 12);
    expect(quarter.power).toBe(whole.power);
    expect(standing(starved(-0.9), 1, { vault: -1.1 }).flow('main')).toBe(0);
  });

  test('draws 300 W at full speed and 300 n³ on the way down: 225 J in three seconds', () => {
    const { record } = stopped({ main: MAIN, tee: 0.8, bottomFeed: bottom }, { span: '1 min' }).march;
    expect(record.ledger(record.length - 1, LEDGER.energy)).toBeCloseTo(225, 6);
    const slow = marched(runningSite({ span: '1 h', actions: [{ at: 600, do: 'pump', to: 0.7 }] })).march.record;
    const ramp = (300 * 3 * (1 - 0.7 ** 4)) / (4 * 0.3);
    const wanted = 300 * 600 + ramp + 300 * 0.343 * 2997;
    expect(slow.ledger(slow.length - 1, LEDGER.energy)).toBeCloseTo(wanted, 3);
  });

  test('moves through the main what the ledger counts as pumped', () => {
    const { march } = marched(runningSite({ span: '1 h' }));
    const main = march.record.network.parts.flowNames.indexOf('main');
    expect(ledgerOf(march.record).pumped / (march.record.flow(0, main) * 3600)).toBeCloseTo(1, 3);
  });
});

describe('what runs back into the pipework', () => {
  test('fades as the filter’s level falls through the last bore over its inlet, by the share that is drowned', () => {
    const plumbing = { main: broken, tee: 0.3, bottomFeed: bottom };
    const back = (filterLevel: number, riser: number): number =>
      standing(runningSite({ filter, plumbing }), 0, { filter: filterLevel, riser }).flow('bottom feed');
    // The same head of 0.4 m behind an inlet that is whole, half and not at all under water.
    const whole = back(0.795, 0.395);
    expect(whole).toBeLessThan(-1e-3);
    expect(back(0.7725, 0.3725) / whole).toBeCloseTo(0.5, 9);
    expect(back(0.75, 0.35)).toBe(0);
  });
});

describe('a stone over a stream', () => {
  test('is drowned by the water at the stream’s upper end: foot, slope × length and depth', () => {
    const watercourse = [
      uprightPool('spring', 1, 0.2, undefined, { stones: [stone('weir', 0.8, 0.42)] }),
      { name: 'run', kind: 'stream', length: 3, width: 0.5, slope: 0.03, foot: 0.3 },
    ];
    const over = (depth: number): number =>
      standing(runningSite({ watercourse }), 0, { spring: 0.52, run: 0.3 + depth }).flow('weir');
    // The upper bed lies at 0.39 m: 0.1 m deep, the water there stands 0.07 m over the stone, 0.7 of the head on it.
    expect(over(0.03) / over(0)).toBe(1);
    expect(over(0.1) / over(0)).toBeCloseTo((1 - 0.7 ** 1.5) ** 0.385, 12);
  });
});

describe('a leaking check valve', () => {
  test('passes a √(2 g Δh) of the head between pipe and vault', () => {
    const plumbing = { main: { ...MAIN, checkValve: { leak: 3e-6 } }, tee: 0.8, bottomFeed: bottom };
    const { flow } = standing(runningSite({ plumbing }), 0, { riser: 0.5, vault: -0.3 });
    expect(flow('main')).toBeCloseTo(-3e-6 * Math.sqrt(2 * GRAVITY * 0.8), 15);
  });
});

describe('with both feeds shut', () => {
  const closed = { tee: 0.8, bottomFeed: { ...bottom, valve: 0 }, topFeed: { ...top, valve: 0 } };

  test('the pump fills the pipework and then moves nothing, a failed check valve or not', () => {
    for (const main of [MAIN, broken]) {
      const run = marched(runningSite({ filter, plumbing: { main, ...closed }, start: 'standing', span: '1 h' }));
      const flow = run.march.record.network.parts.flowNames.indexOf('main');
      expect(run.levelAt('riser', 3600)).toBeCloseTo(1.7, 3);
      expect(run.march.record.flow(run.march.record.length - 1, flow)).toBeLessThan(1e-9);
    }
  });

  test('a pump against a shut valve draws what its curve says for no flow', () => {
    const power = [
      [0, 180],
      [0.006, 320],
    ];
    const run = marched(
      runningSite({
        pump: { ...(RUNNING['pump'] as object), power },
        filter,
        plumbing: { main: MAIN, ...closed },
        start: 'standing',
        span: '2 h',
      }),
    );
    const { record } = run.march;
    const at = (t: number): number => record.ledger(record.rowAt(t), LEDGER.energy);
    const [from, to] = [record.rowAt(3600), record.length - 1];
    const watts = (at(record.time(to)) - at(record.time(from))) / (record.time(to) - record.time(from));
    expect(watts).toBeCloseTo(180, 3);
  });

  test('nothing runs back when the pump stops, for no air gets in', () => {
    const run = stopped(
      { main: broken, ...closed },
      { start: 'standing', actions: [{ at: 600, do: 'pump', to: 'off' }] },
    );
    expect(run.levelAt('riser', HALF_DAY)).toBeCloseTo(1.7, 3);
    expect(run.levelAt('filter', HALF_DAY)).toBeCloseTo(1.6, 6);
  });
});

describe('with less pipework than usual', () => {
  test('a bottom feed alone, a filter without a top feed, ends in the filter', () => {
    const run = marched(runningSite({ filter, plumbing: { main: MAIN, tee: 0.8, bottomFeed: bottom }, span: '1 h' }));
    const flow = (name: string): number =>
      run.march.record.flow(run.march.record.length - 1, run.march.record.network.parts.flowNames.indexOf(name));
    expect(flow('lip') / flow('main')).toBeCloseTo(1, 6);
    expect(flow('weir') / flow('lip')).toBeCloseTo(1, 6);
  });

  test('without filter and watercourse the feed ends in the pond: water goes round and none is lost', () => {
    const plumbing = { main: MAIN, tee: 0.3, bottomFeed: { ...FEED, inlet: -0.1 } };
    const run = marched(runningSite({ watercourse: [], plumbing, span: '1 h' }));
    const { record } = run.march;
    const flow = (name: string): number => record.flow(record.length - 1, record.network.parts.flowNames.indexOf(name));
    expect(flow('main')).toBeGreaterThan(1e-3);
    expect(flow('intake') / flow('main')).toBeCloseTo(1, 6);
    expect(Math.abs(run.levelAt('pond', 3600) - run.levelAt('pond', 0))).toBeLessThan(1e-6);
  });

  test('a top feed alone may feed the first pool', () => {
    const run = marched(runningSite({ plumbing: { main: MAIN, tee: 0.8, topFeed: top }, span: '1 h' }));
    const { record } = run.march;
    const flow = (name: string): number => record.flow(record.length - 1, record.network.parts.flowNames.indexOf(name));
    expect(flow('top feed') / flow('main')).toBeCloseTo(1, 6);
    expect(flow('weir') / flow('main')).toBeCloseTo(1, 6);
  });
});
