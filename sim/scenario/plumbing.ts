import type { Leak, ProfilePoint } from './geometry.ts';

export interface Pump {
  /** Maker's points (flow m³/s, head m), or the two figures on the box. */
  readonly curve:
    | { readonly kind: 'points'; readonly points: readonly (readonly [flow: number, head: number])[] }
    | { readonly kind: 'box'; readonly flow: number; readonly head: number };
  /** Wire power: constant W, points (flow, W), or one efficiency; undefined: unknown, energy counts 0. */
  readonly power:
    | { readonly kind: 'constant'; readonly watts: number }
    | { readonly kind: 'points'; readonly points: readonly (readonly [flow: number, watts: number])[] }
    | { readonly kind: 'efficiency'; readonly efficiency: number }
    | undefined;
  readonly suction: number;
  readonly minimum: number;
  /** K on the main's velocity head of the pump standing still; undefined: from the curve. */
  readonly standingLoss: number | undefined;
  readonly running: boolean;
  /** While it is on, of the full speed that its curve is for, −. */
  readonly speed: number;
  readonly cutOut: { readonly below: number; readonly restart: number } | undefined;
}

export type FittingName = 'elbow90' | 'elbow45' | 'ballValve' | 'checkSwing' | 'entrance' | 'exit';

export interface PipeRun {
  /** Inside diameter, m (a nominal `size` has been looked up). */
  readonly diameter: number;
  readonly length: number;
  readonly roughness: number;
  readonly fittings: Readonly<Partial<Record<FittingName, number>>>;
  /** Further loss coefficients, on this pipe's velocity head. */
  readonly k: number;
}

/** sound (or unknown, which counts as sound but is asked about), none, or leaking with an effective area m². */
export type CheckValve =
  | { readonly kind: 'sound' }
  | { readonly kind: 'none' }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'leaking'; readonly area: number };

export interface MainLine extends PipeRun {
  readonly checkValve: CheckValve;
}

export interface Feed extends PipeRun {
  /** Opening of the valve, 0 shut .. 1 open (1 − handle angle/90°). */
  readonly valve: number;
  readonly law: 'ball' | 'cock';
}

export interface BottomFeed extends Feed {
  readonly inlet: number;
}

export interface TopFeed extends Feed {
  readonly outlet: number;
  /** 'filter', or the name of a pool or stream, or 'pond'. Resolved: where no filter stands it names a basin. */
  readonly to: string;
}

export interface Plumbing {
  readonly main: MainLine;
  readonly tee: number;
  readonly bottomFeed: BottomFeed | undefined;
  readonly topFeed: TopFeed | undefined;
  /** The riser's own shape, where the pipe's route is known. */
  readonly profile: readonly ProfilePoint[] | undefined;
  readonly level: number | 'empty' | undefined;
  readonly leak: Leak | undefined;
}
