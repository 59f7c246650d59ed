import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balance, readScenario } from '../../sim/index.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import { STEPS, type Taught, TEACHING_SITE, taughtOf } from '../../web/lesson/steps.ts';

const file: unknown = JSON.parse(
  readFileSync(new URL(`../../scenarios/${TEACHING_SITE}.json`, import.meta.url), 'utf8'),
);

function stand(at: unknown, display: 'metric' | 'us' = 'metric'): Taught {
  const reading = readScenario(JSON.stringify(at));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const scenario = { ...reading.scenario, display };
  return taughtOf(scenario, balance(scenario))!;
}

const stands = STEPS.map(({ edits }) => stand(withValuesAt(file, edits)));
const share = (i: number): number => stands[i]!.balance.channeled!;
const lift = (i: number): number => stands[i]!.balance.lift!;
const [FIRST, MORE, GAP, MUCK, PUSHED, GENTLY, CLEANED] = [0, 1, 2, 3, 4, 5, 6];

describe('the lesson on channeling', () => {
  test('begins as the site stands, and every step sets the same places', () => {
    expect(stand(file).balance).toEqual(stands[FIRST]!.balance);
    const places = STEPS.map(({ edits }) => edits.map(([place]) => place));
    for (const each of places) expect(each).toEqual(places[0]);
  });

  test('what its steps claim is what the site answers', () => {
    expect(stands[MORE]!.balance.flows['bottom feed']).toBeGreaterThan(
      1.5 * stands[FIRST]!.balance.flows['bottom feed']!,
    );
    expect(Math.abs(share(MORE) - share(FIRST))).toBeLessThan(0.01);
    expect(stands[MORE]!.balance.contact!.pore).toBeLessThan(0.7 * stands[FIRST]!.balance.contact!.pore);
    expect(share(GAP)).toBeGreaterThan(5 * share(FIRST));
    expect(share(MUCK)).toBeGreaterThan(4 * share(FIRST));
    expect(stands[MUCK]!.balance.contact!.pore).toBeGreaterThan(stands[FIRST]!.balance.contact!.pore);
    expect([FIRST, MORE, GAP, MUCK, GENTLY].map(lift).every((each) => each < 1)).toBe(true);
    expect(lift(PUSHED)).toBeGreaterThan(1);
    expect(share(PUSHED)).toBeGreaterThan(share(MUCK) + 0.1);
    expect(share(GENTLY)).toBeGreaterThan(4 * share(FIRST));
    expect(stands[CLEANED]!.balance).toEqual(stands[FIRST]!.balance);
  });

  test('the flow between two walls grows by about the cube of their distance', () => {
    // Plane Poiseuille flow (White, Fluid Mechanics): at one head Q ~ δ³; over the gap's ends and at 15 mm it is less.
    const quiet = (gap: string): number => {
      const { balance: b } = stand(withValuesAt(file, [['filter.media.gap', gap]]));
      return b.flows.gap! / b.mediaHead!;
    };
    expect(quiet('1 mm') / quiet('0.5 mm')).toBeCloseTo(8, 0);
  });

  test('says each step in whole sentences with the figures of the site, in either units', () => {
    for (const [i, { says }] of STEPS.entries()) {
      const told = says(stands[i]!);
      expect(told.length).toBeGreaterThanOrEqual(3);
      for (const each of told) expect(each).toMatch(/^[A-Z‘].*[.?]$/);
      expect(told.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
    }
    expect(STEPS[FIRST]!.says(stands[FIRST]!).join(' ')).toContain('here 2.5 mm wide');
    const us = STEPS[FIRST]!.says(stand(file, 'us')).join(' ');
    expect(us).toContain('0.10 in');
    expect(us).toMatch(/gp[mh]/);
  });

  test('a site whose filter does not run teaches nothing', () => {
    const still = withValuesAt(file, [['plumbing.bottomFeed.valve', 0]]);
    const reading = readScenario(JSON.stringify(still));
    if (!reading.ok) throw new Error('refused');
    expect(taughtOf(reading.scenario, balance(reading.scenario))).toBeUndefined();
    expect(taughtOf({ ...reading.scenario, filter: undefined }, null)).toBeUndefined();
  });
});
