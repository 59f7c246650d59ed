/** Tide marks of a filling pond: which of them are drawn, and what stands at either end. */

import { FILL_MARK } from '../../sim/fill/marks.ts';
import type { FillPlan } from '../../sim/fill/plan.ts';
import { formatLength } from '../../sim/quantity/index.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { clockWords } from './clock.ts';
import type { FillSeen } from './words.ts';

export interface TideMark {
  readonly name: string;
  /** m */
  readonly level: number;
  /** The clock at its left end, '4:03'; 'never'. */
  readonly clock: string;
  /** The day, where it is another one. */
  readonly day: string;
  /** The level at its right end, below the edge: '2¾ in'. */
  readonly below: string;
  readonly kind: 'full' | 'mark' | 'opened';
}

/** Marks from the top down: the fill mark, those on the way, and where the water stood when the hose was opened. */
export function tideMarks({ planned, display, zone, edge }: FillSeen): TideMark[] {
  const { plan, water } = planned;
  if (plan === null) return [];
  const mark = (name: string, level: number, t: number | undefined, kind: TideMark['kind']): TideMark => {
    const words = t === undefined ? undefined : clockWords(plan.starts, t, display, zone, plan.open?.t ?? 0);
    const under = edge - level;
    return {
      name,
      level,
      kind,
      clock: words?.figure ?? 'never',
      day: words?.day ?? '',
      below: trueFractions(formatLength(Math.abs(under), display)) + (under < 0 ? ' over' : ''),
    };
  };
  const reached = plan.marks.map(({ name, level, reached }) =>
    mark(name, level, reached?.t, name === FILL_MARK || level === plan.fillMark ? 'full' : 'mark'),
  );
  const opened = water < plan.fillMark ? [mark('hose opened', water, plan.open?.t, 'opened')] : [];
  return [...opened, ...reached].sort((a, b) => b.level - a.level);
}

/** Marks that find room, those of more weight first: the full one, the opening, then each farthest from its neighbors. */
export function seated(marks: readonly TideMark[], y: (level: number) => number, gap: number): TideMark[] {
  const weight = { full: 0, opened: 1, mark: 2 };
  const kept: TideMark[] = [];
  for (const each of [...marks].sort((a, b) => weight[a.kind] - weight[b.kind]))
    if (kept.every((other) => Math.abs(y(other.level) - y(each.level)) >= gap)) kept.push(each);
  return kept.sort((a, b) => b.level - a.level);
}

/** Level of the pond at a moment, m, and the water run in by then, m³. */
export function levelAt({ series }: FillPlan, t: number): { readonly level: number; readonly volume: number } {
  const after = series.t.findIndex((each) => each >= t);
  if (after <= 0) {
    const i = after < 0 ? series.t.length - 1 : 0;
    return { level: series.pond[i] ?? 0, volume: series.volume[i] ?? 0 };
  }
  const share = (t - series.t[after - 1]) / (series.t[after] - series.t[after - 1] || 1);
  const between = (column: readonly number[]): number =>
    column[after - 1] + share * (column[after] - column[after - 1]);
  return { level: between(series.pond), volume: between(series.volume) };
}
