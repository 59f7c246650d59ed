/**
 * How a site treats its water, as one well mixed volume that the filter takes waste out of: plain data in SI units.
 * No water-quality test: nobody has measured what is in the pond.
 */

/** Figures of the running balance; null where the figure does not exist (nothing flows, nothing is removed). */
export interface PondWater {
  /** All water that circulates, m³. */
  readonly volume: number;
  /** Share of the waste that one pass through the media removes, 0..1. */
  readonly removal: number;
  /** Time in which the pump moves all water once, s. */
  readonly turnover: number | null;
  /** V/(η Q_media): time in which as much water as there is is freed of all its waste, s. */
  readonly treatedTurnover: number | null;
  /** ln 2 · V/(η Q_media), s. */
  readonly halfLife: number | null;
  /** Least half-life that any pump gives these media: ln 2 · V/(k V_media), s. */
  readonly leastHalfLife: number | null;
  /** Concentration at which what is removed and lost equals the load, kg/m³; null without a way out. */
  readonly steady: number | null;
  /** Whole sentences in the display's units. */
  readonly says: string;
}

/** Where the waste went in a run, kg; `start + load = end + removed + lost`. */
export interface WasteLedger {
  readonly start: number;
  readonly load: number;
  readonly end: number;
  /** Held back in the media. */
  readonly removed: number;
  /** Gone with water that left: over rims, by overflow, leaks, splash and pumping out. Evaporation takes none. */
  readonly lost: number;
}

/** The waste over a run: one point a row of the record. */
export interface WasteCourse {
  readonly t: Float64Array;
  /** kg/m³ of all circulating water. */
  readonly concentration: Float64Array;
  readonly ledger: WasteLedger;
}

/** How clean two cases keep one pond. */
export interface WaterComparison {
  /** Waste in the first over waste in the second, once settled; null where neither settles. */
  readonly ratio: number | null;
  readonly says: string;
}
