import type { RunAnswer } from '../../../sim/results/answer.ts';
import type { Crest, Scenario } from '../../../sim/scenario/scenario.ts';

/** A level of the pond that a line on the drawing marks. */
export interface LevelMark {
  readonly id: 'pond.rim' | 'pond.fillMark' | 'pond.overflow' | 'highest' | 'lowest';
  readonly name: string;
  /** m. */
  readonly elevation: number;
}

/** Elevation of a crest's lowest point, m. */
export const lowestOf = ({ crest }: Crest): number => Math.min(...crest.map(([, z]) => z));

/** The pond's edge, overflow and fill mark, and how high and low its water came, from the top down. */
export function levelMarksOf({ pond }: Scenario, { levels }: Pick<RunAnswer, 'levels'>): LevelMark[] {
  const reached = levels['pond'];
  const marks: LevelMark[] = [{ id: 'pond.rim', name: 'liner edge', elevation: lowestOf(pond.rim) }];
  if (pond.overflow) marks.push({ id: 'pond.overflow', name: 'overflow pipe', elevation: pond.overflow.elevation });
  if (pond.fillMark !== undefined) marks.push({ id: 'pond.fillMark', name: 'fill mark', elevation: pond.fillMark });
  if (reached) {
    marks.push({ id: 'highest', name: 'highest', elevation: reached.max.value });
    marks.push({ id: 'lowest', name: 'lowest', elevation: reached.min.value });
  }
  return marks.sort((a, b) => b.elevation - a.elevation);
}
