import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { failingStretches } from '../../sim/studies/aim.ts';
import { withValueAt } from '../../sim/studies/place.ts';
import { quickAnswer } from '../../sim/studies/quick.ts';
import { failingSettings } from '../../sim/studies/turns.ts';
import { stopTrial } from '../../sim/trials/stop.ts';

describe('the failing stretches of a range', () => {
  test('are none where nothing fails, and the whole range where all does or nothing is known', () => {
    expect(failingStretches(() => 1, [0, 1], 1e-3)).toEqual([]);
    expect(failingStretches(() => -1, [0, 1], 1e-3)).toEqual([[0, 1]]);
    expect(failingStretches(() => undefined, [0, 1], 1e-3)).toEqual([[0, 1]]);
  });

  test('of a parabola lie between its roots, x = 0.2 and 0.7', () => {
    const [[from, to]] = failingStretches((x) => (x - 0.2) * (x - 0.7), [0, 1], 1e-6);
    expect(from).toBeCloseTo(0.2, 6);
    expect(to).toBeCloseTo(0.7, 6);
  });

  test('of a rising line end at its root, wherever that lies', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 9, noNaN: true }), (root) => {
        const [[from, to]] = failingStretches((x) => x - root, [-4, 10], 1e-7);
        expect(from).toBe(-4);
        expect(Math.abs(to - root)).toBeLessThanOrEqual(1e-7);
      }),
    );
  });
});

const file: unknown = JSON.parse(readFileSync(new URL('../../scenarios/courtyard.json', import.meta.url), 'utf8'));
const site = (from: unknown): Scenario => {
  const reading = readScenario(JSON.stringify(from));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
};

describe('the courtyard', () => {
  test('turns at the fill mark from which the stop leaves just what is wanted', () => {
    const setting = { kind: 'figure', place: 'pond.fillMark', dimension: 'length' } as const;
    const [[turn, end], ...more] = failingSettings(file, setting, 'stop', [-0.3, 0], 1e-5);
    expect(more).toEqual([]);
    expect(end).toBe(0);
    // Our default wants 25 mm below the edge; the trial itself is run on either side of the turn.
    const below = (mark: number): number => stopTrial(site(withValueAt(file, 'pond.fillMark', mark)))!.below;
    expect(below(turn - 2e-5)).toBeGreaterThan(0.025);
    expect(below(turn + 2e-5)).toBeLessThan(0.025);
  });

  test('answers quickly what it answers in full', () => {
    const quick = quickAnswer(site(file));
    const { answer } = simulate(site(file));
    expect(quick.answer.levels).toEqual(answer.levels);
    expect(quick.stops!.asIs.below).toBe(answer.checks[0].value);
    const failed = answer.checks.find(({ name }) => name === 'drain-back, valve failed')!;
    expect(quick.stops!.failed.below).toBe(failed.value);
    expect(quick.stops!.sound).toEqual(expect.objectContaining({ below: answer.checks[0].value }));
  });
});
