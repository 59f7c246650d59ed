import type { LogLine } from './reading.ts';

/**
 * The most lines whose times never go back, as indices: a longest non-decreasing subsequence (Fredman 1975, On
 * computing the length of longest increasing subsequences, Discrete Math. 11). One mistyped year so costs one line.
 */
export function inOrder(lines: readonly Pick<LogLine, 't'>[]): Set<number> {
  /** Last line of the best run of each length, the one that ends earliest. */
  const ends: number[] = [];
  const before: number[] = [];
  lines.forEach(({ t }, i) => {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (lines[ends[mid]].t <= t) low = mid + 1;
      else high = mid;
    }
    before[i] = low > 0 ? ends[low - 1] : -1;
    ends[low] = i;
  });
  const kept = new Set<number>();
  for (let i = ends.at(-1) ?? -1; i >= 0; i = before[i]) kept.add(i);
  return kept;
}
