import type { LogLine } from './reading.ts';

/**
 * The most lines whose times never go back, as indices: a longest non-decreasing subsequence, by dynamic programming
 * (Cormen et al. 2009, Introduction to Algorithms, exercise 15.4-5). One mistyped year so costs one line. Of several the one
 * that spans the least time.
 */
export function inOrder(lines: readonly Pick<LogLine, 't'>[]): Set<number> {
  const runs: { readonly length: number; readonly start: number; readonly before: number }[] = [];
  const longer = (i: number, k: number): boolean =>
    runs[i].length > runs[k].length || (runs[i].length === runs[k].length && runs[i].start > runs[k].start);
  lines.forEach(({ t }, i) => {
    let before = -1;
    for (let k = 0; k < i; k++) if (lines[k].t <= t && (before < 0 || longer(k, before))) before = k;
    runs.push({ length: (runs[before]?.length ?? 0) + 1, start: runs[before]?.start ?? t, before });
  });
  const span = (i: number): number => lines[i].t - runs[i].start;
  const kept = new Set<number>();
  let last = runs.length - 1;
  for (let i = last - 1; i >= 0; i--)
    if (runs[i].length > runs[last].length || (runs[i].length === runs[last].length && span(i) < span(last))) last = i;
  for (let i = last; i >= 0; i = runs[i].before) kept.add(i);
  return kept;
}
