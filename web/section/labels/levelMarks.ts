import { formatClock } from '../../../sim/quantity/clock.ts';
import type { RunAnswer } from '../../../sim/results/answer.ts';
import type { Crest, Scenario } from '../../../sim/scenario/scenario.ts';

/** A level of the pond that a line on the drawing marks. */
export interface LevelMark {
  readonly id: 'pond.rim' | 'pond.fillMark' | 'pond.overflow' | 'highest' | 'lowest';
  readonly name: string;
  /** m. */
  readonly elevation: number;
  /** When the water first stood there, by the site's clock; left out for what is no level reached. */
  readonly clock?: string;
}

/** Elevation of a crest's lowest point, m. */
export const lowestOf = ({ crest }: Crest): number => Math.min(...crest.map(([, z]) => z));

/** The pond's edge, overflow and fill mark, and how high and low its water came, from the top down. */
export function levelMarksOf({ pond, starts }: Scenario, { levels }: Pick<RunAnswer, 'levels'>): LevelMark[] {
  const reached = levels['pond'];
  const marks: LevelMark[] = [{ id: 'pond.rim', name: 'liner edge', elevation: lowestOf(pond.rim) }];
  if (pond.overflow) marks.push({ id: 'pond.overflow', name: 'overflow pipe', elevation: pond.overflow.elevation });
  if (pond.fillMark !== undefined) marks.push({ id: 'pond.fillMark', name: 'fill mark', elevation: pond.fillMark });
  if (reached) {
    const reach = (id: 'highest' | 'lowest', { t, value }: { t: number; value: number }): number =>
      marks.push({ id, name: id, elevation: value, clock: formatClock(starts, t) });
    reach('highest', reached.max);
    reach('lowest', reached.min);
  }
  return marks.sort((a, b) => b.elevation - a.elevation);
}
