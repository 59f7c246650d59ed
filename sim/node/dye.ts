import { dyeTest } from '../dye/dyeTest.ts';
import { dyeCsv, dyeJson, dyeText } from '../dye/text.ts';
import { formatDuration, parseQuantity } from '../quantity/index.ts';
import type { Problem, Scenario } from '../scenario/scenario.ts';
import { writeLines } from './files.ts';

/** What a call wants of a dye test, as it was typed. */
export interface DyeWishes {
  readonly json: boolean;
  readonly csv: string | undefined;
  readonly at: string | undefined;
}

/** What is wrong with the moment as it was typed. */
export function momentProblems(at: string | undefined): Problem[] {
  if (!at) return [];
  const time = parseQuantity(at, 'time');
  const wanted = 'a time from the run’s start with its unit, as 2h';
  if (!time.ok) return [{ place: '--at', found: time.found, wanted }];
  return time.value < 0 ? [{ place: '--at', found: at, wanted: 'a time from 0 on' }] : [];
}

/** The dye test of a site, printed; its curve is written by the way. Problems where the moment lies outside the run. */
export function dyeCommand(
  s: Scenario,
  { json, csv, at }: DyeWishes,
): { output: string; code: 0 } | readonly Problem[] {
  const time = at === undefined ? undefined : parseQuantity(at, 'time');
  const moment = time?.ok ? time.value : undefined;
  if (moment !== undefined && moment > s.span) {
    return [{ place: '--at', found: at ?? '', wanted: `a time within the run of ${formatDuration(s.span)}` }];
  }
  const test = dyeTest(s, moment);
  if (csv !== undefined && test.fed) writeLines(csv, dyeCsv(test));
  return { output: json ? `${JSON.stringify(dyeJson(s, test), null, 2)}\n` : dyeText(s, test), code: 0 };
}
