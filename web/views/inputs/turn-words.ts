import type { Display } from '../../../sim/quantity/index.ts';
import type { Stretch } from '../../../sim/studies/aim.ts';
import { dimensionOf } from '../../../sim/studies/setting.ts';
import type { Ruler } from '../../state/dials.ts';
import { wordsOf } from '../../state/dials-kinds.ts';

/** 'fails above −57 mm', and 'no turn in this range' where none is. */
export function turnWords(ruler: Ruler, failing: readonly Stretch[] | undefined, display: Display): string {
  if (failing === undefined) return '';
  if (failing.length === 0) return 'no turn in this range';
  const { low, high, setting } = ruler;
  const words = (x: number): string => wordsOf(x, dimensionOf(setting), display);
  const parts = failing.map(([from, to]) => {
    if (from <= low && to >= high) return 'throughout this range';
    if (from <= low) return `below ${words(to)}`;
    if (to >= high) return `above ${words(from)}`;
    return `from ${words(from)} to ${words(to)}`;
  });
  return `fails ${parts.join(' and ')}`;
}
