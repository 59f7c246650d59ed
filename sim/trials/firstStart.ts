import { volumeAt } from '../laws/storage.ts';
import { March } from '../march.ts';
import { assemble } from '../network/assemble.ts';
import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';
import { dryVolumes, levelsOf } from '../network/start.ts';
import { type Extreme, extremeBetween, firstReach } from '../results/extreme.ts';
import { RunFailure } from '../results/failure.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { steadyVolumes } from '../steady.ts';
import { atOnce, type Trial, trialSettings } from './trial.ts';

const MINUTE = 60;
/** All is filled when no level moves this much in a minute, m; looked at for two hours at most. */
const SETTLED = 1e-4;
const LONGEST = 120;

/** How a first start is helped. */
export interface FirstStartHelp {
  /** Flow into the pond from the start, m³/s. */
  readonly hose?: number;
  /** Level of pond and vault at the start in place of the fill mark, m. */
  readonly level?: number;
}

export interface FirstStartTrial extends Trial {
  readonly start: number;
  readonly lowestVault: Extreme;
  readonly lowestPond: Extreme;
  /** Moment at which the vault is at the pump's minimum; null where it never is. */
  readonly starves: number | null;
  /** Water in pond, vault and all the rest at the start, m³. */
  readonly water: number;
}

/**
 * The first start of a dry water course: pond and vault at the fill mark, everything else empty, the pump switched on;
 * until all levels, the pipe's too, move less than 0.1 mm a minute, two hours at most. Leaks are off. Undefined where
 * the file has no fill mark.
 */
export function firstStart(s: Scenario, help: FirstStartHelp = {}): FirstStartTrial | undefined {
  const start = help.level ?? s.pond.fillMark;
  if (start === undefined) return undefined;
  const network = assemble(s);
  const volumes = dryVolumes(network, start);
  const march = new March(s, network, {
    settings: { ...tight(s, network, 0), hose: help.hose ?? 0 },
    volumes,
    actions: [atOnce({ do: 'pump', to: 'on' })],
    weather: false,
    cutOut: false,
    pumpSpeed: 0,
  });
  settle(march, network);
  const { record } = march;
  const { pond, circuit } = network.parts;
  const last = record.length - 1;
  const lowestVault = extremeBetween(record, circuit.vault, -1, 0, last);
  const minimum = volumeAt(network.parts.basins[circuit.vault].storage, s.pump.minimum);
  return {
    record,
    start,
    lowestVault,
    starves: lowestVault.value > s.pump.minimum ? null : firstReach(record, circuit.vault, minimum, -1, 0, last),
    lowestPond: extremeBetween(record, pond, -1, 0, last),
    water: total(volumes),
  };
}

/** A start that starves for good may take more steps than it is worth: what it showed until then is kept. */
function settle(march: March, network: Network): void {
  try {
    let before = levelsOf(network, march.volumes);
    for (let minute = 1; minute <= LONGEST; minute++) {
      march.to(minute * MINUTE);
      const now = levelsOf(network, march.volumes);
      if (now.every((z, i) => Math.abs(z - before[i]) < SETTLED)) return;
      before = now;
    }
  } catch (error) {
    if (!(error instanceof RunFailure && error.kind === 'capped')) throw error;
  }
}

/**
 * Water to be added after a first start to have the pond at its mark with the pump running, m³: what the running
 * balance at the mark holds less what stood at the start.
 *
 * @throws RunFailure where no running balance is found
 */
export function waterToAdd(s: Scenario, trial: FirstStartTrial): number {
  const network = assemble(s);
  const mark = s.pond.fillMark ?? trial.start;
  return total(steadyVolumes(s, network, tight(s, network, s.pump.speed), mark)) - trial.water;
}

/** Without leaks: a hole in the liner is not what a first start is asked about. */
function tight(s: Scenario, network: Network, speed: number): Settings {
  return { ...trialSettings(s, network, speed), leaks: [] };
}

function total(volumes: Float64Array): number {
  return volumes.reduce((sum, v) => sum + v, 0);
}
