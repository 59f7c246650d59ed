/**
 * A site and what is done on it, checked: every number in SI, every default filled in, every name known.
 *
 * `read.ts` makes it from a file's text, or lists what is wrong with the file. Everything downstream takes only
 * this type and may rely on the sense that was checked. Elevations are metres above the site's datum, positive up.
 */
import type { Action } from './action.ts';

import type { BasinParts, Crest, Leak } from './geometry.ts';
import type { Plumbing, Pump } from './plumbing.ts';

export type { Action, Deed, Timing } from './action.ts';
export type * from './geometry.ts';
export type * from './plumbing.ts';

export interface Pond extends BasinParts {
  /** Elevation at which the crew means to keep the pond with the pump running; undefined only where the pond starts empty and the file gives none. */
  readonly fillMark: number | undefined;
  readonly rim: Crest;
  readonly overflow: { readonly elevation: number; readonly diameter: number } | undefined;
  /** Fraction of the surface under plants, 0..1. */
  readonly plantCover: number;
  readonly runoff: { readonly area: number; readonly coefficient: number };
  /** Area × depth of the box the shape was given by, m³; undefined where a profile was given. */
  readonly boxVolume: number | undefined;
}

export interface Intake {
  readonly width: number;
  readonly elevation: number;
  readonly blockage: number;
}

export interface MediaLayer {
  readonly name: string;
  readonly thickness: number;
  readonly porosity: number;
  /** Grain diameter, or a mat's fibre diameter, m; undefined only where `permittivity` is given. */
  readonly grain: number | undefined;
  /** ASTM D4491 permittivity of a mat, 1/s. */
  readonly permittivity: number | undefined;
  /** First-order capture of settled solids, 1/m. */
  readonly capture: number;
  /** Pore space lost per volume of settled solids, −. */
  readonly beta: number;
  /** Settled volume in it at t = 0, m³. */
  readonly deposit: number;
}

export interface Media {
  readonly bottom: number;
  readonly area: number;
  readonly perimeter: number;
  readonly gap: number;
  /** From the bottom up. */
  readonly layers: readonly MediaLayer[];
  readonly submergedWeight: number;
  readonly holdDown: number;
  readonly liftSlack: number;
  /** First-order removal of waste from what goes through, 1/s. */
  readonly removal: number;
  readonly tanks: number;
}

export interface Filter extends BasinParts {
  readonly media: Media | undefined;
  readonly lip: Crest;
  readonly rim: Crest;
}

export interface Stone extends Crest {
  readonly name: string;
  readonly main: boolean;
  /** Stone's length along the flow, and its nose radius, m; along undefined: `cd` holds at every head. */
  readonly along: number | undefined;
  readonly nose: number;
  readonly seep: { readonly k: number; readonly foot: number };
  readonly fall: number;
  readonly splash: number;
  readonly blockage: number;
}

export interface Pool extends BasinParts {
  readonly kind: 'pool';
  readonly name: string;
  readonly stones: readonly Stone[];
  readonly rim: Crest;
}

export interface Stream {
  readonly kind: 'stream';
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly slope: number;
  readonly manning: number;
  readonly foot: number;
  readonly blockage: number;
  readonly edge: { readonly height: number; readonly length: number; readonly cd: number } | undefined;
  readonly level: number | 'empty' | undefined;
  readonly leak: Leak | undefined;
}

export interface Hose {
  readonly name: string;
  readonly flow: number;
  readonly on: boolean;
  /** The meter's reading now, m³. */
  readonly meter: number | undefined;
  /** All it can give, m³, as a tank truck's load; undefined: as long as it is open. */
  readonly volume?: number | undefined;
  /** Where the flow was reckoned from the pressure at the tap: an upper bound. */
  readonly by?: 'pressure' | undefined;
}

export interface Autofill {
  readonly flow: number;
  readonly set: number;
  readonly low: number;
  readonly in: 'pond' | 'vault';
}

export interface Weather {
  /** Depth rate m/s; one figure, or twelve monthly ones, January first. */
  readonly evaporation: number | readonly number[];
  /** Twelve monthly rain depth rates, m/s (a file's depth a month over the month's own length); undefined: none. */
  readonly rain: readonly number[] | undefined;
}

/** Limits the file overrides: [fail, pass] for drain-back, one figure for the others. */
export interface Limits {
  readonly 'drain-back'?: readonly [fail: number, pass: number];
  readonly channeling?: number;
  readonly headroom?: readonly [fail: number, pass: number];
  readonly velocity?: number;
}

/** A value the file did not give and the answer rests on. */
export interface Assumption {
  /** The key's place, `watercourse[0].manning`. */
  readonly place: string;
  readonly value: number | string | boolean;
  readonly band: readonly [low: number, high: number] | undefined;
  readonly from: 'default' | 'sketch';
}

export interface Scenario {
  readonly title: string;
  readonly notes: string;
  readonly display: 'us' | 'metric';
  /** Local clock time of t = 0, `YYYY-MM-DDTHH:MM`. */
  readonly starts: string;
  readonly water: { readonly temperature: number };
  readonly span: number;
  readonly start: 'running' | 'standing' | 'overnight';
  readonly pond: Pond;
  readonly intake: Intake;
  readonly vault: BasinParts;
  readonly pump: Pump;
  readonly plumbing: Plumbing;
  readonly filter: Filter | undefined;
  readonly watercourse: readonly (Pool | Stream)[];
  /** Settled volume of solids per volume of pond water, −: what clogs the media. */
  readonly debris: number;
  /** Waste into the pond, kg/s, and in the water at t = 0, kg/m³. */
  readonly load: number;
  readonly concentration: number;
  readonly weather: Weather;
  readonly hoses: readonly Hose[];
  readonly autofill: Autofill | undefined;
  readonly limits: Limits;
  readonly actions: readonly Action[];
  readonly assumed: readonly Assumption[];
  /** The file's value where it holds a sketch: what the site was expanded from. */
  readonly sketched?: (Readonly<Record<string, unknown>> & { readonly sketch: unknown }) | undefined;
}

/** One thing wrong with a file. */
export interface Problem {
  /** `watercourse[0].stones[1].crest`, or `line 12:7` for a syntax error. */
  readonly place: string;
  readonly found: string;
  readonly wanted: string;
}

export type Reading =
  | { readonly ok: true; readonly scenario: Scenario }
  | { readonly ok: false; readonly problems: readonly Problem[] };
