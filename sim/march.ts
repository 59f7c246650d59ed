import { Control, type ControlOptions } from './network/control.ts';
import type { Network } from './network/network.ts';
import type { Settings } from './network/settings.ts';
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
/** A run is capped beyond so many steps, and so many more a day. */
const STEPS_AT_LEAST = 60_000;
const STEPS_A_DAY = 1_500;
/** Cut-outs from which they count as the cause of a capped run. */
const CYCLES = 100;
/** One switch that fires this often within a second chatters. */
const CHATTER = 50;

export interface MarchOptions extends ControlOptions {
  readonly settings: Settings;
  readonly volumes: Float64Array;
  /** How long it may take in all, s: bounds its steps. */
  readonly span: number;
  /** Multiplies the tolerance; 1 by default. */
  readonly tolerance?: number;
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

/**
 * Carries a site through time: from stop to stop of its control, writing the record. Call `to` as often as you like
 * with later and later times.
 */
export class March {
  readonly record: RunRecord;
  readonly control: Control;
  private readonly integrator: Integrator;
  private readonly network: Network;
  private readonly rates: [Float64Array, Float64Array];
  private readonly fires = new Map<Trigger, { since: number; count: number }>();
  private readonly onStep: (step: RosenbrockStep) => void;

  constructor(scenario: Scenario, network: Network, options: MarchOptions) {
    this.network = network;
    this.record = new RunRecord(network);
    this.control = new Control(scenario, network, options.settings, options);
    this.integrator = new Integrator(network, 0, options.volumes, {
      tolerance: tolerances(network, options.tolerance ?? 1),
      least: EMPTY,
      mostSteps: STEPS_AT_LEAST + STEPS_A_DAY * (options.span / 86400),
    });
    this.rates = [new Float64Array(network.size), new Float64Array(network.quadratures)];
    this.onStep = (step) => {
      const { time, state, quadratures } = this.integrator;
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
        if (control.nextStop() <= integrator.time) this.actByClock();
        const fired = integrator.advance(Math.min(end, control.nextStop()), control.triggers, this.onStep);
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
    if (this.control.nextStop() <= this.integrator.time) {
      this.actByClock();
      this.closeStretch();
    }
  }

  private actByClock(): void {
    const before = this.control.settings;
    this.control.doDue(this.integrator.time, this.integrator.state);
    if (this.control.settings !== before) this.openStretch(this.control.settings.ramp !== before.ramp);
    else this.openStretch(false);
  }

  private actByLevel(fired: Trigger[]): void {
    const t = this.integrator.time;
    for (const trigger of fired) this.countFire(trigger, t);
    this.control.fire(fired, t, this.integrator.state);
    this.openStretch(true);
  }

  private openStretch(jump: boolean): void {
    const { integrator, control, network } = this;
    network.apply(control.settings);
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
    const known = this.fires.get(trigger);
    if (known === undefined || t - known.since > 1) {
      this.fires.set(trigger, { since: t, count: 1 });
      return;
    }
    if (++known.count < CHATTER) return;
    const name = this.control.nameOf(trigger);
    throw new RunFailure('capped', t, name, `the switch '${name}' fires over and over at t = ${t.toFixed(1)} s`);
  }

  private explain(error: IntegrationFailure): RunFailure {
    const { kind, time } = error;
    const stops = this.events.filter((e) => e.what === 'cut-out').length;
    const cycles = kind === 'capped' && stops >= CYCLES;
    const part = cycles ? 'vault' : this.network.parts.basins[error.component].name;
    const what = cycles
      ? `the pump cuts out and starts again ${stops} times: it draws the vault down faster than water comes in`
      : kind === 'capped'
        ? `the run takes more steps than it should, the last of them for the level in the ${part}`
        : `no step is small enough for the level in the ${part}`;
    return new RunFailure(kind, time, part, `${what}, at t = ${time.toFixed(1)} s`);
  }
}
