import { Control, type ControlOptions, CUT_OUT } from './network/control.ts';
import { LEDGER } from './network/ledger.ts';
import type { Network } from './network/network.ts';
import type { Settings } from './network/settings.ts';
import { Silting } from './network/silting.ts';
import type { LoggedEvent, Work } from './results/answer.ts';
import { RunFailure } from './results/failure.ts';
import { RunRecord } from './results/record.ts';
import type { Scenario } from './scenario/scenario.ts';
import { IntegrationFailure, Integrator } from './solver/integrate.ts';
import type { RosenbrockStep } from './solver/step.ts';
import type { Trigger } from './solver/trigger.ts';

/** Error allowed per step in any basin's volume, m³, and as a level over its floor, m; floors count at least this, m². */
const VOLUME_TOLERANCE = 3e-5;
const LEVEL_TOLERANCE = 1e-4;
const LEAST_FLOOR = 0.01;
const TOP_TOLERANCE = 2e-3;
/** A step may end this little below an empty basin, m³: rounding. */
const EMPTY = -1e-15;
/** First step after a switch, s: a rejection is cheap, a crawl is not. */
const FIRST_STEP = 0.2;
/** A run is capped beyond so many steps, so many more for each day it has come, and for each thing done by the clock. */
const STEPS_AT_LEAST = 60_000;
const STEPS_A_DAY = 1_500;
const STEPS_A_DEED = 50;
/** Times from which on a switch that fires counts as the cause of a capped run. */
const CYCLES = 100;
/** One switch that fires this often within a second chatters. */
const CHATTER = 50;

/** How often a switch has fired: in all, and since a moment not longer ago than a second. */
interface Fires {
  total: number;
  since: number;
  lately: number;
}

const NO_FIRES: [Trigger | undefined, Fires] = [undefined, { total: 0, since: 0, lately: 0 }];

export interface MarchOptions extends ControlOptions {
  readonly settings: Settings;
  readonly volumes: Float64Array;
  /** Multiplies the tolerance; 1 by default. */
  readonly tolerance?: number;
  /** How finely the deposits in the media are followed, 1 being fine enough; left out: they stay as they are. */
  readonly debris?: number;
}

/**
 * Tolerance of each volume, m³: one volume for all, but never more than a level over the basin's own floor. Pipework is
 * narrowest at its top; within a tolerance of centimeters there its level would swing between laminar and turbulent flow
 * for ever, the more so where no top feed lets it rest below.
 */
export function tolerances(network: Network, factor = 1): Float64Array {
  const { basins, circuit } = network.parts;
  const topLevel = circuit.feeds.topPipe ? TOP_TOLERANCE : TOP_TOLERANCE / 10;
  return Float64Array.from(basins, ({ storage }, i) => {
    const floor = Math.max(LEAST_FLOOR, storage.area[0]);
    const volume = Math.min(VOLUME_TOLERANCE, LEVEL_TOLERANCE * floor);
    const top = storage.area[storage.area.length - 1];
    return factor * (i === circuit.riser ? Math.min(volume, topLevel * top) : volume);
  });
}

/** The last flow of the pump's curve, m³/s. */
function greatestFlow({ parts }: Network): number {
  return Math.max(...parts.circuit.main.curve.flow);
}

/**
 * Carries a site through time: from stop to stop of its control, writing the record. Call `to` as often as you like
 * with later and later times.
 */
export class March {
  readonly record: RunRecord;
  readonly control: Control;
  private readonly integrator: Integrator;
  private readonly network: Network;
  private readonly silting: Silting | undefined;
  private readonly rates: [Float64Array, Float64Array];
  private readonly fires = new Map<Trigger, Fires>();
  private readonly onStep: (step: RosenbrockStep) => void;

  constructor(scenario: Scenario, network: Network, options: MarchOptions) {
    this.network = network;
    this.record = new RunRecord(network);
    this.control = new Control(scenario, network, options.settings, options);
    this.integrator = new Integrator(network, 0, options.volumes, {
      tolerance: tolerances(network, options.tolerance ?? 1),
      least: EMPTY,
      mostSteps: STEPS_AT_LEAST,
      stepsPerSecond: STEPS_A_DAY / 86400,
    });
    const { clogging } = network.parts;
    if (clogging && options.debris !== undefined)
      this.silting = new Silting(clogging, greatestFlow(network), options.debris);
    this.rates = [new Float64Array(network.size), new Float64Array(network.quadratures)];
    this.onStep = (step) => {
      const { time, state, quadratures } = this.integrator;
      if (this.record.full) throw new RunFailure('capped', time, 'record', 'the run takes more steps than it can hold');
      this.record.addStep(step, network.atStart, time, state, quadratures);
    };
    this.control.begin(this.integrator.state);
    this.openStretch(true);
  }

