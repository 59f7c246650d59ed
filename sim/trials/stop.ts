import { levelOf, volumeAt } from '../laws/storage.ts';
import { March } from '../march.ts';
import { assemble } from '../network/assemble.ts';
import { LEDGER } from '../network/ledger.ts';
import type { CheckState } from '../network/mainLine.ts';
import type { Network } from '../network/network.ts';
import { settingsOf } from '../network/start.ts';
import { type Extreme, extremeBetween, firstReach } from '../results/extreme.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { steadyVolumes } from '../steady.ts';
import { keptLevel } from './keptLevel.ts';
import { atOnce, lowestPoint, type Trial, trialSettings } from './trial.ts';

const HOUR = 3600;
/** The pond has come to rest when it rises less than this in an hour, m; looked at for a day at most. */
export const AT_REST = 1e-4;
export const LONGEST = 24;
const NINE_TENTHS = 0.9;
/** Rain in the hour after a stop that a pond should also be able to take, m. Our default. */
export const SHOWER = 0.025;

/** A site in its running balance, the pond as high as it is kept: where a pump stop begins. */
export interface Kept {
  readonly scenario: Scenario;
  readonly network: Network;
  readonly volumes: Float64Array;
  /** Of the pond, m. */
  readonly level: number;
}

/** What else goes wrong at the moment of the stop. */
export interface StopTroubles {
  /** In place of the file's check valve. */
  readonly check?: CheckState;
  readonly topValve?: number;
  /** Depth of rain in the hour after the stop, m. */
  readonly rain?: number;
}

/** How the pond rises after a pump stop, in a trial or within a run. */
export interface PondRise extends Trial {
  /** Moment of the stop in the record, s. */
  readonly at: number;
  /** Pond level at the stop, m. */
  readonly start: number;
  /** Highest pond level, and its moment in the record. */
  readonly highest: Extreme;
  readonly rise: number;
  /** Seconds after the stop until nine tenths of the rise have come. */
  readonly soon: number;
  /** Lowest point of the pond's edge less the highest level, m; negative where water runs over. */
  readonly below: number;
  /** Lost over the pond's edge and down the overflow pipe from the stop on, m³. */
  readonly overRim: number;
  readonly overflow: number;
}

/**
 * The running balance from which the pump is stopped; undefined where the file names no level to keep.
 *
 * @throws RunFailure where no running balance is found
 */
export function keptSite(scenario: Scenario): Kept | undefined {
  const network = assemble(scenario);
  const level = keptLevel(scenario, network);
  if (level === undefined) return undefined;
  const volumes = steadyVolumes(scenario, network, settingsOf(scenario, network, scenario.pump.speed), level);
  return { scenario, network, volumes, level };
}

/** The same balance with the overflow pipe blocked: it plays no part while the pond is held. */
export function overflowBlocked(kept: Kept): Kept {
  const { pond } = kept.scenario;
  if (pond.overflow === undefined) return kept;
  const scenario = { ...kept.scenario, pond: { ...pond, overflow: undefined } };
  return { ...kept, scenario, network: assemble(scenario) };
}

/**
 * Stops the pump and lets the water come back until the pond has risen less than 0.1 mm in the last hour, looked at
 * from the first hour on, a day at most. A fixed short time would miss what seeps for hours.
 *
 * @throws RunFailure where the march fails
 */
export function stopPump(kept: Kept, troubles: StopTroubles = {}): PondRise {
  const { scenario, network } = kept;
  const { pond, basins } = network.parts;
  const settings = trialSettings(scenario, network, scenario.pump.speed);
  const storm = { do: 'storm', depth: troubles.rain ?? 0, lasting: HOUR, shape: 'even' } as const;
  const march = new March(scenario, network, {
    settings: {
      ...settings,
      check: troubles.check ?? settings.check,
      topValve: troubles.topValve ?? settings.topValve,
    },
    volumes: kept.volumes,
    actions: [atOnce({ do: 'pump', to: 'off' }), ...(storm.depth > 0 ? [atOnce(storm)] : [])],
    weather: false,
    cutOut: false,
    pumpSpeed: scenario.pump.speed,
  });
  let before = kept.level;
  for (let hour = 1; hour <= LONGEST; hour++) {
    march.to(hour * HOUR);
    const now = levelOf(basins[pond].storage, march.volumes[pond]);
    if (now - before < AT_REST) break;
    before = now;
  }
  return pondRise(scenario, march.record, 0, march.record.length - 1);
}

/** The pump stop of a site as it is; undefined where no level is kept. */
export function stopTrial(s: Scenario): PondRise | undefined {
  const kept = keptSite(s);
  return kept && stopPump(kept);
}

/**
 * The pond's rise between two rows of a record.
 *
 * @param from row at which the pump is stopped
 * @param to last row looked at
 */
export function pondRise(s: Scenario, record: RunRecord, from: number, to: number): PondRise {
  const { pond, basins } = record.network.parts;
  const { storage } = basins[pond];
  const at = record.time(from);
  const start = levelOf(storage, record.volume(from, pond));
  const highest = extremeBetween(record, pond, 1, from, to);
  const rise = highest.value - start;
  const most = volumeAt(storage, start + NINE_TENTHS * rise);
  const lost = (entry: number): number => record.ledger(to, entry) - record.ledger(from, entry);
  return {
    record,
    at,
    start,
    highest,
    rise,
    soon: firstReach(record, pond, most, 1, from, to) - at,
    below: lowestPoint(s.pond.rim.crest) - highest.value,
    overRim: lost(LEDGER.rim),
    overflow: lost(LEDGER.overflow),
  };
}

/** A stop with a failed check valve, and what else had gone wrong in it. */
export interface FailedStop {
  readonly trial: PondRise;
  readonly troubles: StopTroubles;
}

/** The stop with a failed check valve: the worse of the top valve as it is set and shut at that moment. */
export function stopWithValveFailed(kept: Kept): FailedStop {
  const failed: StopTroubles = { check: { kind: 'none' } };
  const asSet = stopPump(kept, failed);
  const { topFeed } = kept.scenario.plumbing;
  if (topFeed === undefined || topFeed.valve === 0) return { trial: asSet, troubles: failed };
  const shut = { ...failed, topValve: 0 };
  const topShut = stopPump(kept, shut);
  return topShut.below < asSet.below ? { trial: topShut, troubles: shut } : { trial: asSet, troubles: failed };
}
