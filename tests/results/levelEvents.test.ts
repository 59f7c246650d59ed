import { describe, expect, test } from 'vitest';
import { volumeAt } from '../../sim/laws/storage.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { LEDGER_ROWS } from '../../sim/network/ledger.ts';
import { settingsOf, standingVolumes } from '../../sim/network/start.ts';
import { levelEvents } from '../../sim/results/levelEvents.ts';
import { RunRecord } from '../../sim/results/record.ts';
import { run } from '../../sim/simulate.ts';
import type { RosenbrockStep } from '../../sim/solver/step.ts';
import { plainFile, siteOf } from '../trials/plainSite.ts';

/** The log that follows from levels on the plain site, standing still, its mark at −0.1 m and its edge at 0. */
// biome-ignore lint/suspicious/noExplicitAny: a file may be changed in every way
function logOf(change: (file: any) => void): string[] {
  const file = plainFile();
  file.pump.running = false;
  file.start = 'standing';
  file.supply = { hose: { flow: '60 L/min' } };
  change(file);
  const site = siteOf(file);
  return levelEvents(site, run(site).record).map(({ t, what }) => `${Math.round(t)} ${what}`);
}

const FILL = { at: 0, do: 'hose', to: 'on' };

describe('the fill mark', () => {
  test.each([-0.1, -0.1 - 1e-9, -0.1 + 1e-9, -0.1 + 4e-5])(
    'is not reached by a run that starts at it: %d m',
    (level) => {
      expect(logOf((file) => (file.pond.level = level))).toEqual([]);
    },
  );

  test('nor by a running balance at it', () => {
    const events = logOf((file) => {
      file.pump.running = true;
      file.start = 'running';
    });
    expect(events).toEqual([]);
  });

  test('is reached from below: 10 mm of pond and vault at a liter a second', () => {
    const events = logOf((file) => {
      file.pond.level = -0.11;
      file.actions = [FILL];
      file.span = '4 min';
    });
    expect(events).toEqual(['95 pond at fill mark']);
  });

  test('is passed at the start by a pond that stands above it', () => {
    expect(logOf((file) => (file.pond.level = -0.09))).toEqual(['0 pond at fill mark']);
  });
});

describe('the edge', () => {
  test('is reached by a pond that starts at it and rises', () => {
    const events = logOf((file) => {
      file.pond.level = 0;
      file.actions = [FILL];
      file.span = '4 min';
    });
    expect(events).toContain('0 pond at rim');
  });
});

/** What one step of 100 s tells whose pond goes about its rim as (θ − a)(θ − b)(θ − c) in m³. */
function logOfStep(a: number, b: number, c: number, sign: 1 | -1): string[] {
  const site = siteOf(plainFile());
  const network = assemble(site);
  const { basins, pond } = network.parts;
  const rim = volumeAt(basins[pond].storage, 0);
  const cubic = (x: number): number => rim + sign * (x - a) * (x - b) * (x - c);
  const start = standingVolumes(site, network, 0);
  const end = Float64Array.from(start);
  start[pond] = cubic(0);
  end[pond] = cubic(1);
  const inner1 = new Float64Array(network.size);
  const inner2 = new Float64Array(network.size);
  inner1[pond] = sign * (a + b + c - 1);
  inner2[pond] = -sign;
  const record = new RunRecord(network);
  const none = new Float64Array(LEDGER_ROWS);
  record.openStretch(settingsOf(site, network, 0), 0, start, none);
  record.addStep({ inner1, inner2 } as RosenbrockStep, network.atStart, 100, end, none);
  return levelEvents(site, record)
    .filter(({ what }) => what.endsWith('rim'))
    .map(({ t, what }) => `${Math.round(t)} ${what}`);
}

// It has gone back when it is a tenth of a millimeter down, 0.9 L: the cubic's slopes are 0.14, −0.10 and 0.35 m³.
describe('within one step', () => {
  test('a level that comes, goes and comes again is told at the moment of each', () => {
    expect(logOfStep(0.2, 0.4, 0.9, 1)).toEqual(['20 pond at rim', '41 pond below rim', '90 pond at rim']);
  });

  test('one that comes and has gone again by the end is not lost', () => {
    const events = logOfStep(0.2, 0.4, 0.9, -1);
    expect(events).toEqual(['0 pond at rim', '21 pond below rim', '40 pond at rim', '90 pond below rim']);
  });
});
