import { extremeBetween } from '../results/extreme.ts';
import { RunFailure } from '../results/failure.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type FirstStartTrial, firstStart } from '../trials/firstStart.ts';
import type { Moment } from './clock.ts';
import type { FillCourse } from './course.ts';

/** What becomes of the pond when the pump is started underway: filter, pools, streams and pipes take their water. */
export interface Upstairs {
  /** Level at which the pump is started, m, and when. */
  readonly level: number;
  readonly on: Moment;
  /** How far the pond falls from there, m, with the hoses as they run, and when it is lowest. */
  readonly falls: number;
  readonly lowest: Moment;
  /** How far it would fall with all hoses shut and the watercourse dry, m; null where that was not found. */
  readonly fallsShut: number | null;
  /** Water still missing when the pump is started, m³; null where no running balance was found. */
  readonly missing: number | null;
  /** Run in from there until the pond stands at its mark, m³, and how long that takes, s; null: it never does. */
  readonly more: number | null;
  readonly lasts: number | null;
  /** Lowest level of the vault, m, against the least the pump needs. */
  readonly vault: { readonly level: number; readonly minimum: number; readonly at: Moment };
  /** The pump draws air: with the hoses as they run, and with all of them shut. */
  readonly starves: boolean;
  readonly starvesShut: boolean | null;
}

/** Undefined where the pump is not started. */
export function upstairsOf(
  s: Scenario,
  { record, network, schedule, full, pumpOn, running }: FillCourse,
  level: number | undefined,
  moment: (t: number) => Moment,
): Upstairs | undefined {
  if (level === undefined || pumpOn === undefined) return undefined;
  const { pond, circuit } = network.parts;
  const from = record.rowAt(pumpOn);
  const to = full === undefined ? record.length - 1 : Math.max(from, record.rowAt(full));
  const lowest = extremeBetween(record, pond, -1, from, to);
  const vault = extremeBetween(record, circuit.vault, -1, from, to);
  const shut = startShut(s, level);
  const held = network.parts.basins.reduce((sum, _, i) => sum + record.volume(from, i), 0);
  return {
    level,
    on: moment(pumpOn),
    falls: Math.max(0, level - lowest.value),
    lowest: moment(lowest.t),
    fallsShut: shut === undefined ? null : shut.start - shut.lowestPond.value,
    missing: running === undefined ? null : running - held,
    more: full === undefined ? null : schedule.givenByAll(full) - schedule.givenByAll(pumpOn),
    lasts: full === undefined ? null : full - pumpOn,
    vault: { level: vault.value, minimum: s.pump.minimum, at: moment(vault.t) },
    starves: vault.value < s.pump.minimum,
    starvesShut: shut === undefined ? null : shut.lowestVault.value < s.pump.minimum,
  };
}

function startShut(s: Scenario, level: number): FirstStartTrial | undefined {
  try {
    return firstStart(s, { level });
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}
