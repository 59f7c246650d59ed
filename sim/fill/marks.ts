import { areaAt, makeStorage } from '../laws/storage.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** A level somebody waits for, elevation in m. */
export interface Mark {
  readonly name: string;
  readonly level: number;
}

/** Marks closer than this are one, m. */
const SAME = 1e-3;

export const FILL_MARK = 'fill mark';

/**
 * The marks of a fill where none are named: each shelf, the top of rock and gravel, the quarters of the depth and the
 * fill mark, above the water that stands there now, from below.
 *
 * @param now level of the pond, m
 */
export function ownMarks({ pond }: Scenario, fillMark: number, now: number): Mark[] {
  const [[floor]] = pond.profile;
  const quarter = (fillMark - floor) / 4;
  const shelves = pond.profile.filter(([z], i) => i > 0 && pond.profile[i - 1][0] === z);
  const marks: Mark[] = [
    { name: FILL_MARK, level: fillMark },
    ...shelves.map(([level]) => ({ name: 'shelf', level })),
    ...pond.displaced
      .filter(({ fraction }) => fraction > 0)
      .map(({ to }) => ({ name: 'top of rock or gravel', level: to })),
    { name: 'half depth', level: floor + 2 * quarter },
    { name: 'quarter depth', level: floor + quarter },
    { name: 'three quarters', level: floor + 3 * quarter },
  ];
  return marks
    .filter(({ level }, i) => marks.findIndex((other) => Math.abs(other.level - level) < SAME) === i)
    .filter(({ name, level }) => name === FILL_MARK || (level > now && level < fillMark))
    .sort((a, b) => a.level - b.level);
}

/** Open surface of the pond at a level, m²: the volume a meter of level takes there, just above it. */
export function surfaceAt({ pond }: Scenario, level: number): number {
  return areaAt(makeStorage(pond.profile, pond.displaced), level);
}
