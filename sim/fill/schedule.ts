import type { Action, Scenario } from '../scenario/scenario.ts';
import { momentsOfDay } from './clock.ts';

/** A fill that takes longer comes to no end, s. */
export const LONGEST = 92 * 86400;

/** A time in which a hose runs, s from the run's start; `to` Infinity where nothing shuts it. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** How the hoses are opened and shut. */
export interface ScheduleOptions {
  /** Moment of the first opening, s from the run's start, in place of the file's. */
  readonly open?: number | undefined;
  /** Every night all hoses are shut from one time of day to another, s after midnight. */
  readonly nights?: readonly [from: number, to: number] | undefined;
  /** IANA name of the zone by whose clock the nights are. */
  readonly zone?: string | undefined;
}

/**
 * When each hose runs: as the file's timed actions have it, all of them from the start where it opens none. Hoses shut
 * at a level are left open, since when to shut them is what is asked; one with a limited volume shuts when it has given
 * it.
 */
export class Schedule {
  /** Of each hose in the order of the file. */
  readonly stretches: readonly (readonly Stretch[])[];
  private readonly s: Scenario;

  constructor(s: Scenario, options: ScheduleOptions = {}) {
    this.s = s;
    const byFile = s.hoses.map((_, i) => stretchesOf(s, i));
    const asked = byFile.some((of) => of.length > 0) ? byFile : s.hoses.map(() => [{ from: 0, to: Infinity }]);
    const first = Math.min(...asked.flatMap((of) => of.map(({ from }) => from)));
    const nights = nightsOf(s, options);
    this.stretches = asked.map((of, i) => {
      const opened = options.open === undefined ? of : openedAt(of, first, options.open);
      return limited(without(opened, nights), s.hoses[i].flow, s.hoses[i].volume);
    });
  }

  /** Moment at which the first hose is opened; Infinity where none is. */
  get opened(): number {
    return Math.min(...this.stretches.flatMap((of) => of.map(({ from }) => from)), Infinity);
  }

  /** Moment from which on no hose runs any more; Infinity where one runs on. */
  get ends(): number {
    return Math.max(...this.stretches.flatMap((of) => of.map(({ to }) => to)), 0);
  }

  /** What a hose has given by a moment, m³. */
  given(hose: number, t: number): number {
    const time = this.stretches[hose].reduce((sum, { from, to }) => sum + Math.max(0, Math.min(to, t) - from), 0);
    return this.s.hoses[hose].flow * time;
  }

  /** What all hoses have given by a moment, m³. */
  givenByAll(t: number): number {
    return this.s.hoses.reduce((sum, _, i) => sum + this.given(i, t), 0);
  }

  /** All that run at a moment together, m³/s. */
  flowAt(t: number): number {
    return this.s.hoses.reduce(
      (sum, { flow }, i) => sum + (this.stretches[i].some(({ from, to }) => from <= t && t < to) ? flow : 0),
      0,
    );
  }

  /** Moments at which a hose is opened or shut, ascending. */
  get turns(): readonly number[] {
    const all = this.stretches.flatMap((of) => of.flatMap(({ from, to }) => [from, to])).filter(Number.isFinite);
    return [...new Set(all)].sort((a, b) => a - b);
  }

  /** When all hoses have given a volume, s; undefined where they never do within the longest fill. */
  timeFor(volume: number): number | undefined {
    let [t, given] = [0, 0];
    for (const next of [...this.turns.filter((turn) => turn > 0 && turn < LONGEST), LONGEST]) {
      const flow = this.flowAt(t);
      if (given + flow * (next - t) >= volume) return flow > 0 ? t + (volume - given) / flow : t;
      given += flow * (next - t);
      t = next;
    }
    return undefined;
  }

  /** The same as actions of a run. */
  get actions(): Action[] {
    return this.stretches.flatMap((of, i) =>
      of.flatMap(({ from, to }): Action[] => {
        const turn = (at: number, on: 'on' | 'off'): Action[] =>
          at < LONGEST
            ? [{ timing: { at }, deed: { do: 'hose', to: on, name: this.s.hoses[i].name }, place: 'fill' }]
            : [];
        return [...turn(from, 'on'), ...turn(to, 'off')];
      }),
    );
  }
}

/** Stretches of one hose by the file: on at the start, and the actions that come by the clock. */
function stretchesOf(s: Scenario, hose: number): Stretch[] {
  const turns = s.actions.flatMap((action): { at: number; on: boolean }[] => {
    if ('daily' in action || action.deed.do !== 'hose' || !('at' in action.timing)) return [];
    const { name, to } = action.deed;
    return name === undefined || name === s.hoses[hose].name ? [{ at: action.timing.at, on: to === 'on' }] : [];
  });
  const stretches: Stretch[] = [];
  let from: number | undefined = s.hoses[hose].on ? 0 : undefined;
  for (const { at, on } of turns.sort((a, b) => a.at - b.at)) {
    if (on) from ??= at;
    else if (from !== undefined) {
      if (at > from) stretches.push({ from, to: at });
      from = undefined;
    }
  }
  return from === undefined ? stretches : [...stretches, { from, to: Infinity }];
}

/** The stretches with the first opening of all moved to another moment: what lay before it falls away. */
function openedAt(stretches: readonly Stretch[], first: number, open: number): Stretch[] {
  return stretches.flatMap(({ from, to }) => {
    const begin = from === first ? open : Math.max(from, open);
    return to > begin ? [{ from: begin, to }] : [];
  });
}

function nightsOf({ starts }: Scenario, { nights, zone }: ScheduleOptions): Stretch[] {
  if (nights === undefined || nights[0] === nights[1]) return [];
  const [shut, open] = nights.map((time) => momentsOfDay(starts, time, LONGEST, zone));
  return shut.map((from) => ({ from, to: open.find((t) => t > from) ?? Infinity }));
}

function without(stretches: readonly Stretch[], nights: readonly Stretch[]): Stretch[] {
  return nights.reduce<Stretch[]>(
    (left, night) =>
      left.flatMap(({ from, to }) => {
        if (night.to <= from || night.from >= to) return [{ from, to }];
        const before = night.from > from ? [{ from, to: night.from }] : [];
        return night.to < to ? [...before, { from: night.to, to }] : before;
      }),
    [...stretches],
  );
}

/** The stretches until a volume has been given. */
function limited(stretches: readonly Stretch[], flow: number, volume: number | undefined): Stretch[] {
  if (volume === undefined || flow <= 0) return [...stretches];
  let left = volume / flow;
  return stretches.flatMap(({ from, to }) => {
    const lasting = Math.min(left, to - from);
    left -= lasting;
    return lasting > 0 ? [{ from, to: from + lasting }] : [];
  });
}
