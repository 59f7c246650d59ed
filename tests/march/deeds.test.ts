import { describe, expect, test } from 'vitest';
import { GRAVITY } from '../../sim/laws/constants.ts';
import { ledgerOf } from '../../sim/results/ledger.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import {
  APART,
  FEED,
  log,
  MAIN,
  marched,
  RUNNING,
  type Run,
  runningSite,
  smallSite,
  stone,
  uprightPool,
} from '../network/smallSite.ts';

const done = (actions: object[], more: object = {}): Run => marched(runningSite({ span: '20 min', actions, ...more }));

/** A flow right before and right after what is done at a moment. */
function across(record: RunRecord, name: string, t: number): { before: number; after: number } {
  const flow = record.network.parts.flowNames.indexOf(name);
  const after = record.rowAt(t);
  let first = after;
  while (record.time(first - 1) === t) first--;
  expect(record.time(first)).toBe(t);
  return { before: record.flow(first, flow), after: record.flow(after, flow) };
}

describe('the log', () => {
  test('calls every deed by its name, and tells one that changes nothing all the same', () => {
    const filter = {
      profile: [
        [0.7, 0.5],
        [2, 0.5],
      ],
      lip: {
        crest: [
          [0, 1.6],
          [0.6, 1.6],
        ],
      },
      rim: {
        crest: [
          [0, 1.8],
          [2, 1.8],
        ],
      },
    };
    const deeds = [
      { do: 'pump', to: 'on' },
      { do: 'pump', to: 0.7 },
      { do: 'pump', to: 1 },
      { do: 'pump', to: 'off' },
      { do: 'power', to: 'off' },
      { do: 'power', to: 'on' },
      { do: 'hose', to: 'on' },
      { do: 'hose', to: 'off' },
      { do: 'autofill', to: 'off' },
      { do: 'autofill', to: 'on' },
      { do: 'bottom valve', to: 0.4 },
      { do: 'top valve', to: 0 },
      { do: 'blockage', of: 'intake', to: 0.8 },
      { do: 'blockage', of: 'weir', to: 0.5 },
      { do: 'clean filter' },
      { do: 'check valve', to: 'failed' },
      { do: 'check valve', to: 'sound' },
      { do: 'leak', in: 'pond', elevation: -0.4, area: 0 },
      { do: 'pump out', flow: '1 L/s', until: -0.1 },
      { do: 'storm', depth: '1 mm', lasting: '1 min' },
    ];
    const run = done(
      deeds.map((deed, i) => ({ at: 10 * i, ...deed })),
      {
        filter,
        plumbing: { main: MAIN, tee: 0.8, bottomFeed: { ...FEED, inlet: 0.75 }, topFeed: { ...FEED, outlet: 1.9 } },
        supply: { hose: { flow: '1 L/min' }, autofill: { flow: '1 L/min', low: -0.5, set: -0.45 } },
      },
    );
    expect(log(run)).toEqual([
      '0 pump on',
      '10 pump speed 0.7',
      '20 pump speed 1',
      '30 pump off',
      '40 power off',
      '50 power on',
      '60 hose on',
      '70 hose off',
      '80 autofill off',
      '90 autofill on',
      '100 bottom valve 0.4',
      '110 top valve 0',
      '120 intake blockage 0.8',
      '130 weir blockage 0.5',
      '140 filter cleaned',
      '150 check valve failed',
      '160 check valve sound',
      '170 leak starts',
      '180 pump out',
      '180 pump out over',
      '190 storm',
      '250 storm over',
    ]);
  });

  test('tells what falls on the last moment of the span', () => {
    expect(log(done([{ at: '20 min', do: 'pump', to: 'off' }]))).toEqual(['1200 pump off']);
  });
});

describe('what is done at one instant', () => {
  const on = { at: 60, do: 'hose', to: 'on' };
  const off = { at: 60, do: 'hose', to: 'off' };
  const supply = { hose: { flow: '6 L/min' } };
  const hosed = (actions: object[]): number => ledgerOf(done(actions, { supply }).march.record).in.hose;

  test('is done in the order of the file', () => {
    expect(hosed([on, off])).toBe(0);
    expect(hosed([off, on])).toBeCloseTo(1e-4 * 1140, 12);
  });

  test('is so too where one of it is a level that is already reached', () => {
    const low = { when: { basin: 'pond', falls: -0.1 }, do: 'hose' };
    expect(
      hosed([
        { ...on, at: 0 },
        { ...low, to: 'off' },
      ]),
    ).toBe(0);
    expect(
      hosed([
        { ...low, to: 'off' },
        { ...on, at: 0 },
      ]),
    ).toBeCloseTo(1e-4 * 1200, 12);
  });
});

