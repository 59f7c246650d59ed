import { volumeAt } from '../laws/storage.ts';
import type { LoggedEvent } from '../results/answer.ts';
import type { Action, Deed, Scenario } from '../scenario/scenario.ts';
import { isPast, type Trigger } from '../solver/trigger.ts';
import { Agenda } from './agenda.ts';
import { DAY, firstMoment, nextMonth } from './clock.ts';
import { carryOut, enterSpent } from './deeds.ts';
import { Hoses } from './hoses.ts';
import type { Network } from './network.ts';
import { PumpSwitch } from './pumpSwitch.ts';
import type { Reins, Switch } from './reins.ts';
import { type Settings, speedAt } from './settings.ts';
import { Sky } from './weather.ts';

/** What a march takes from a scenario and what it leaves out (trials leave out almost everything). */
export interface ControlOptions {
  readonly actions: readonly Action[];
  readonly weather: boolean;
  readonly cutOut: boolean;
  /** Speed of the pump before t = 0; it goes on at that speed until commanded. */
  readonly pumpSpeed: number;
}

/**
 * Who turns what when: carries out the actions of a site by the clock and by levels, keeps the settings in force and
 * writes the log. The integrator only knows the next stop and the triggers.
 */
export class Control implements Reins {
  settings: Settings;
  readonly events: LoggedEvent[] = [];
  readonly agenda = new Agenda();
  readonly sky: Sky;
  readonly pump: PumpSwitch;
  readonly scenario: Scenario;
  readonly hoses: Hoses;
  private readonly switches: Switch[] = [];
  private readonly network: Network;
  private volumes: Float64Array = new Float64Array(0);

  constructor(scenario: Scenario, network: Network, settings: Settings, options: ControlOptions) {
    this.scenario = scenario;
    this.network = network;
    this.settings = settings;
    this.hoses = new Hoses(scenario.hoses);
    this.sky = new Sky(options.weather ? scenario.weather : NO_WEATHER, scenario.starts);
    this.pump = new PumpSwitch(
      options.pumpSpeed,
      scenario.pump.speed,
      options.cutOut ? scenario.pump.cutOut : undefined,
    );
    if (options.weather) this.followMonths();
    for (const [rank, action] of options.actions.entries()) this.enter(action, rank);
    // A trial that shuts the hoses or lays its own flow over them leaves their volumes alone.
    if (settings.hose === this.hoses.flow) for (const i of scenario.hoses.keys()) enterSpent(this, i);
    this.watchCutOut();
  }

  get triggers(): Trigger[] {
    return this.switches.map((s) => s.trigger);
  }

  /** Time of the next mandatory stop after what was done. */
  nextStop(): number {
    return this.agenda.next();
  }

  /** The start of a run: what is due at once, and conditions that already hold. */
  begin(y: Float64Array): void {
    this.volumes = y;
    for (const s of this.switches) {
      s.trigger.armed = !this.holds(s);
      if (!s.trigger.armed && s.rank !== undefined) this.agenda.add({ t: 0, rank: s.rank, act: s.act });
    }
    this.agenda.doDue(0);
    this.settle(0);
  }

  /** Does all that the clock has due. */
  doDue(t: number, y: Float64Array): void {
    this.volumes = y;
    if (this.agenda.doDue(t)) this.settle(t);
  }

  /** Carries out the triggers that fired. */
  fire(fired: readonly Trigger[], t: number, y: Float64Array): void {
    this.volumes = y;
    for (const s of [...this.switches]) if (fired.includes(s.trigger)) s.act(t);
    this.settle(t);
  }

  nameOf(trigger: Trigger): string {
    return this.switches.find((s) => s.trigger === trigger)?.name ?? 'switch';
  }

  log(t: number, what: string): void {
    this.events.push({ t, what });
  }

  set(change: Partial<Settings>): void {
    this.settings = { ...this.settings, ...change };
  }

