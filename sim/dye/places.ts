import type { Network } from '../network/network.ts';
import { filterBasin } from './filterState.ts';

/** Numbers of the places between which dye is carried; the gap is no such place, for its water does not mix. */
export interface Places {
  readonly plenum: number;
  /** From the lower end of the media up. */
  readonly tanks: readonly number[];
  /** Free water's dye by how it came there: through the media, round them, or else. */
  readonly through: number;
  readonly round: number;
  readonly other: number;
  /** Still water beside the media. */
  readonly beside: number;
  /** By number of the network's basins; the filter's own is that of what comes into its free water. */
  readonly basins: readonly number[];
  readonly lost: number;
  /** Places from here on hold no dye between two steps, or only count it. */
  readonly held: number;
  /** Dye that goes into the gap at an end and what comes out of it during a step. */
  readonly intoLow: number;
  readonly intoHigh: number;
  readonly outOfLow: number;
  readonly outOfHigh: number;
  /** Counts of what passed the lip by each way, and of what came in by each feed. */
  readonly passed: readonly [through: number, round: number, other: number];
  readonly broughtBottom: number;
  readonly broughtTop: number;
  readonly size: number;
}

export function placesOf(network: Network, tanks: number): Places {
  let size = 0;
  const next = (): number => size++;
  const plenum = next();
  const tank = Array.from({ length: tanks }, next);
  const [through, round, other, beside] = [next(), next(), next(), next()];
  const filter = filterBasin(network);
  const basins = network.parts.basins.map((_, i) => (i === filter ? other : next()));
  const lost = next();
  const held = size;
  const [intoLow, intoHigh, outOfLow, outOfHigh] = [next(), next(), next(), next()];
  const passed = [next(), next(), next()] as const;
  const [broughtBottom, broughtTop] = [next(), next()];
  return {
    plenum,
    tanks: tank,
    through,
    round,
    other,
    beside,
    basins,
    lost,
    held,
    intoLow,
    intoHigh,
    outOfLow,
    outOfHigh,
    passed,
    broughtBottom,
    broughtTop,
    size,
  };
}
