/** A site's answer while a hand is moving one of its figures: the run, the pump stops, the balance, and no more. */
import { balanceOrFailure } from '../balance.ts';
import type { BalanceAnswer, LimitOrigin } from '../results/answer.ts';
import { marksOf } from '../results/checks/drainBack.ts';
import { worstStop } from '../results/checks/runStops.ts';
import { RunFailure } from '../results/failure.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { answerOf, type Run, run } from '../simulate.ts';
import { AT_REST, type Kept, keptSite, type PondRise, stopPump, stopWithValveFailed } from '../trials/stop.ts';

/** A pump stop in figures: m, s and m³. */
export interface StopFigures {
  readonly rise: number;
  /** Seconds from the stop to the highest level, and until nine tenths of the rise have come. */
  readonly took: number;
  readonly soon: number;
  /** Edge less highest level; negative where the pond runs over. */
  readonly below: number;
  readonly overRim: number;
  readonly overflow: number;
}

export interface Stops {
  /** Pond level from which the trials stop the pump, m. */
  readonly level: number;
  /** The site as it is: the worse of its trial and the stops of its own run. */
  readonly asIs: StopFigures & { readonly where: 'run' | 'trial' };
  readonly sound: StopFigures;
  readonly failed: StopFigures;
  /** Room wanted below the edge, m: at the least, and better. */
  readonly fail: number;
  readonly pass: number;
  readonly origin: LimitOrigin;
}

export interface QuickAnswer extends Run {
  /** undefined where the file names no level to keep, or none can be kept. */
  readonly stops: Stops | undefined;
  /** undefined where the water course finds none. */
  readonly balance: BalanceAnswer | undefined;
}

/**
 * Runs a site and stops its pump, check valve sound and failed: no bands, no mends, no other trials or checks.
 *
 * @throws RunFailure where the run is capped or has no solution
 */
export function quickAnswer(s: Scenario): QuickAnswer {
  const march = run(s);
  const { record } = march;
  const found = balanceOrFailure(s);
  return {
    answer: answerOf(s, march),
    record,
    stops: stopsOf(s, record),
    balance: found instanceof RunFailure ? undefined : found.answer,
  };
}

/** What the pump stops of a site come to; undefined where it has none to ask about. */
export function stopsOf(s: Scenario, record: RunRecord): Stops | undefined {
  const kept = attempt(() => keptSite(s));
  return kept && attempt(() => stopsFrom(kept, record));
}

function stopsFrom(kept: Kept, record: RunRecord): Stops {
  const { scenario } = kept;
  const trial = stopPump(kept);
  const inRun = worstStop(scenario, record);
  const worse = inRun !== undefined && inRun.below < trial.below - AT_REST ? inRun : undefined;
  const { kind } = scenario.plumbing.main.checkValve;
  const holds = kind === 'sound' || kind === 'unknown';
  return {
    level: kept.level,
    asIs: { ...figuresOf(worse ?? trial), where: worse ? 'run' : 'trial' },
    sound: figuresOf(holds ? trial : stopPump(kept, { check: { kind: 'sound' } })),
    failed: figuresOf(stopWithValveFailed(kept).trial),
    ...marksOf(scenario),
  };
}

function figuresOf({ rise, highest, at, soon, below, overRim, overflow }: PondRise): StopFigures {
  return { rise, took: highest.t - at, soon, below, overRim, overflow };
}

function attempt<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}
