/** The site as a cut, in meters: stations along the water's way from left to right, elevations as surveyed. */
import type { Filter, Pool, Scenario, Stone, Stream } from '../../sim/scenario/scenario.ts';
import type { Cut, Spot } from './cut.ts';

/** What passes over an edge and falls: where the edge is and how wide the water is there. */
export interface Brink {
  readonly x: number;
  /** Lowest point of the crest, m. */
  readonly z: number;
  /** Width across the flow, m. */
  readonly width: number;
  /** Name of the flow. */
  readonly flow: string;
}

export interface FilterScene {
  readonly filter: Filter;
  readonly cut: Cut;
  readonly wall: number;
  readonly rim: number;
  readonly brink: Brink;
}

export interface StoneScene {
  readonly place: string;
  readonly stone: Stone;
  /** The main stone lies in the cut, the others beyond it. */
  readonly cut: boolean;
  readonly left: number;
  readonly right: number;
  readonly crest: number;
  readonly under: number;
  readonly brink: Brink;
}

export interface PoolScene {
  readonly kind: 'pool';
  readonly place: string;
  readonly reach: Pool;
  readonly cut: Cut;
  readonly rim: number;
  readonly stones: readonly StoneScene[];
  readonly brink: Brink;
  /** Under side of what lies at the brink. */
  readonly under: number;
}

export interface StreamScene {
  readonly kind: 'stream';
  readonly place: string;
  readonly reach: Stream;
  readonly left: number;
  readonly right: number;
  readonly brink: Brink;
  readonly under: number;
}

export type ReachScene = PoolScene | StreamScene;

/** A dry wall of stones under a brink, in the basin it falls to. */
export interface WallScene {
  readonly name: string;
  /** Number of the basin it stands in; the pond's is the last. */
  readonly into: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

export interface PondScene {
  readonly cut: Cut;
  readonly rim: number;
}

export interface VaultScene {
  readonly cut: Cut;
  readonly wall: number;
  readonly top: number;
  /** Lip of the intake. */
  readonly lip: number;
}

/** Sizes of what has none of its own, m: about a fourteenth of the length and a sixth of the height of the cut. */
export interface Units {
  readonly u: number;
  readonly v: number;
}

/** A pipe of the cut: where it runs, and how wide it is. */
export interface PipeRoute {
  readonly name: 'main' | 'bottom feed' | 'top feed';
  readonly place: string;
  readonly spots: readonly Spot[];
  readonly diameter: number;
  /** Of the valve's middle; the pipe runs level or upright there. */
  readonly valve: Spot | undefined;
  readonly valveUpright: boolean;
}

export interface PipeScene {
  readonly main: PipeRoute;
  readonly bottomFeed: PipeRoute | undefined;
  readonly topFeed: PipeRoute | undefined;
  readonly tee: Spot;
  readonly pump: { readonly x: number; readonly suction: number; readonly top: number };
  readonly checkValve: Spot;
  /** Basin into which each feed runs. */
  readonly bottomTo: string;
  readonly topTo: string;
  readonly low: number;
  readonly top: number;
}

/** A brink and the number of the basin below it, in the order of the water's way; the pond's is the last. */
export interface Fall {
  readonly name: string;
  readonly brink: Brink;
  readonly under: number;
  readonly into: number;
}

export interface Course {
  readonly filter: FilterScene | undefined;
  readonly reaches: readonly ReachScene[];
  readonly falls: readonly Fall[];
  /** Station of the riser. */
  readonly riser: number;
  /** Station at which the pond begins. */
  readonly end: number;
}

/** What the laying out goes by: the water course, pond and vault at their stations. */
export interface Laid extends Course {
  readonly scenario: Scenario;
  readonly units: Units;
  readonly pond: PondScene;
  readonly vault: VaultScene;
}

export interface Scene extends Laid {
  readonly walls: readonly WallScene[];
  readonly pipes: PipeScene;
  /** Surface of the earth from the left frame to the right one, through under vessels and liners. */
  readonly earth: readonly Spot[];
  /** The liner, in as many runs as there are. */
  readonly liner: readonly (readonly Spot[])[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const lowest = (crest: readonly (readonly [number, number])[]): number => Math.min(...crest.map(([, z]) => z));
export const crestWidth = (crest: readonly (readonly [number, number])[]): number =>
  crest[crest.length - 1][0] - crest[0][0];

/** Bed of a stream at a station, m. */
export function bedAt(stream: StreamScene, x: number): number {
  return stream.reach.foot + stream.reach.slope * (stream.right - x);
}
