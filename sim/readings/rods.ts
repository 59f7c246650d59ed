import type { CrestPoint, Scenario } from '../scenario/scenario.ts';

/** A level set up: the elevation of a benchmark, m, and what its rod reads on that, m. */
export interface LevelSetUp {
  readonly benchmark: number;
  readonly reading: number;
}

/** What the rod must read on a point of the site, m: a bigger reading is lower. */
export interface RodReading {
  readonly name: string;
  /** Place in the expanded file. */
  readonly place: string;
  readonly elevation: number;
  readonly rod: number;
  /** Crests: the rod at every surveyed point, by its station, m. */
  readonly points: readonly { readonly station: number; readonly elevation: number; readonly rod: number }[];
  /** The point lies above the instrument's line of sight: no rod stands there until the level is set up higher. */
  readonly above: boolean;
}

/**
 * Heights of a site as a rod reads them: height of instrument (benchmark + its reading) less elevation, as in any
 * surveying book's differential leveling. A crest stands by its lowest point. Edge first, then downhill as the water goes.
 */
export function rodReadings(s: Scenario, { benchmark, reading }: LevelSetUp): RodReading[] {
  const instrument = benchmark + reading;
  const point = (name: string, place: string, elevation: number, crest: readonly CrestPoint[] = []): RodReading => ({
    name,
    place,
    elevation,
    rod: instrument - elevation,
    points: crest.map(([station, z]) => ({ station, elevation: z, rod: instrument - z })),
    above: elevation > instrument,
  });
  const crest = (name: string, place: string, points: readonly CrestPoint[]): RodReading =>
    point(name, place, Math.min(...points.map(([, z]) => z)), points);
  const stones = s.watercourse.flatMap((reach, i) =>
    reach.kind === 'pool'
      ? reach.stones.map((stone, k) => crest(stone.name, `watercourse[${i}].stones[${k}].crest`, stone.crest))
      : [],
  );
  return [
    crest('edge', 'pond.rim.crest', s.pond.rim.crest),
    ...(s.pond.fillMark === undefined ? [] : [point('fill mark', 'pond.fillMark', s.pond.fillMark)]),
    ...(s.filter ? [crest('filter’s lip', 'filter.lip.crest', s.filter.lip.crest)] : []),
    ...stones,
    point('tee', 'plumbing.tee', s.plumbing.tee),
  ];
}
