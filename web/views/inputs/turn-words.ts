import { type Display, formatFine, formatNumber } from '../../../sim/quantity/index.ts';
import type { Stretch } from '../../../sim/studies/aim.ts';
import { dimensionOf } from '../../../sim/studies/setting.ts';
import type { Ruler } from '../../state/dials.ts';
import { wordsOf } from '../../state/dials-kinds.ts';

/** A ruler no longer than this is read finer than in whole millimeters or eighths of an inch, m. */
const FINE = 0.1;
/** An end of the range that holds over less than this part of it is no place to stand. */
const HARDLY = 0.005;

/** 'fails above −57 mm', and 'no turn in this range' where none is. */
export function turnWords(ruler: Ruler, failing: readonly Stretch[] | undefined, display: Display): string {
  if (failing === undefined) return '';
  if (failing.length === 0) return 'no turn in this range';
  const { low, high, setting } = ruler;
  const dimension = dimensionOf(setting);
  const words = (x: number): string => {
    if (dimension === 'length' && high - low <= FINE) return formatFine(x, display);
    // A valve's field shows its opening as a part of one.
    return dimension === 'fraction' ? formatNumber(x, 2) : wordsOf(x, dimension, display);
  };
  const near = HARDLY * (high - low);
  const parts = failing.map(([from, to]) => {
    const [starts, ends] = [from <= low + near, to >= high - near];
    if (starts && ends) return 'throughout this range';
    if (starts) return `below ${words(to)}`;
    if (ends) return `above ${words(from)}`;
    return `from ${words(from)} to ${words(to)}`;
  });
  return `fails ${parts.join(' and ')}`;
}
