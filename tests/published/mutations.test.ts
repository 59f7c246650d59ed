import { expect, test } from 'vitest';
import { checks, holds } from './laws.ts';
import { mutations } from './mutated-places.ts';
import { FACTORS, noticedBy, outcomesOf } from './mutations.ts';

test('the laws as they stand pass every check when bundled', async () => {
  const outcomes = await outcomesOf();
  expect(outcomes.length).toBe(checks.length);
  expect(outcomes.filter((outcome) => !holds(outcome))).toEqual([]);
});

const inPrint = mutations.filter(({ print }) => print);
test.each(inPrint)('$name off by a twentieth is noticed by a value from print', async (mutation) => {
  for (const factor of FACTORS) {
    const noticed = await noticedBy(mutation, factor);
    expect(noticed.filter(({ kind }) => kind === 'published value').length, `times ${factor}`).toBeGreaterThan(0);
  }
});

const inClosedForm = mutations.filter(({ print }) => !print);
test.each(inClosedForm)('$name off by a twentieth is noticed by a closed form or a library', async (mutation) => {
  for (const factor of FACTORS) {
    expect((await noticedBy(mutation, factor)).length, `times ${factor}`).toBeGreaterThan(0);
  }
});
