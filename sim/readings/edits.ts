import type { Scenario } from '../scenario/scenario.ts';
import type { Unknown } from './unknowns.ts';

/** A change to a file: a value, SI, at a place of the expanded file; undefined takes the key away. */
export interface Edit {
  readonly place: string;
  readonly value: number | undefined;
}

/** The changes to a file that put fitted values into it; what stayed as it was is left alone. */
export function editsFor(fitted: Scenario, unknowns: readonly Unknown[], u: readonly number[]): Edit[] {
  return unknowns.flatMap(({ place, at }, k): Edit[] => {
    if (u[k] === 0) return [];
    if (place === 'pump.curve') return curveEdits(fitted);
    // An outline of its own has no name any more.
    if (place === 'pond.shape.plan')
      return [
        { place, value: undefined },
        { place: 'pond.shape.factor', value: at(u[k]) },
      ];
    return [{ place, value: at(u[k]) }];
  });
}

function curveEdits({ pump: { curve } }: Scenario): Edit[] {
  if (curve.kind === 'box') return [{ place: 'pump.curve.head', value: curve.head }];
  return curve.points.map(([, head], i) => ({ place: `pump.curve[${i}][1]`, value: head }));
}
