/** A pump's speed and what has settled in the media are told wherever the figures that rest on them are. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/index.ts';
import { balanceText } from '../../sim/results/balanceText.ts';
import { summaryText } from '../../sim/results/summary.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { simulate } from '../../sim/simulate.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import { edgeBenchmark } from '../../web/sheet/block.ts';
import { pumpBlock } from '../../web/sheet/works.ts';

const file: unknown = JSON.parse(readFileSync(new URL('../../scenarios/courtyard.json', import.meta.url), 'utf8'));

function site(...edits: [place: string, value: unknown][]): Scenario {
  const reading = readScenario(JSON.stringify(withValuesAt(file, edits)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

const plain = site();
const slowed = site(['pump.speed', 0.8]);
// Two layers: what is told is both together.
const clogged = site(['filter.media.layers[0].deposit', '2 L'], ['filter.media.layers[1].deposit', '1 L']);
const resisting = site(['filter.media.layers[0].grain', '0.2 mm']);

const tableOf = (s: Scenario): string => balanceText(balance(s), s);
const sheetOf = (scenario: Scenario): string =>
  pumpBlock({ scenario, balance: balance(scenario), benchmark: edgeBenchmark(scenario) }).says?.join(' ') ?? '';

describe('the balance and the sheet', () => {
  test('say at what share of its speed the pump is driven, where it is not its full one', () => {
    expect(tableOf(slowed)).toMatch(/^driven at +80 % of its full speed$/m);
    expect(sheetOf(slowed)).toContain('It is driven at 80 % of its full speed');
    for (const words of [tableOf(plain), sheetOf(plain)]) expect(words).not.toContain('driven');
  });

  test('say what has settled in the media, where anything has', () => {
    expect(tableOf(clogged)).toMatch(/^settled in the media +3\.0 L$/m);
    expect(sheetOf(clogged)).toContain('with 3.0 L settled in the media');
    for (const words of [tableOf(plain), sheetOf(plain)]) expect(words).not.toContain('settled');
  });

  test('tell the head across the media to a tenth of a millimeter, and say where it is less', () => {
    const { mediaHead } = balance(resisting);
    expect(tableOf(plain)).toMatch(/^head across the media +less than 0\.1 mm$/m);
    const told = /^head across the media +(\d+(?:\.\d)?) mm$/m.exec(tableOf(resisting));
    expect(Number(told?.[1])).toBeCloseTo(1000 * (mediaHead ?? 0), 1);
    expect(tableOf({ ...resisting, display: 'us' })).toMatch(/^head across the media +\d+\.\d\d in$/m);
  });
});

test('a run names the speed of its pump in its first line', () => {
  const first = (s: Scenario): string => summaryText(s, simulate(s).answer).split('\n')[0];
  expect(first(slowed)).toMatch(/metric · pump at 80 % of its full speed$/);
  expect(first(plain)).toMatch(/metric$/);
});
