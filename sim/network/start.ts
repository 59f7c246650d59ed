import { levelOf, volumeAt } from '../laws/storage.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Network } from './network.ts';
import { topOfPipework } from './plumbing.ts';
import type { Settings, Settled } from './settings.ts';

/** Settings of the file at t = 0, the pump at a speed, without weather. */
export function settingsOf(s: Scenario, network: Network, speed: number): Settings {
  const open: Record<string, number> = { intake: 1 - s.intake.blockage };
  for (const reach of s.watercourse) {
    if (reach.kind === 'stream') open[reach.name] = 1 - reach.blockage;
    else for (const stone of reach.stones) open[stone.name] = 1 - stone.blockage;
  }
  const { checkValve } = s.plumbing.main;
  return {
    ramp: { from: speed, to: speed, start: 0, end: 0 },
    bottomValve: s.plumbing.bottomFeed?.valve ?? 0,
    topValve: s.plumbing.topFeed?.valve ?? 0,
    check: checkValve.kind === 'unknown' ? { kind: 'sound' } : checkValve,
    open,
    hose: s.hoses.reduce((sum, hose) => sum + (hose.on ? hose.flow : 0), 0),
    autofill: s.autofill !== undefined,
    rain: 0,
    evaporation: 0,
    pumpOut: 0,
    leaks: network.parts.leaks,
    settled: settledAtStart(network),
    pondHeld: false,
  };
}

/** What the media hold by the file. */
function settledAtStart({ parts }: Network): Settled {
  const { atStart = [] } = parts.clogging ?? {};
  return { since: 0, held: atStart, perSecond: atStart.map(() => 0) };
}

/** Settings with nothing from outside: no hose, autofill or weather. */
export function withoutSupply(settings: Settings): Settings {
  return { ...settings, hose: 0, autofill: false, rain: 0, evaporation: 0 };
}

/** Level at which the pond starts, m: its own, or the fill mark; the floor where it is empty. */
export function pondStart(s: Scenario): number {
  if (s.pond.level === 'empty') return s.pond.profile[0][0];
  return s.pond.level ?? s.pond.fillMark ?? s.pond.profile[0][0];
}

/** Level at which the running balance holds the pond, m: its own, or the fill mark where it has none or is empty. */
export function pondInBalance(s: Scenario): number {
  const own = typeof s.pond.level === 'number' ? s.pond.level : undefined;
  return own ?? s.pond.fillMark ?? s.pond.profile[0][0];
}

/**
 * Volumes with everything standing still: the vault at the pond's level, filter and pools at the lowest point of their
 * lip or stones, streams dry, the pipe filled to the lower of the filter's level and its own top.
 */
export function standingVolumes(s: Scenario, network: Network, pondLevel: number): Float64Array {
  const { basins, circuit, pond } = network.parts;
  const level = new Float64Array(basins.length);
  const lowest = (crests: readonly { crest: readonly (readonly [number, number])[] }[]): number =>
    Math.min(...crests.flatMap((c) => c.crest.map(([, z]) => z)));
  basins.forEach((basin, i) => {
    const reach = s.watercourse.find((r) => r.name === basin.name);
    if (basin.name === 'filter' && s.filter) level[i] = lowest([s.filter.lip]);
    else if (reach?.kind === 'pool') level[i] = lowest(reach.stones);
    else level[i] = reach ? reach.foot : pondLevel;
  });
  level[circuit.riser] = Math.min(level[circuit.bottom], topOfPipework(s.plumbing));
  level[pond] = pondLevel;
  return Float64Array.from(basins, (basin, i) => volumeAt(basin.storage, level[i]));
}

/** All basins empty but pond and vault, which stand at a level: a dry first start. */
export function dryVolumes(network: Network, pondLevel: number): Float64Array {
  const { basins, circuit, pond } = network.parts;
  return Float64Array.from(basins, (basin, i) =>
    i === pond || i === circuit.vault ? volumeAt(basin.storage, pondLevel) : 0,
  );
}

/** Lays the levels that the file gives for single basins over volumes; an empty pond empties everything. */
export function layOwnLevels(s: Scenario, network: Network, volumes: Float64Array): void {
  if (s.pond.level === 'empty') volumes.fill(0);
  const own: Record<string, number | 'empty' | undefined> = {
    vault: s.vault.level,
    riser: s.plumbing.level,
    filter: s.filter?.level,
    ...Object.fromEntries(s.watercourse.map((r) => [r.name, r.level])),
  };
  network.parts.basins.forEach((basin, i) => {
    const level = own[basin.name];
    if (level === 'empty') volumes[i] = 0;
    else if (level !== undefined) volumes[i] = volumeAt(basin.storage, level);
  });
}

/** Levels of volumes, m, in the order of the network's basins. */
export function levelsOf(network: Network, volumes: Float64Array): Float64Array {
  return Float64Array.from(network.parts.basins, (basin, i) => levelOf(basin.storage, volumes[i]));
}
