import type { Balance } from '../../balance.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Check, LimitOrigin, Verdict } from '../answer.ts';

/** What every check may look at: the site and its running balance with the pond at its level. */
export interface CheckInput {
  readonly scenario: Scenario;
  /** undefined where the water course finds no running balance. */
  readonly balance: Balance | undefined;
}

/** A limit with its marks: beyond `fail` it fails, short of `pass` it is tight. */
export interface Marks {
  readonly fail: number;
  readonly pass: number;
  readonly origin: LimitOrigin;
}

/**
 * Verdict of a figure that is the better the larger it is.
 *
 * Fails below the fail mark; tight where it holds but would not if it were worse by its band, or lies below the pass
 * mark; else passes.
 */
export function judgeAtLeast(value: number, band: number, marks: Marks): Verdict {
  if (value < marks.fail) return 'fail';
  return value - band < marks.fail || value < marks.pass ? 'tight' : 'pass';
}

/** Verdict of a figure that is the better the smaller it is. */
export function judgeAtMost(value: number, band: number, marks: Marks): Verdict {
  return judgeAtLeast(-value, band, { ...marks, fail: -marks.fail, pass: -marks.pass });
}

const WORST: readonly Verdict[] = ['told', 'pass', 'tight', 'fail'];

/** The worse of two verdicts. */
export function worse(a: Verdict, b: Verdict): Verdict {
  return WORST.indexOf(a) >= WORST.indexOf(b) ? a : b;
}

/** A check with nothing to fail: a figure with a rule of thumb beside it. */
export function told(parts: Pick<Check, 'name' | 'value' | 'unit' | 'says'> & Partial<Check>): Check {
  return {
    verdict: 'told',
    limit: null,
    margin: null,
    band: 0,
    rests: null,
    where: 'trial',
    t: null,
    origin: 'common practice',
    mend: '',
    places: [],
    ...parts,
  };
}

/** A check with a mark beyond which it fails. */
export function judged(
  parts: Pick<Check, 'name' | 'verdict' | 'value' | 'limit' | 'margin' | 'unit' | 'origin' | 'says'> & Partial<Check>,
): Check {
  return told(parts);
}

/** Where a limit comes from, as it stands in a sentence. */
export function originWords(origin: LimitOrigin): string {
  return origin === 'file' ? 'set in the file' : origin;
}

/** 'Raise …, or lower ….' */
export function waysSentence(ways: readonly string[]): string {
  if (ways.length === 0) return '';
  const text = ways.join(', or ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** A basin as a sentence names it: the site's own parts by what they are, its pools and streams by the file's name. */
export function called(basin: string): string {
  return basin === 'filter' || basin === 'pond' ? `the ${basin}` : `‘${basin}’`;
}
