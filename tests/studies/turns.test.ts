import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSite } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { withValueAt } from '../../sim/studies/place.ts';
import { type Setting, withSetting } from '../../sim/studies/setting.ts';
import { failingSettings } from '../../sim/studies/turns.ts';
import { dialsFor, type Ruler } from '../../web/state/dials.ts';

const folder = new URL('../../scenarios/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const fileOf = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

function siteOf(file: unknown): Scenario {
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

/** Whether the check that answers the question fails in the full simulation of the file. */
const fails = (file: unknown): boolean =>
  simulate(siteOf(file)).answer.checks.find(({ name }) => name === 'drain-back')!.verdict === 'fail';

function rulersOf(file: unknown): Ruler[] {
  const site = siteOf(file);
  const { shown, more } = dialsFor('stop', { now: site, base: site, file, opened: file, typed: new Map() });
  return [...shown, ...more].filter((dial) => dial.kind === 'ruler');
}

/** With an autofill and an open hose, so that their dials are there too and matter. */
function supplied(file: unknown): unknown {
  const mark = siteOf(file).pond.fillMark!;
  const autofill = { flow: '5 L/min', set: mark, low: mark - 0.025 };
  return withValueAt(file, 'supply', { autofill, hose: { flow: '2 L/min', on: true } });
}

describe.each([...names, 'courtyard.json, supplied'])('the dials of %s for the pump’s stop', (name) => {
  const [at = ''] = name.split(',');
  const file = name === at ? fileOf(at) : supplied(fileOf(at));

  test.each(rulersOf(file).map((ruler) => [ruler.name, ruler] as const))(
    '%s: the full simulation at both ends says the same as the ruler',
    (_, { setting, low, high, step }) => {
      const failing = failingSettings(file, setting, 'stop', [low, high], step / 2);
      const says = (x: number): boolean => failing.some(([from, to]) => x >= from && x <= to);
      for (const end of [low, high]) {
        expect({ end, fails: fails(withSetting(file, setting, end)) }).toEqual({ end, fails: says(end) });
      }
    },
  );
});

describe('the courtyard with its hose left open', () => {
  const file = withValueAt(fileOf('courtyard.json'), 'supply.hose.on', true);
  const flow: Setting = { kind: 'figure', place: 'supply.hose.flow', dimension: 'flow' };

  test('turns at the flow that by noon has filled the room of the pond, which no trial shows', () => {
    const [[turn, end], ...more] = failingSettings(file, flow, 'stop', [0, 4e-4], 1e-8) as [[number, number]];
    expect([more, end]).toEqual([[], 4e-4]);
    expect(fails(withSetting(file, flow, turn - 2e-8))).toBe(false);
    expect(fails(withSetting(file, flow, turn + 2e-8))).toBe(true);
  });

  test('does not turn on it where it is shut', () => {
    const shut = withValueAt(file, 'supply.hose.on', undefined);
    expect(failingSettings(shut, flow, 'stop', [0, 4e-4], 1e-6)).toEqual([]);
  });
});
