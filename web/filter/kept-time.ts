import type { Case } from '../state/case.ts';
import type { Shown } from '../state/shown.ts';

/** By how much later a moment of the present run falls in that of a case kept, s: both are counted from the pump's stop. */
export const keptLater = ({ stopping }: Shown, { stop }: Case): number =>
  stopping !== undefined && stop !== undefined ? stop - stopping.at : 0;
