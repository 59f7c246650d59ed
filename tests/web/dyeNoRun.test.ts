/** Dye beside a case kept that has no run: told as that, and not as a dye still to come. */
import { expect, test, vi } from 'vitest';
import { readScenario } from '../../sim/index.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import { dyeGiven } from '../../web/engine/filter-answers.ts';
import { bothWords, keptWords } from '../../web/filter/dye-words.ts';
import { siteText } from './sites.ts';

const UNSOLVED = 'a site without a run';

vi.mock('../../sim/simulate.ts', async (original) => {
  const real = await original<typeof import('../../sim/simulate.ts')>();
  const run: typeof real.run = (s, ...rest) => {
    if (s.title === UNSOLVED) throw new RunFailure('no solution', 0, 'main', 'the step has no solution');
    return real.run(s, ...rest);
  };
  return { ...real, run };
});

const text = siteText('courtyard');
const reading = readScenario(text);
if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
const { scenario } = reading;
const AT = 3 * 3600;

function pouredBeside(title: string, at = AT) {
  const given = dyeGiven({
    want: 'dye',
    text,
    display: undefined,
    at: AT,
    kept: { scenario: { ...scenario, title }, at },
  });
  if (given.kind !== 'dye') throw new Error(JSON.stringify(given));
  return given;
}

test('the case kept has no run: the present dye keeps its figures, and that is said', () => {
  const given = pouredBeside(UNSOLVED);
  expect(given.kept).toBeNull();
  expect(given.test.fed).toBe(true);
  expect(keptWords(null)).toBe('As kept: this case has no run.');
  expect(bothWords(given)).toBe('As kept: this case has no run. The curve is that of the present case.');
});

test('what is not there yet is being computed; what both have needs no words', () => {
  expect(bothWords(undefined)).toBe('The dye is being computed …');
  const both = pouredBeside('another of the same');
  expect(bothWords({ ...both, kept: undefined })).toBe('The dye is being computed …');
  expect(bothWords(both)).toBe('');
});

test('a case kept into whose run nothing is poured says why, and whose curve is drawn', () => {
  expect(bothWords(pouredBeside('another of the same', -60))).toMatch(
    /^As kept: .*outside the run.* The curve is that of the present case\.$/,
  );
});
