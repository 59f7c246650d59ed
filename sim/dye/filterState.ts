import { gapWidth } from '../network/media.ts';
import type { Network } from '../network/network.ts';
import { depositsAt } from '../results/deposits.ts';
import type { RunRecord } from '../results/record.ts';
import type { Filter, Media, Scenario } from '../scenario/scenario.ts';
import type { FilterFlows } from './figures.ts';
import { type Waters, watersAt } from './waters.ts';

/** A filter in which dye can be followed: one with media. */
export interface FilterWithMedia extends Filter {
  readonly media: Media;
}

export function filterWithMedia({ filter }: Scenario): FilterWithMedia | undefined {
  return filter?.media ? { ...filter, media: filter.media } : undefined;
}

/** Porosity of each layer from the bottom up at a moment of a record: what the deposit leaves of it. */
export function porosityAt({ layers }: Media, record: RunRecord, t: number): number[] {
  const { clogging } = record.network.parts;
  const held = depositsAt(record, t);
  return layers.map(({ name, porosity }, i) => clogging?.porosity(i, held[name] ?? 0) ?? porosity);
}

/** Number of the filter among the basins of a network. */
export const filterBasin = (network: Network): number =>
  network.parts.basins.findIndex(({ name }) => name === 'filter');

/** Waters of the filter of a network as it was asked last. */
export function watersOf(network: Network, media: Media, porosity: readonly number[]): Waters {
  const filter = filterBasin(network);
  const { basins, circuit } = network.parts;
  const width = gapWidth(media, network.mediaHead, circuit.feeds.liftHead);
  return watersAt(basins[filter].storage, media, porosity, width, network.level[filter]);
}

/** Flows of the filter of a network as it was asked last; the top feed counts where it ends in the filter. */
export function flowsOf({ flow, parts }: Network): FilterFlows {
  const { circuit } = parts;
  const named = (i: number): number => (i >= 0 ? flow[i] : 0);
  return {
    bottom: named(circuit.flow.bottom),
    media: named(circuit.flow.media),
    gap: named(circuit.flow.gap),
    top: circuit.top === circuit.bottom ? named(circuit.flow.top) : 0,
  };
}
