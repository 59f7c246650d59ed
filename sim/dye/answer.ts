/**
 * What a dye test and a dye that is watched answer: plain data in SI units, made to be drawn. Times are seconds,
 * volumes m³, flows m³/s, masses kg, concentrations kg/m³.
 */

/** Baffling of a basin by its t10/T, as disinfection guidance tells it. */
export type BafflingClass = 'unbaffled' | 'poor' | 'average' | 'superior' | 'perfect';

/** No dye test: the filter is not there, has no media, or takes no water at the moment. */
export interface DyeUnfed {
  readonly fed: false;
  /** Moment asked for, s of the run; null where the run has none at which the filter is fed. */
  readonly at: number | null;
  /** Whole sentences: why, and what follows. */
  readonly says: string;
}

/**
 * Residence times of what enters the plenum at one moment, at the flows of that moment, held. First passage only:
 * what comes back by the pond is not counted.
 */
export interface DyeFigures {
  readonly fed: true;
  /** Moment of the run whose flows are held, s. */
  readonly at: number;
  readonly says: string;
  readonly flows: { readonly bottom: number; readonly media: number; readonly gap: number; readonly top: number };
  /** Gap / (media + gap). */
  readonly channeled: number;
  /** Mean stay in the plenum, on either way, and in the free water, s; media and gap null where no water goes there. */
  readonly times: {
    readonly plenum: number;
    readonly media: number | null;
    readonly gap: number | null;
    readonly mixed: number;
  };
  readonly volumes: { readonly plenum: number; readonly pore: number; readonly gap: number; readonly free: number };
  /** Equal mixed tanks in series that stand for the media: assumed, and the class rests on it. */
  readonly tanks: number;
  /** First moment and second central moment of E, s and s². */
  readonly mean: number;
  readonly variance: number;
  /** Times at which 10, 50 and 90 % of the dye have passed the lip, s. */
  readonly t10: number;
  readonly t50: number;
  readonly t90: number;
  /** t90/t10. */
  readonly morrill: number;
  /** Volumes over the flows through them, s; equal to `mean`. */
  readonly T: number;
  /** t10/T. */
  readonly baffling: number;
  readonly class: BafflingClass;
  /** The class nearest to the figure beside its own, and the t10/T from which the upper of the two counts. */
  readonly neighbor: { readonly class: BafflingClass; readonly from: number };
  /** Share of the dye that has passed by the end of the curve. */
  readonly recovered: number;
  /** Evenly spaced from 0 to at least three means. E is 1/s and splits by the way; F is the share passed. */
  readonly E: { readonly t: Float64Array; readonly through: Float64Array; readonly round: Float64Array };
  readonly F: Float64Array;
}

export type DyeTest = DyeUnfed | DyeFigures;

/** A place where dye may be, in the order of the way it goes. */
export interface DyePlace {
  /** Unique: 'plenum', 'media 1', …, 'gap', 'free', 'beside', a basin's name, 'lost'. */
  readonly name: string;
  readonly kind: 'plenum' | 'tank' | 'gap' | 'free' | 'beside' | 'basin' | 'lost';
  /** kg at the moments of `t`. */
  readonly mass: Float64Array;
  /** Water it is mixed into at these moments, m³; all zeros for what is lost. */
  readonly volume: Float64Array;
}

/** A pulse of dye poured into the plenum at a moment of a run and carried by the run's own flows. */
export interface DyeWatch {
  readonly poured: true;
  /** Moment of the pour, s of the run. */
  readonly at: number;
  /** kg. */
  readonly mass: number;
  /** What a reader must know of this pour; '' mostly. */
  readonly says: string;
  /** Moments of the run, s, from `at` to the end of the watch, evenly spaced but for the last. */
  readonly t: Float64Array;
  readonly places: readonly DyePlace[];
  /**
   * Dye inside the gap from its lower end to its upper end, in kg per cell, `cells` to a moment, the cells of a moment
   * one after the other.
   */
  readonly gap: { readonly cells: number; readonly mass: Float64Array };
  /**
   * Concentration of what flows over the lip, by how it came into the free water: through the media, round them, or
   * else (by the top feed, or from the still water beside the media). They add up.
   */
  readonly lip: { readonly through: Float64Array; readonly round: Float64Array; readonly other: Float64Array };
  /** What has passed the lip since the pour, by the same ways, kg; dye that comes round again counts again. */
  readonly passed: { readonly through: Float64Array; readonly round: Float64Array; readonly other: Float64Array };
  /** What the feeds have brought into the filter since the pour, kg: mostly what came back by the pond. */
  readonly returned: { readonly bottom: Float64Array; readonly top: Float64Array };
  /** Greatest distance of the sum of all masses from the mass poured, over the mass poured. */
  readonly closure: number;
}

export interface DyeNotPoured {
  readonly poured: false;
  readonly says: string;
}

export type DyeWatching = DyeWatch | DyeNotPoured;
