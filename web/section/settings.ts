import type { LoggedEvent } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** How valves, hoses and obstructions stand at a moment: what a drawing shows besides levels and flows. */
export interface Settings {
  readonly pumpOn: boolean;
  readonly bottomValve: number;
  readonly topValve: number;
  readonly checkValve: 'sound' | 'none' | 'unknown' | 'leaking' | 'failed';
  readonly hoses: readonly boolean[];
  readonly autofill: boolean;
  /** Blocked share of the intake, of stones and of streams, by name. */
  readonly blockage: Readonly<Record<string, number>>;
}

type Changing = { -readonly [K in keyof Settings]: Settings[K] } & {
  hoses: boolean[];
  blockage: Record<string, number>;
};

/** The settings of a site after all that its log tells up to a moment, s. */
export function settingsAt(scenario: Scenario, events: readonly LoggedEvent[], t: number): Settings {
  const blockage: Record<string, number> = { intake: scenario.intake.blockage };
  for (const reach of scenario.watercourse) {
    if (reach.kind === 'stream') blockage[reach.name] = reach.blockage;
    else for (const stone of reach.stones) blockage[stone.name] = stone.blockage;
  }
  const now: Changing = {
    pumpOn: scenario.pump.running,
    bottomValve: scenario.plumbing.bottomFeed?.valve ?? 0,
    topValve: scenario.plumbing.topFeed?.valve ?? 0,
    checkValve: scenario.plumbing.main.checkValve.kind,
    hoses: scenario.hoses.map(({ on }) => on),
    autofill: scenario.autofill !== undefined,
    blockage,
  };
  for (const event of events) if (event.t <= t) follow(now, event.what, scenario);
  return now;
}

/** Carries over what one entry of the log says. */
function follow(now: Changing, what: string, scenario: Scenario): void {
  const words = what.split(' ');
  const last = words[words.length - 1];
  const figure = Number(last);
  if (what.startsWith('pump speed ')) now.pumpOn = figure > 0;
  else if (what === 'pump on' || what === 'power on' || what === 'restart') now.pumpOn = true;
  else if (what === 'pump off' || what === 'power off' || what === 'cut-out') now.pumpOn = false;
  else if (what.startsWith('bottom valve ')) now.bottomValve = figure;
  else if (what.startsWith('top valve ')) now.topValve = figure;
  else if (what.startsWith('check valve ')) now.checkValve = last === 'failed' ? 'failed' : 'sound';
  else if (what.startsWith('autofill ')) now.autofill = last === 'on';
  else if (what.includes(' blockage ')) now.blockage[what.slice(0, what.lastIndexOf(' blockage '))] = figure;
  else if (what === 'hose on' || what === 'hose off') now.hoses.fill(last === 'on');
  else if (what.startsWith('hose ')) {
    const i = scenario.hoses.findIndex(({ name }) => what === `hose ${name} ${last}`);
    if (i >= 0) now.hoses[i] = last === 'on';
  }
}
