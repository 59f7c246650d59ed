/** What can be read beside a running pond, row by row, and what was typed of it as readings. Pure. */

import { RULER, readable, type SiteReading, STOPWATCH, whatWords } from '../../sim/readings/reading.ts';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import { lowestOf } from '../../sim/results/checks/variants.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

export interface ReadingRow {
  /** `head NAME`, `fall` or `top feed`. */
  readonly what: string;
  readonly words: string;
  readonly kind: SiteReading['kind'];
  /** What the site as it is drawn shows there, m; undefined where that is not known. */
  readonly drawn: number | undefined;
}

/** What was typed into a row, SI. */
export interface Typed {
  readonly value?: number | undefined;
  /** The bucket's volume, m³. */
  readonly volume?: number | undefined;
  readonly error?: number | undefined;
}

const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

export function readingRows(s: Scenario, balance: BalanceAnswer | null): ReadingRow[] {
  return readable(s).map((what) => ({
    what,
    words: what === 'top feed' ? 'The top feed into a bucket' : upper(whatWords(what)),
    kind: what === 'top feed' ? 'bucket' : what === 'fall' ? 'fall' : 'head',
    drawn: balance ? drawnAt(s, balance, what) : undefined,
  }));
}

function drawnAt(s: Scenario, { stones, levels }: BalanceAnswer, what: string): number | undefined {
  if (what === 'head lip') return s.filter ? Math.max(0, levels.filter - lowestOf(s.filter.lip.crest)) : undefined;
  return what.startsWith('head ') ? stones[what.slice(5)]?.head : undefined;
}

/** Error a row's reading has where none is typed: m, or s of a watch. */
export const usualError = ({ kind }: ReadingRow): number => (kind === 'bucket' ? STOPWATCH : RULER);

/** The rows of which something was typed, as readings, and which row each is of. */
export function readingsOf(
  rows: readonly ReadingRow[],
  typed: ReadonlyMap<string, Typed>,
  bucket: number,
): { readonly readings: readonly SiteReading[]; readonly of: readonly string[] } {
  const given = rows.flatMap((row) => {
    const own = typed.get(row.what);
    return own?.value === undefined ? [] : [{ row, own, value: own.value }];
  });
  const readings = given.map(({ row, own: { error, volume }, value }): SiteReading => {
    if (row.kind === 'bucket') return { kind: 'bucket', volume: volume ?? bucket, seconds: value, error };
    if (row.kind === 'fall') return { kind: 'fall', fall: value, error };
    return { kind: 'head', over: row.what.slice(5), head: value, error };
  });
  return { readings, of: given.map(({ row }) => row.what) };
}
