/**
 * How long a filter keeps what its limit asks before it must be cleaned: plain data in SI units, made for a sentence
 * and for drawing.
 */

/** The site as it runs while the media clog: columns over the weeks since the cleaning, all of one length. */
export interface ClogCourse {
  /** Time since the cleaning by the clock, the hours in which the pump stands included, s. */
  readonly t: Float64Array;
  /** Bottom feed / main, gap / bottom feed; 0 where nothing flows. */
  readonly split: Float64Array;
  readonly channeled: Float64Array;
  /** Empty bed contact time and that in what the deposit leaves of the pores, s; NaN where nothing goes through. */
  readonly emptyBed: Float64Array;
  readonly pore: Float64Array;
  /** Flow of the main, m³/s. */
  readonly duty: Float64Array;
  /** Head across the media over the head at which they float up. */
  readonly lift: Float64Array;
  /** Settled volume in each layer, m³, by its name. */
  readonly deposits: Readonly<Record<string, Float64Array>>;
}

/** When the channeled share passes its limit: clean already, after a time, or not within the time looked at. */
export type Passing = { readonly when: 'clean' | 'never' } | { readonly when: 'later'; readonly t: number };

export interface Care {
  readonly passing: Passing;
  /** Whole weeks that a cleaning lasts; 0: less than a week or not even clean, null: beyond the time looked at. */
  readonly weeks: number | null;
  /** The same at either end of what nobody has measured, least first; null: beyond the time looked at. */
  readonly band: readonly [low: number | null, high: number | null];
  /** What the band comes from: the assumed value's place, its own band in SI, and the weeks at its two ends. */
  readonly rests: readonly {
    readonly place: string;
    readonly ends: readonly [low: number, high: number];
    readonly atLow: number | null;
    readonly atHigh: number | null;
  }[];
  /** Limit of the channeled share. */
  readonly limit: number;
  /** Hours of a day in which the pump runs. */
  readonly hoursADay: number;
  /** From clean to some way past the limit, or over the time looked at. */
  readonly course: ClogCourse;
  /** Time since the cleaning after which the media hold as much as they do at t = 0, s; null: beyond the course. */
  readonly since: number | null;
  /** Whole sentences in the display's units. */
  readonly says: string;
}

/** Why there is nothing to clean or nothing to say, as a sentence. */
export interface NoCare {
  readonly care: false;
  readonly says: string;
}

export type CareAnswer = ({ readonly care: true } & Care) | NoCare;
