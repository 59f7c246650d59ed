import { crestWidth } from '../balance.ts';
import { levelOf, volumeAt } from '../laws/storage.ts';
import { March } from '../march.ts';
import { assemble } from '../network/assemble.ts';
import { LEDGER } from '../network/ledger.ts';
import { pondInBalance } from '../network/start.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { steadyVolumes } from '../steady.ts';
import { atOnce, type Trial, trialSettings } from './trial.ts';

const DAY = 86400;
const FIRST_LOOK = 300;

export interface DammedTrial extends Trial {
  /** The stone or stream that is blocked, or 'lip'. */
  readonly dammed: string;
  /** Seconds until the vault is at the pump's minimum; null where it isn't within a day. */
  readonly starves: number | null;
  /** Depth over the pond's floor at that moment, or after the day, m. */
  readonly deepest: number;
  /** Water over pool rims, stream edges and the filter's rim by then, m³. */
  readonly lost: number;
}

/** Which part a leaf dam blocks: the main stone, else the widest, else the first stream, else the filter's lip. */
export function damSite(s: Scenario): string | undefined {
  const stones = s.watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
  const main = stones.find((stone) => stone.main);
  if (main !== undefined) return main.name;
  if (stones.length > 0) return stones.reduce((a, b) => (crestWidth(b.crest) > crestWidth(a.crest) ? b : a)).name;
  return s.watercourse[0]?.name ?? (s.filter ? 'lip' : undefined);
}

/**
 * From the running balance one stone, stream or lip is blocked wholly while the pump runs on: until the vault is at
 * the pump's minimum, a day at most. Undefined where nothing can be dammed.
 *
 * @throws RunFailure where no running balance is found or the march fails
 */
export function dammedFalls(s: Scenario): DammedTrial | undefined {
  const dammed = damSite(s);
  if (dammed === undefined) return undefined;
  const network = assemble(s);
  const settings = trialSettings(s, network, s.pump.speed);
  const march = new March(s, network, {
    settings,
    volumes: steadyVolumes(s, network, settings, pondInBalance(s)),
    actions: [atOnce({ do: 'blockage', of: dammed, to: 1 })],
    weather: false,
    cutOut: false,
    pumpSpeed: s.pump.speed,
  });
  let starves: number | null = isStarved(s, march) ? 0 : null;
  march.control.watch('vault', s.pump.minimum, -1, 'vault at minimum', (t) => {
    starves ??= t;
  });
  for (let t = FIRST_LOOK; starves === null && march.time < DAY; t *= 2) march.to(Math.min(t, DAY));
  return { dammed, starves, ...stateAt(s, march.record, starves ?? march.time) };
}

function isStarved(s: Scenario, { volumes, record }: March): boolean {
  const { basins, circuit } = record.network.parts;
  return volumes[circuit.vault] <= volumeAt(basins[circuit.vault].storage, s.pump.minimum);
}

function stateAt(s: Scenario, record: RunRecord, t: number): Pick<DammedTrial, 'record' | 'deepest' | 'lost'> {
  const { basins, pond } = record.network.parts;
  // The march has a row where the switch fired.
  const row = record.rowAt(t);
  const lost = record.ledger(row, LEDGER.edges) + record.ledger(row, LEDGER.filterRim);
  const level = levelOf(basins[pond].storage, record.volume(row, pond));
  return { record, deepest: level - s.pond.profile[0][0], lost };
}