  get time(): number {
    return this.integrator.time;
  }

  /** Volumes at the present time, m³. */
  get volumes(): Float64Array {
    return this.integrator.state;
  }

  get events(): readonly LoggedEvent[] {
    return this.control.events;
  }

  get work(): Work {
    return { ...this.integrator.work };
  }

  /** Marches to a time, s; what falls on it is done when the march goes on beyond. */
  to(end: number): void {
    const { integrator, control } = this;
    try {
      while (integrator.time < end) {
        if (this.nextStop <= integrator.time) this.actByClock();
        const fired = integrator.advance(Math.min(end, this.nextStop), control.triggers, this.onStep);
        this.closeStretch();
        if (fired.length > 0) this.actByLevel(fired);
      }
    } catch (error) {
      if (error instanceof IntegrationFailure) throw this.explain(error);
      throw error;
    }
  }

  /** Does what falls on the end itself, so that its log is whole. */
  finish(): void {
    if (this.nextStop <= this.integrator.time) {
      this.actByClock();
      this.closeStretch();
    }
  }

  /** What is due by the clock, or the next count of the deposits. */
  private get nextStop(): number {
    return Math.min(this.control.nextStop(), this.silting?.next ?? Number.POSITIVE_INFINITY);
  }

  private countDeposits(): void {
    const { time, quadratures } = this.integrator;
    this.silting?.count(this.control, time, quadratures[LEDGER.media]);
  }

  private foreseeDeposits(disturbed: boolean): void {
    const { integrator, control, network, silting } = this;
    if (silting === undefined) return;
    network.rates(integrator.time, integrator.state, ...this.rates);
    const flow = network.parts.circuit.feeds.bottom.media;
    const { settled } = control.settings;
    control.set({ settled: silting.foresee(settled, integrator.time, flow, disturbed) });
    network.apply(control.settings);
  }

  private actByClock(): void {
    this.countDeposits();
    const before = this.control.settings;
    const logged = this.events.length;
    this.control.doDue(this.integrator.time, this.integrator.state);
    this.integrator.grant(STEPS_A_DEED * (this.events.length - logged));
    if (this.control.settings !== before) this.openStretch(this.control.settings.ramp !== before.ramp);
    else this.openStretch(false);
  }

  private actByLevel(fired: Trigger[]): void {
    const t = this.integrator.time;
    for (const trigger of fired) this.countFire(trigger, t);
    this.countDeposits();
    this.control.fire(fired, t, this.integrator.state);
    this.openStretch(true);
  }

  private openStretch(jump: boolean): void {
    const { integrator, control, network } = this;
    network.apply(control.settings);
    this.foreseeDeposits(jump);
    if (jump) integrator.restart(FIRST_STEP);
    this.record.openStretch(control.settings, integrator.time, integrator.state, integrator.quadratures);
    this.closeStretch();
  }

  /** Flows of the last row by the settings still in force. */
  private closeStretch(): void {
    const { network, integrator } = this;
    network.rates(integrator.time, integrator.state, ...this.rates);
    this.record.closeStretch(network.flow, network.mediaHead);
  }

  private countFire(trigger: Trigger, t: number): void {
    const fires = this.fires.get(trigger) ?? { total: 0, since: t, lately: 0 };
    this.fires.set(trigger, fires);
    fires.total++;
    if (t - fires.since > 1) {
      fires.since = t;
      fires.lately = 0;
    }
    if (++fires.lately >= CHATTER)
      throw new RunFailure('capped', t, this.control.nameOf(trigger), 'its switch fires over and over');
  }

  private explain(error: IntegrationFailure): RunFailure {
    const { kind, time } = error;
    const basin = this.network.parts.basins[error.component].name;
    if (kind === 'no solution') return new RunFailure(kind, time, basin, 'no step is small enough for its level');
    return this.cycling(time) ?? new RunFailure(kind, time, basin, 'its level takes more steps than it should');
  }

  /** A capped run whose steps went to one switch that fired again and again. */
  private cycling(time: number): RunFailure | undefined {
    const most = [...this.fires].reduce((a, b) => (b[1].total > a[1].total ? b : a), NO_FIRES);
    const [trigger, { total }] = most;
    if (trigger === undefined || total < CYCLES) return undefined;
    const stops = this.events.filter((e) => e.what === CUT_OUT).length;
    if (stops < CYCLES)
      return new RunFailure('capped', time, this.control.nameOf(trigger), `its switch fires ${total} times`);
    const what = `the pump cuts out and starts again ${stops} times: it draws the vault down faster than water comes in`;
    return new RunFailure('capped', time, 'vault', what);
  }
}
