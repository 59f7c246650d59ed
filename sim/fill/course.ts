import { volumeAt } from '../laws/storage.ts';
import { March } from '../march.ts';
import { assemble } from '../network/assemble.ts';
import type { Network } from '../network/network.ts';
import { layOwnLevels, pondStart, settingsOf, standingVolumes } from '../network/start.ts';
import { RunFailure } from '../results/failure.ts';
import type { RunRecord } from '../results/record.ts';
import type { Action, Deed, Scenario } from '../scenario/scenario.ts';
import { firstCrossing } from '../solver/dense.ts';
import { steadyVolumes } from '../steady.ts';
import { LONGEST, Schedule, type ScheduleOptions } from './schedule.ts';

const DAY = 86400;
/** A fill is given up when the hoses have given so many times the water that is missing, and a day on. */
const PATIENCE = 10;
/** It is marched on by this share of its time, or this long, s, until it is full. */
const STRIDE = 0.1;
const LEAST_STRIDE = 600;
const PUMP_ON = 'pump on';

export interface CourseOptions extends ScheduleOptions {
  /** Level of the pond, m, at which the pump is started; it stays off without. */
  readonly pumpAt?: number | undefined;
}

/**
 * Why a pond does not come to its mark: the hoses give too little against what is lost; the last hose is shut before;
 * it takes longer than three months; the pump, once started, draws air for good or no running balance is found.
 */
export type Never = 'weak' | 'shut' | 'long' | 'starves';

/** A fill as it was marched through, from the run's start. */
export interface FillCourse {
  readonly schedule: Schedule;
  readonly network: Network;
  readonly record: RunRecord;
  /** The pond stands at its mark, with the pump running where it was to be started; undefined: never. */
  readonly full: number | undefined;
  readonly never: Never | undefined;
  /** The pump was started; undefined where it was not. */
  readonly pumpOn: number | undefined;
  /** Water in all basins that a running site holds with the pond at its mark, m³; undefined where the pump stays off. */
  readonly running: number | undefined;
}

/** A pond of which the file names no level is filled from empty. */
export function toBeFilled(s: Scenario): Scenario {
  return s.pond.level === undefined ? { ...s, pond: { ...s.pond, level: 'empty' } } : s;
}

/**
 * Fills a site to its fill mark with the hoses by their schedule, evaporation and leaks going on. Rain that may not
 * come, the autofill and all other actions are left out. With the pump started underway the pond is full when the site
 * as a whole holds what it holds in its running balance at the mark.
 *
 * @param fillMark m
 */
export function fillCourse(site: Scenario, fillMark: number, options: CourseOptions = {}): FillCourse {
  const s = toBeFilled(site);
  const schedule = new Schedule(s, options);
  const filling = fillingSite(s);
  const network = assemble(filling);
  const volumes = standingVolumes(filling, network, pondStart(filling));
  layOwnLevels(filling, network, volumes);
  const { basins, pond, circuit } = network.parts;
  const everywhere = basins.map((_, i) => i);
  const running = options.pumpAt === undefined ? undefined : runningWater(s, fillMark);
  const hold = (i: number): number => volumeAt(basins[i].storage, fillMark);
  const missing =
    running === undefined
      ? Math.max(0, hold(pond) - volumes[pond]) + Math.max(0, hold(circuit.vault) - volumes[circuit.vault])
      : Math.max(0, running - total(volumes));
  const march = new March(filling, network, {
    settings: { ...settingsOf(filling, network, 0), autofill: false },
    volumes,
    actions: [...schedule.actions, atLevel(fillMark, options.pumpAt)],
    weather: true,
    cutOut: false,
    pumpSpeed: 0,
  });
  const pumpOn = (): number | undefined => march.events.find(({ what }) => what === PUMP_ON)?.t;
  const full = (): number | undefined => {
    if (options.pumpAt === undefined) return firstReached(march.record, [pond], hold(pond), 0);
    const on = pumpOn();
    return on === undefined || running === undefined ? undefined : firstReached(march.record, everywhere, running, on);
  };
  const lacksBalance = options.pumpAt !== undefined && running === undefined;
  const starved = marchOn(march, schedule, missing, () => full() !== undefined);
  const found = full();
  return {
    schedule,
    network,
    record: march.record,
    full: found,
    never: found === undefined ? (starved || lacksBalance ? 'starves' : whyNever(schedule, march, pond)) : undefined,
    pumpOn: pumpOn(),
    running,
  };
}

