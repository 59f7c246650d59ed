/**
 * How a site is laid out where nobody said otherwise, m. All of it is our default, after what is commonly built; none
 * of it is asked for, and a part given beside the sketch takes its place.
 */
import { FOOT, INCH } from './units.ts';

/** The lowest stretch of an edge or a rim. */
export const LOW_STRETCH = 2 * FOOT;

export const FILTER = {
  /** Its box along the flow, its least width, and how much wider than the lip it is. */
  length: 24 * INCH,
  leastWidth: 30 * INCH,
  besideLip: 6 * INCH,
  /** Elevations under the lip. */
  mediaTop: 6 * INCH,
  rack: 20 * INCH,
  inlet: 25 * INCH,
  floor: 28 * INCH,
  /** The top feed ends above the lip. */
  outlet: 4 * INCH,
  mats: { count: 2, thickness: 2 * INCH, porosity: 0.92, grain: 0.002 },
  bags: { porosity: 0.8, grain: 0.008 },
} as const;

export const FEED = { length: 6 * FOOT, elbows: 2, k: 1 } as const;

/** Loss of the main line's entrance, −; its fittings count it. */
export const ENTRANCE_LOSS = 0.5;

export const POOL = {
  /** Under the main stone. */
  depth: 8 * INCH,
  /** The least height between the lip and what is below the pool, for a stone between them. */
  leastFall: 8 * INCH,
  /** The side stone's width over the main stone's. */
  sideStone: 0.5,
} as const;

export const STREAM = { leastWidth: 24 * INCH, edge: 3 * INCH } as const;

export const VAULT = {
  area: 24 * INCH * (36 * INCH),
  belowPond: 6 * INCH,
  leastDepth: 24 * INCH,
  suction: 4 * INCH,
  /** The pump draws its full flow above the lower of these: over the suction, under the intake's lip. */
  overSuction: 8 * INCH,
  underIntake: 3 * INCH,
} as const;

/** The level an autofill lets fall. */
export const AUTOFILL_BAND = INCH / 2;

export const DAY = { span: 86400, starts: '2031-06-01T06:00', stop: 6 * 3600, start: 7 * 3600 } as const;
