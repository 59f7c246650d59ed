/**
 * Where a rising function is zero within a bracket, by the Illinois method (Dowell & Jarratt 1971, BIT 11): false position
 * that halves the value at an end which stays. The nearer end where it has no zero there.
 *
 * @param within how near the zero is found, > 0
 */
export function risingRoot(f: (x: number) => number, low: number, high: number, within: number): number {
  let atLow = f(low);
  if (atLow >= 0) return low;
  let atHigh = f(high);
  if (atHigh <= 0) return high;
  let [a, b] = [low, high];
  let kept = 0;
  for (let i = 0; i < MOST && b - a > within; i++) {
    const x = i % 4 === 3 ? (a + b) / 2 : (a * atHigh - b * atLow) / (atHigh - atLow);
    const at = f(x);
    if (at === 0) return x;
    if (at > 0) {
      if (x >= b || b - x < within / 2) return x;
      b = x;
      atHigh = at;
      if (kept === 1) atLow /= 2;
      kept = 1;
    } else {
      if (x - a < within / 2) return x;
      a = x;
      atLow = at;
      if (kept === -1) atHigh /= 2;
      kept = -1;
    }
  }
  return (a + b) / 2;
}

const MOST = 60;
