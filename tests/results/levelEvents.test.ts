import { describe, expect, test } from 'vitest';
import { levelEvents } from '../../sim/results/levelEvents.ts';
import { run } from '../../sim/simulate.ts';
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