  /** After any change: a vault that is low already cuts out a pump that has just been started. */
  private settle(t: number): void {
    const { cutOut } = this.pump;
    if (cutOut === undefined || !this.pump.driven) return;
    const index = this.indexOf('vault');
    if (this.volumes[index] <= volumeAt(this.network.parts.basins[index].storage, cutOut.below)) this.cutOut(t);
  }

  private enter(action: Action, rank: number): void {
    if ('daily' in action) {
      action.daily.forEach((at, i) => {
        const deed: Deed = { do: 'pump', to: i % 2 === 0 ? 'on' : 'off' };
        this.everyDay(firstMoment(this.scenario.starts, at), rank, deed);
      });
    } else if ('at' in action.timing) {
      this.agenda.add({ t: action.timing.at, rank, act: (now) => carryOut(this, action.deed, now, rank) });
    } else {
      const { basin, crossing, level } = action.timing.when;
      const act = (t: number): void => carryOut(this, action.deed, t, rank);
      this.watch(basin, level, crossing === 'rises' ? 1 : -1, action.place, act, rank);
    }
  }

  private everyDay(t: number, rank: number, deed: Deed): void {
    const act = (now: number): void => {
      this.everyDay(t + DAY, rank, deed);
      carryOut(this, deed, now, rank);
    };
    this.agenda.add({ t, rank, act });
  }

  indexOf(basin: string): number {
    return this.network.parts.basins.findIndex((b) => b.name === basin);
  }

  watch(
    basin: string,
    level: number,
    direction: 1 | -1,
    name: string,
    act: (t: number) => void,
    rank?: number,
  ): Switch {
    const component = this.indexOf(basin);
    const value = volumeAt(this.network.parts.basins[component].storage, level);
    const trigger: Trigger = { component, value, direction, armed: true };
    const made = { trigger, name, act, rank };
    this.switches.push(made);
    return made;
  }

  holds(s: Switch): boolean {
    return isPast(s.trigger, this.volumes);
  }

  drop(name: string): void {
    const at = this.switches.findIndex((s) => s.name === name);
    if (at >= 0) this.switches.splice(at, 1);
  }

  private watchCutOut(): void {
    const { cutOut } = this.pump;
    if (cutOut === undefined) return;
    this.watch('vault', cutOut.below, -1, CUT_OUT, (t) => {
      if (this.pump.driven) this.cutOut(t);
    });
    this.watch('vault', cutOut.restart, 1, RESTART, (t) => {
      if (this.pump.release()) {
        this.log(t, RESTART);
        this.ramp(t);
      }
    });
  }

  private cutOut(t: number): void {
    this.pump.trip();
    this.log(t, CUT_OUT);
    this.ramp(t);
  }

  private followMonths(): void {
    this.set({ evaporation: this.sky.evaporation(0), rain: this.sky.rain(0) });
    if (this.sky.changesByMonth) this.newMonth(nextMonth(this.scenario.starts, 0));
  }

  private newMonth(t: number): void {
    const act = (now: number): void => {
      this.newMonth(nextMonth(this.scenario.starts, now));
      this.refreshSky(now);
    };
    this.agenda.add({ t, rank: -1, act });
  }

  refreshSky(t: number): void {
    this.set({ evaporation: this.sky.evaporation(t), rain: this.sky.rain(t) });
  }

  ramp(t: number): void {
    const to = this.pump.target;
    if (to === this.settings.ramp.to) return;
    const from = speedAt(this.settings.ramp, t);
    const end = from === to ? t : t + RAMP;
    this.set({ ramp: { from, to, start: t, end } });
    if (end > t) this.agenda.add({ t: end, rank: -1, act: () => {} });
  }
}

const NO_WEATHER = { evaporation: 0, rain: undefined };
export const CUT_OUT = 'cut-out';
const RESTART = 'restart';
/** Time in which the pump's speed goes from one setting to the next, s. */
const RAMP = 3;
