/** What the page asks of a fill, and what comes back. */
import type { Opening } from '../../sim/fill/opening.ts';
import type { FillPlan } from '../../sim/fill/plan.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

type Display = Scenario['display'];

/** The day on which a site is filled: what is no part of the site itself. */
export interface FillDay {
  /** When the first hose is opened, 'YYYY-MM-DDTHH:MM' on the wall; undefined: as the file has it. */
  readonly opened?: string | undefined;
  /** Where the water stands then, m; undefined: as the file has it, or at the floor where it has nothing. */
  readonly water?: number | 'empty' | undefined;
  /** All hoses are shut every night, s after midnight. */
  readonly nights?: readonly [from: number, to: number] | undefined;
  /** Full by this time of day, s after midnight: the hose is opened as late as that allows. */
  readonly by?: number | undefined;
  /** IANA name of the zone whose clock hangs on the wall. */
  readonly zone?: string | undefined;
}

/** How a site comes to its fill mark; `part` tells what is computed at once, and what takes longer. */
export interface FillRequest {
  readonly want: 'fill';
  readonly text: string;
  readonly display: Display | undefined;
  readonly day: FillDay;
  readonly part: 'plan' | 'more';
}

export interface FillPlanned {
  kind: 'fill plan';
  /** null where the site has no fill mark, or no hose that gives anything. */
  plan: FillPlan | null;
  /** Where the water stands when the first hose is opened, m. */
  water: number;
  /** Asked for by a time of day; null where it was not. */
  opening: Opening | null;
}

export interface FillMore {
  kind: 'fill more';
  /** How far the moment may be off, s either way, and what moves it most; null where it is never full, or is already. */
  band: { readonly band: number; readonly most: string | undefined } | null;
  /** The same fill with the pump started at the mark; null where there is none. */
  pumped: FillPlan | null;
}