/** The site with its hoses shut, of no limit (both are the schedule's), and no rain. */
function fillingSite(s: Scenario): Scenario {
  return {
    ...s,
    hoses: s.hoses.map((hose) => ({ ...hose, on: false, volume: undefined })),
    weather: { ...s.weather, rain: undefined },
  };
}

/** What is done at a level: the pump is started at its own, or else the hoses are shut at the mark. */
function atLevel(fillMark: number, pumpAt: number | undefined): Action {
  const deed: Deed = pumpAt === undefined ? { do: 'hose', to: 'off', name: undefined } : { do: 'pump', to: 'on' };
  return { timing: { when: { basin: 'pond', crossing: 'rises', level: pumpAt ?? fillMark } }, deed, place: 'fill' };
}

/** Marches until it is full or there is no hope; true where the pump starved the march of its steps. */
function marchOn(march: March, schedule: Schedule, missing: number, done: () => boolean): boolean {
  const patience = Math.min(LONGEST, (schedule.timeFor(PATIENCE * missing) ?? LONGEST) + DAY, schedule.ends + 1);
  try {
    for (let t = 1.001 * (schedule.timeFor(missing) ?? patience); ; t += Math.max(STRIDE * t, LEAST_STRIDE)) {
      march.to(Math.min(t, patience));
      if (done() || t >= patience) return false;
    }
  } catch (error) {
    const pumped = march.events.some(({ what }) => what === PUMP_ON);
    if (pumped && error instanceof RunFailure && error.kind === 'capped') return true;
    throw error;
  }
}

function whyNever(schedule: Schedule, { time, record }: March, pond: number): Never {
  if (schedule.ends <= time) return 'shut';
  const half = record.volume(record.rowAt(time / 2), pond);
  const stillRises = record.volume(record.length - 1, pond) > half + RISES;
  return time >= LONGEST && stillRises ? 'long' : 'weak';
}

/** More water than this in half the time is a rise, m³. */
const RISES = 1e-3;

/** Water in all basins with the pump running and the pond at a level, without leaks, m³; undefined without a balance. */
function runningWater(s: Scenario, level: number): number | undefined {
  const network = assemble(s);
  try {
    return total(steadyVolumes(s, network, { ...settingsOf(s, network, s.pump.speed), leaks: [] }, level));
  } catch (error) {
    if (error instanceof RunFailure) return undefined;
    throw error;
  }
}

const total = (volumes: Float64Array): number => volumes.reduce((sum, v) => sum + v, 0);

/** First moment from another on at which some basins together hold a volume (m³); undefined where they never do. */
export function firstReached(
  record: RunRecord,
  basins: readonly number[],
  volume: number,
  after: number,
): number | undefined {
  const sum = (of: (row: number, basin: number) => number, row: number): number =>
    basins.reduce((all, basin) => all + of.call(record, row, basin), 0);
  let row = record.rowAt(after);
  if (sum(record.volume, row) >= volume) return record.time(row);
  for (; row + 1 < record.length; row++) {
    if (record.restarts(row + 1)) continue;
    const from = sum(record.volume, row);
    const to = sum(record.volume, row + 1);
    const theta = firstCrossing(from, to, sum(record.inner1, row), sum(record.inner2, row), volume, 1);
    if (theta >= 0) return record.time(row) + theta * (record.time(row + 1) - record.time(row));
  }
  return undefined;
}
