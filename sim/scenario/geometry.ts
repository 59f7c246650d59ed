/** [elevation m, plan area m²], ascending in elevation; two points at one elevation make a ledge. */
export type ProfilePoint = readonly [elevation: number, area: number];
/** [station m along the crest, elevation m]. */
export type CrestPoint = readonly [station: number, elevation: number];

/** Rock, gravel or media that takes up a fraction (0..1) of a layer between two elevations, m. */
export interface DisplacedLayer {
  readonly from: number;
  readonly to: number;
  readonly fraction: number;
}

/** A hole at an elevation (m) with an effective area (m², contraction included). */
export interface Leak {
  readonly elevation: number;
  readonly area: number;
}

/** A crest: its surveyed line and its discharge coefficient on the ideal broad crest (1 = ideal). */
export interface Crest {
  readonly crest: readonly CrestPoint[];
  readonly cd: number;
}

/** What every basin may carry. `level` overrides the start rule; 'empty' is the floor. */
export interface BasinParts {
  readonly profile: readonly ProfilePoint[];
  readonly displaced: readonly DisplacedLayer[];
  readonly level: number | 'empty' | undefined;
  readonly leak: Leak | undefined;
}
