/** The figures of a dye as two cases are told apart by them. */
import type { DyeFigures } from '../../sim/dye/answer.ts';
import { formatDuration, formatNumber, formatPercent } from '../../sim/quantity/index.ts';

export interface DyeRow {
  readonly name: string;
  readonly kept: string;
  readonly now: string;
  /** Time after the pour in the present case, s, where the figure is one. */
  readonly after?: number;
}

export function dyeRows(kept: DyeFigures, now: DyeFigures): DyeRow[] {
  const row = (name: string, words: (dye: DyeFigures) => string, after?: number): DyeRow => ({
    name,
    kept: words(kept),
    now: words(now),
    ...(after !== undefined && { after }),
  });
  return [
    row('goes through', ({ channeled }) => formatPercent(1 - channeled)),
    row('goes round', ({ channeled }) => formatPercent(channeled)),
    row('first tenth', ({ t10 }) => formatDuration(t10), now.t10),
    row('half', ({ t50 }) => formatDuration(t50), now.t50),
    row('nine tenths', ({ t90 }) => formatDuration(t90), now.t90),
    row('spread, t90 over t10', ({ morrill }) => formatNumber(morrill, 1)),
  ];
}
