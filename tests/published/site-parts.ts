/** Parts of laboratory sites that several sources need: steady pumps, changing inflows, holes, tanks on a pipe. */
import type { RunRecord } from '../../sim/results/record.ts';
import type { Action, Hose, Pool, ProfilePoint, Pump, Scenario } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { labSite, levelAt, topFeed, vessel, walls } from './site.ts';
import { G, rootOf } from './units.ts';

export const COMPANION = 'as re-typed in the FOSSEE textbook companions; printed page not seen';

/** A figure that is computed when it is first asked for. */
export function once<T>(compute: () => T): () => T {
  let kept: { readonly value: T } | undefined;
  return () => {
    kept ??= { value: compute() };
    return kept.value;
  };
}

/** Effective area that passes under standard gravity what an orifice passes under a source's own g. */
export const holeArea = (coefficient: number, area: number, gravity: number): number =>
  coefficient * area * Math.sqrt(gravity / G);

/** Points of a profile whose area is a function of the height over its floor: straight between them. */
export function profileOf(area: (height: number) => number, top: number, pieces = 200): ProfilePoint[] {
  return Array.from({ length: pieces + 1 }, (_, i) => {
    const height = (top * i) / pieces;
    return [height, area(height)] as const;
  });
}

/** A pump that gives one flow, within a ten-thousandth, whatever it lifts up to some 500 m. */
export const steadyPump = (flow: number): Pump['curve'] => ({
  kind: 'points',
  points: [
    [0, 1000],
    [0.9999 * flow, 900],
    [1.0001 * flow, 1],
  ],
});

/** A vault that stands in open water, so that its level is the pond's but for a fraction of a millimeter. */
export const openIntake: Scenario['intake'] = { width: 1e4, elevation: -8, blockage: 0 };

/**
 * An inflow given at equal times and straight between them, as hoses that follow on each other: each runs for a piece
 * of an interval with the mean flow of its piece.
 */
export function hydrograph(
  step: number,
  flows: readonly number[],
  pieces: number,
): { readonly hoses: Hose[]; readonly actions: Action[] } {
  const count = (flows.length - 1) * pieces;
  const nameOf = (i: number): string => `inflow ${i}`;
  const hoses = Array.from({ length: count }, (_, i) => {
    const [interval, share] = [Math.floor(i / pieces), ((i % pieces) + 0.5) / pieces];
    const flow = flows[interval] + share * (flows[interval + 1] - flows[interval]);
    return { name: nameOf(i), flow, on: i === 0, meter: undefined };
  });
  const turn = (i: number, to: 'on' | 'off', at: number): Action => ({
    timing: { at },
    deed: { do: 'hose', to, name: nameOf(i) },
    place: `hose ${i} ${to}`,
  });
  const actions = hoses.flatMap((_, i) => {
    const end = ((i + 1) * step) / pieces;
    return i + 1 < count ? [turn(i, 'off', end), turn(i + 1, 'on', end)] : [turn(i, 'off', end)];
  });
  return { hoses, actions };
}

/** A pipe as wide as its tanks in which only the given loss counts: an orifice, or a source's own constant friction. */
export function lossOnly(
  k: number,
  area: number,
): { readonly diameter: number; readonly length: number; readonly k: number } {
  const diameter = 2;
  return { diameter, length: 0, k: k * ((Math.PI * diameter * diameter) / 4 / area) ** 2 };
}

export interface TwoTanks {
  readonly areas: readonly [upper: number, lower: number];
  /** Difference of levels at the start, m. */
  readonly difference: number;
  readonly pipe: Parameters<typeof topFeed>[2];
  readonly span: number;
  /** Whether a second pipe like the first runs beside it. */
  readonly twice?: boolean;
}

/** Two tanks joined by a pipe under water: the upper one is the riser, the lower one a pool. */
export function twoTanks({ areas, difference, pipe, span, twice }: TwoTanks): Scenario {
  const lower: Pool = vessel('lower', walls(areas[1], 0, 100), { level: 20 });
  const { to: _, outlet: __, ...second } = topFeed(0, 'lower', pipe);
  return labSite({
    span,
    watercourse: [lower],
    plumbing: {
      profile: walls(areas[0], 0, 100),
      level: 20 + difference,
      tee: 0,
      topFeed: topFeed(0, 'lower', pipe),
      bottomFeed: twice ? { ...second, inlet: 0 } : undefined,
    },
  });
}

/** Time at which something that rises all the while in a run comes to nothing, s; NaN if it does not. */
export function timeWhen(site: Scenario, rising: (record: RunRecord, t: number) => number): number {
  const { record } = run(site);
  if (rising(record, site.span) < 0) return Number.NaN;
  return rootOf((t) => rising(record, t), 0, site.span);
}

/** Time until the difference of level between two tanks has come down to a mark, s. */
export const timeToLevel = (site: Scenario, mark: number): number =>
  timeWhen(site, (record, t) => mark - (levelAt(record, 'riser', t) - levelAt(record, 'lower', t)));

/** A named flow of a run at a time at which a row of its record stands, m³/s. */
export function flowAt(record: RunRecord, name: string, t: number): number {
  return record.flow(record.rowAt(t), record.network.parts.flowNames.indexOf(name));
}

/** A named flow at the end of a site's span, m³/s. */
export const flowAtEnd = (site: Scenario, name: string): number => flowAt(run(site).record, name, site.span);
