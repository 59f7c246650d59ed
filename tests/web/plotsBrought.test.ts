/** What the page saves beside levels and flows: the columns of what settles and of the waste, as the run's answer ends. */
import { expect, test } from 'vitest';
import { readScenario } from '../../sim/index.ts';
import { simulate } from '../../sim/simulate.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import { broughtGiven } from '../../web/engine/filter-answers.ts';
import { siteText } from './sites.ts';

function site(edits: readonly (readonly [place: string, value: unknown])[]) {
  const reading = readScenario(JSON.stringify(withValuesAt(JSON.parse(siteText('courtyard')), edits)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

const dirty = site([
  ['debris', 1e-5],
  ['concentration', '20 mg/L'],
  ['filter.media.layers[0].capture', 5],
  ['filter.media.layers[0].deposit', '0.5 L'],
  ['filter.media.removal', 0.002],
]);

test('columns at the moments of what is drawn, from what the file holds to what the run ends with', () => {
  const { answer } = simulate(dirty);
  const t = Float64Array.of(0, 3600, answer.span);
  const given = broughtGiven({ want: 'brought', scenario: dirty, t });
  if (given.kind !== 'brought') throw new Error(JSON.stringify(given));
  expect(given.columns.map(({ head }) => head)).toEqual([
    'settled in coarse mat[m3]',
    'settled in bagged media[m3]',
    'waste[kg/m3]',
  ]);
  const [mat, , waste] = given.columns.map(({ values }) => values);
  expect([mat![0], waste![0]]).toEqual([0.0005, 0.02]);
  expect(mat![2]).toBeCloseTo(answer.deposits['coarse mat']!, 12);
  expect(waste![2]).toBeCloseTo(answer.concentration, 12);
});

test('none where the water brings nothing', () => {
  expect(broughtGiven({ want: 'brought', scenario: site([]), t: Float64Array.of(0, 60) })).toEqual({
    kind: 'brought',
    columns: [],
  });
});
