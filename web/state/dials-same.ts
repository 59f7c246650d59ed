/** Dials that say the same are the same: what has not changed need not be drawn again. */

import type { DialSet } from './dials.ts';
import type { Dial } from './dials-kinds.ts';

/** Whether two plain values, of the same keys in the same order, say the same. */
export const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The dials as they are now, each as it was before where it says the same. */
export function sameDials(before: DialSet, now: DialSet): DialSet {
  const old = new Map([...before.shown, ...before.more].map((dial) => [dial.name, dial]));
  const keep = (dial: Dial): Dial => {
    const was = old.get(dial.name);
    return was !== undefined && isSame(was, dial) ? was : dial;
  };
  return { shown: now.shown.map(keep), more: now.more.map(keep) };
}
