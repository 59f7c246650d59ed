/** The checks that a running balance decides, in the order in which a site is asked. */
export const BALANCE_CHECKS = ['falls', 'channeling', 'headroom', 'reach', 'velocity', 'duty'] as const;
export type BalanceCheck = (typeof BALANCE_CHECKS)[number];

/** Two planes of operation: the openings of both valves; the pump's speed and the share that goes up the bottom feed. */
export type Plane = 'valves' | 'flow';

/** What a running balance is known by on a map; null where there is no such thing. SI. */
export interface Figures {
  /** Of the main, m³/s. */
  readonly flow: number | null;
  /** Bottom feed / main, −. */
  readonly split: number | null;
  /** Gap / bottom feed, −. */
  readonly channeled: number | null;
  /** Head across the media over the head at which they float up, −. */
  readonly lift: number | null;
  /** Contact time of the empty bed and of its pores, s. */
  readonly emptyBed: number | null;
  readonly pore: number | null;
  /** Least room below an edge of filter, pools and streams, m. */
  readonly headroom: number | null;
  /** Flow over the main stone, m³/s. */
  readonly stone: number | null;
  /** Least margin of the balance's checks, −: at least 0 where none fails. */
  readonly margin: number | null;
}

export type Figure = keyof Figures;

export interface MapPoint extends Figures {
  /** Place in the plane: of its two axes. */
  readonly x: number;
  readonly y: number;
  /** Openings of the valves, 0..1, and speed of the pump, −; the openings are null where no setting does it. */
  readonly bottom: number | null;
  readonly top: number | null;
  readonly speed: number;
  /** There is a running balance here. */
  readonly found: boolean;
  /** The first check that fails; null where all hold. */
  readonly fails: BalanceCheck | null;
}

/** A stretch of an axis where all checks hold; beyond an end some check fails, or the axis ends or has no balance (null). */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly below: BalanceCheck | null;
  readonly above: BalanceCheck | null;
}

export interface OperatingMap {
  readonly ok: true;
  readonly plane: Plane;
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Row by row of `y`, each along `x`. */
  readonly points: readonly MapPoint[];
  /** The site as it is. */
  readonly now: MapPoint;
  /** Where all checks hold as one axis is moved from there, the other staying. */
  readonly along: { readonly x: readonly Stretch[]; readonly y: readonly Stretch[] };
  /** Of the main with the valves as they are and the pump at its full speed, m³/s; null where it runs so, or finds no balance. */
  readonly fullSpeed: number | null;
  /** Name of the stone whose flow is mapped; null where there is none. */
  readonly over: string | null;
  /** By how much the map may miss between its points, by figure: SI, of a contact time as a share of it. See `missOf`. */
  readonly miss: Readonly<Record<Figure, number>>;
  /** What the map leaves out, in sentences. */
  readonly says: readonly string[];
  /** Balances found, and how many of them from standing water. */
  readonly work: { readonly balances: number; readonly anew: number };
}

export type MapAnswer = OperatingMap | { readonly ok: false; readonly says: string };
