/** The known word that a mistyped one most likely meant, if any is near: at most a third of its letters differ. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  if (word.length > 60) return undefined;
  let best: string | undefined;
  let least = Math.floor(Math.max(2, word.length / 3)) + 1;
  for (const each of known) {
    const d = distance(word.toLowerCase(), each.toLowerCase());
    if (d < least && d < each.length) {
      best = each;
      least = d;
    }
  }
  return best;
}

/** Levenshtein's count of letters to change, add or leave out. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