describe('a deed does what it says:', () => {
  test('a hose runs from on to off, all of them or the one that is named', () => {
    const supply = {
      hose: [
        { name: 'left', flow: '6 L/min', on: true },
        { name: 'right', flow: '12 L/min' },
      ],
    };
    const actions = [
      { at: 100, do: 'hose', to: 'on', name: 'right' },
      { at: 300, do: 'hose', to: 'off', name: 'left' },
      { at: 600, do: 'hose', to: 'off' },
    ];
    const run = done(actions, { supply });
    expect(ledgerOf(run.march.record).in.hose).toBeCloseTo(1e-4 * 300 + 2e-4 * 500, 12);
    expect(log(run)).toEqual(['100 hose right on', '300 hose left off', '600 hose off']);
  });

  test('leaves on a stone, a stream and the intake shorten them by their fraction, whatever lay there before', () => {
    const course = [
      { name: 'run', kind: 'stream', length: 3, width: 0.5, slope: 0.03, foot: 0.3, blockage: 0.2 },
      uprightPool('low pool', 1, -0.3, undefined, { stones: [stone('sill', 0.8, 0.2, { blockage: 0.5 })] }),
    ];
    const actions = [
      { at: 600, do: 'blockage', of: 'run', to: 0.5 },
      { at: 601, do: 'blockage', of: 'sill', to: 0.9 },
      { at: 602, do: 'blockage', of: 'intake', to: 0.4 },
      { at: 603, do: 'blockage', of: 'intake', to: 0.1 },
    ];
    const watercourse = [...(RUNNING['watercourse'] as object[]), ...course];
    const { record } = done(actions, { watercourse }).march;
    const ratio = (name: string, t: number): number => {
      const { before, after } = across(record, name, t);
      expect(before).toBeGreaterThan(1e-4);
      return after / before;
    };
    expect(ratio('run', 600)).toBeCloseTo(0.5 / 0.8, 12);
    expect(ratio('sill', 601)).toBeCloseTo(0.1 / 0.5, 12);
    expect(ratio('intake', 602)).toBeCloseTo(0.6, 12);
    expect(ratio('intake', 603)).toBeCloseTo(0.9 / 0.6, 12);
  });

  test('a shut valve passes nothing; one turned back passes what it did', () => {
    const { record } = done([
      { at: 600, do: 'bottom valve', to: 0 },
      { at: 600.01, do: 'bottom valve', to: 1 },
    ]).march;
    const running = across(record, 'bottom feed', 600).before;
    expect(across(record, 'bottom feed', 600).after).toBe(0);
    expect(across(record, 'bottom feed', 600.01).after / running).toBeGreaterThan(0.99);
  });

  test('a leak runs at a √(2 g h); a second one in the same basin is another hole', () => {
    const leak = { do: 'leak', in: 'pond', elevation: -0.4, area: 1e-5 };
    const run = done([
      { at: 100, ...leak },
      { at: 200, ...leak, elevation: -0.6 },
    ]);
    const depth = run.levelAt('pond', 100) + 0.4;
    const { before, after } = across(run.march.record, 'leak', 100);
    expect(before).toBe(0);
    expect(after).toBeCloseTo(1e-5 * Math.sqrt(2 * GRAVITY * depth), 12);
    const second = across(run.march.record, 'leak', 200);
    const deeper = run.levelAt('pond', 200) + 0.6;
    expect(second.after - second.before).toBeCloseTo(1e-5 * Math.sqrt(2 * GRAVITY * deeper), 12);
    expect(ledgerOf(run.march.record).out.leak).toBeGreaterThan(100 * after + 1000 * second.after * 0.99);
  });

  test('a float valve that is shut off lets nothing in, and its full flow again when it is turned on', () => {
    const supply = { autofill: { flow: '6 L/min', low: -0.1, set: -0.05 } };
    const actions = [
      { at: 300, do: 'autofill', to: 'off' },
      { at: 500, do: 'autofill', to: 'on' },
    ];
    const { record } = done(actions, { supply }).march;
    expect(ledgerOf(record).in.autofill).toBeCloseTo(1e-4 * 1000, 10);
  });

  test('a failed check valve lets the spring run back when the pump stops, a sound one does not', () => {
    const least = (to: string): number => {
      const actions = [
        { at: 1, do: 'check valve', to },
        { at: 2, do: 'pump', to: 'off' },
      ];
      const { record } = done(actions).march;
      const main = record.network.parts.flowNames.indexOf('main');
      return Math.min(...Array.from({ length: record.length }, (_, row) => record.flow(row, main)));
    };
    expect(least('sound')).toBe(0);
    expect(least('failed')).toBeLessThan(-1e-3);
  });
});

describe('pumping the pond out', () => {
  const still = (actions: object[]): Run => marched(smallSite({ ...APART, actions }));
  const out = (at: number, until: number, flow = 1e-3) => ({ at, do: 'pump out', flow, until });

  test('takes its flow until the level is down, and is over at that moment', () => {
    const run = still([out(100, -0.44)]);
    expect(log(run)).toEqual(['100 pump out', '500 pump out over']);
    expect(ledgerOf(run.march.record).out.pumpedOut).toBeCloseTo(0.4, 6);
    expect(run.levelAt('pond', 3600)).toBeCloseTo(-0.44, 7);
  });

  test('is over at once where the level is there already', () => {
    const run = still([out(100, -0.4), out(200, -0.3)]);
    expect(log(run)).toEqual(['100 pump out', '100 pump out over', '200 pump out', '200 pump out over']);
    expect(ledgerOf(run.march.record).out.pumpedOut).toBe(0);
  });

  test('goes by the newest order', () => {
    const run = still([out(100, -0.44), out(300, -0.46, 2e-3)]);
    expect(log(run)).toEqual(['100 pump out', '300 pump out', '500 pump out over']);
    expect(run.levelAt('pond', 3600)).toBeCloseTo(-0.46, 7);
  });

  test('ends with the water: an empty pond gives nothing', () => {
    const run = still([out(0, -1, 4e-3)]);
    expect(ledgerOf(run.march.record).out.pumpedOut).toBeCloseTo(6, 6);
    expect(run.levelAt('pond', 3600)).toBeGreaterThanOrEqual(-1);
  });
});
