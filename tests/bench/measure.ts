/** Milliseconds of one call: the median over many after a warm-up, and half the middle four fifths as its spread. */
export interface Timing {
  readonly ms: number;
  readonly spread: number;
}

/**
 * Times a call. Runs for about `budget` ms after a warm-up of as long, so that what is measured is compiled code.
 */
export function time(call: () => void, budget = 1500): Timing {
  const until = (end: number, each: (ms: number) => void): void => {
    do {
      const begin = performance.now();
      call();
      each(performance.now() - begin);
    } while (performance.now() < end);
  };
  until(performance.now() + budget, () => {});
  const times: number[] = [];
  until(performance.now() + budget, (ms) => times.push(ms));
  times.sort((a, b) => a - b);
  const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(share * times.length))];
  return { ms: at(0.5), spread: (at(0.9) - at(0.1)) / 2 };
}
