import type { CrestLine } from '../laws/crest.ts';

/** No basin at this end: the outside. Also: no row, no place. */
export const NONE = -1;

/**
 * Where a flow is booked: a way for water from one basin to another or out of the site: which flow it is named by, which row of the ledger it
 * counts in, and where its slopes stand in the Jacobian and in the ledger's gradient. Flow counts positive from `from`
 * to `to`.
 */
export interface Link {
  readonly flow: number;
  readonly from: number;
  readonly to: number;
  readonly row: number;
  /** Fraction of a forward flow that is splashed out. */
  readonly splash: number;
  /** Places in the Jacobian, row then column: from–from, from–to, to–from, to–to. */
  readonly ff: number;
  readonly ft: number;
  readonly tf: number;
  readonly tt: number;
  /** Places in the gradient of `row` and of the splash, by the level at either end. */
  readonly rowByFrom: number;
  readonly rowByTo: number;
  readonly splashByFrom: number;
  readonly splashByTo: number;
}

/**
 * The ways of each kind. All hold their booking as one object of one shape: the books are entered for every way at
 * every evaluation, and an engine reads objects of one shape ten times as fast.
 */
export interface CrestLink {
  readonly link: Link;
  readonly name: string;
  readonly line: CrestLine;
  /** What no leaf blocks, 0..1. */
  open: number;
}

export interface SeepLink {
  readonly link: Link;
  readonly k: number;
  readonly foot: number;
}

export interface StreamLink {
  readonly link: Link;
  readonly name: string;
  /** Manning's conveyance of the whole width, m^(4/3)/s. */
  readonly conveyance: number;
  readonly foot: number;
  open: number;
}

export interface HoleLink {
  readonly link: Link;
  readonly elevation: number;
  readonly area: number;
}

/** Open water: `cover` is the fraction that does not evaporate. */
export interface SurfaceLink {
  readonly link: Link;
  readonly cover: number;
  readonly floor: number;
}

export interface OverflowLink {
  readonly link: Link;
  readonly elevation: number;
  readonly diameter: number;
}

export interface FloatLink {
  readonly link: Link;
  readonly full: number;
  readonly set: number;
  readonly low: number;
}
