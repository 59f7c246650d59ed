/** Dye poured while a pump stops or is slowed: what can still be done is said, and no trickle is timed. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dyeTest } from '../../sim/dye/dyeTest.ts';
import { NOT_FED } from '../../sim/dye/fed.ts';
import { run } from '../../sim/simulate.ts';
import { read } from './sites.ts';

const MINUTE = 60;
const site = read({
  ...JSON.parse(readFileSync(new URL('../../scenarios/courtyard.json', import.meta.url), 'utf8')),
  span: '1 h',
  actions: [
    { at: '10 min', do: 'pump', to: 0.8 },
    { at: '30 min', do: 'pump', to: 'off' },
  ],
});
const { record } = run(site);
const at = (t: number) => dyeTest(site, t, record);

describe('a pump that was stopped', () => {
  test('is not told to be stopped later: while it runs out the pour belongs before the stop', () => {
    const dye = at(30 * MINUTE + 1);
    expect(dye.fed).toBe(true);
    expect(dye.says).toMatch(
      /^The pump was stopped 1 s ago, and the flows held .*: pour before the stop\. Water stays/,
    );
    expect(at(30 * MINUTE).says).toMatch(/^The pump stops at this moment, .*: pour before it stops\. /);
  });

  test('once it stands leaves a trickle that no figure is told of, however much it is', () => {
    const { bottom } = record.network.parts.circuit.flow;
    const stands = 30 * MINUTE + 4;
    expect(record.flow(record.rowAt(stands), bottom)).toBeGreaterThan(NOT_FED);
    const dye = at(stands);
    expect(dye.fed).toBe(false);
    expect(dye.says).toBe('The pump was stopped 4 s ago, and its water is coming to rest: pour before the stop.');
    expect(at(31 * MINUTE).says).toMatch(/^The pump stands, so no water goes up/);
  });
});

test('a pump that is slowed is coming to a new speed, and has come to it seconds later', () => {
  expect(at(10 * MINUTE + 1).says).toMatch(
    /^The pump is still coming to its new speed, .*: pour a minute later\. Water/,
  );
  expect(at(10 * MINUTE + 4).says).toMatch(/^Water stays/);
});
