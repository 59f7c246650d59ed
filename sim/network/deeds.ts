import type { Deed } from '../scenario/scenario.ts';
import type { Reins } from './reins.ts';

type DeedOf<K extends Deed['do']> = Extract<Deed, { do: K }>;
type Doer<K extends Deed['do']> = (c: Reins, deed: DeedOf<K>, t: number, rank: number) => void;

const PUMP_OUT = 'pump out';

/** What each deed of the file changes, writes in the log and enters for later. */
const DOERS: { readonly [K in Deed['do']]: Doer<K> } = {
  pump: (c, deed, t) => {
    c.pump.command(deed.to);
    c.log(t, typeof deed.to === 'number' ? `pump speed ${deed.to}` : `pump ${deed.to}`);
    c.ramp(t);
  },
  power: (c, deed, t, rank) => (deed.to === 'on' ? restorePower(c, t) : cutPower(c, t, deed.for, rank)),
  hose: turnHose,
  autofill: (c, deed, t) => {
    c.set({ autofill: deed.to === 'on' && c.scenario.autofill !== undefined });
    c.log(t, `autofill ${deed.to}`);
  },
  'bottom valve': (c, deed, t) => {
    c.set({ bottomValve: deed.to });
    c.log(t, `bottom valve ${deed.to}`);
  },
  'top valve': (c, deed, t) => {
    c.set({ topValve: deed.to });
    c.log(t, `top valve ${deed.to}`);
  },
  storm: startStorm,
  blockage: (c, deed, t) => {
    c.set({ open: { ...c.settings.open, [deed.of]: 1 - deed.to } });
    c.log(t, `${deed.of} blockage ${deed.to}`);
  },
  'clean filter': (c, _deed, t) => {
    const none = c.settings.settled.held.map(() => 0);
    c.set({ settled: { since: t, held: none, perSecond: none } });
    c.log(t, 'filter cleaned');
  },
  'check valve': (c, deed, t) => {
    c.set({ check: { kind: deed.to === 'failed' ? 'none' : 'sound' } });
    c.log(t, `check valve ${deed.to}`);
  },
  leak: (c, deed, t) => {
    const leak = { basin: c.indexOf(deed.in), elevation: deed.elevation, area: deed.area };
    c.set({ leaks: [...c.settings.leaks, leak] });
    c.log(t, 'leak starts');
  },
  'pump out': pumpOut,
};

/**
 * Carries out one deed of the file.
 *
 * @param rank the action's place in the file: orders what falls on one instant
 */
export function carryOut(c: Reins, deed: Deed, t: number, rank: number): void {
  (DOERS[deed.do] as Doer<Deed['do']>)(c, deed, t, rank);
}

function restorePower(c: Reins, t: number): void {
  c.pump.restorePower();
  c.log(t, 'power on');
  c.ramp(t);
}

function cutPower(c: Reins, t: number, lasting: number | undefined, rank: number): void {
  const end = t + (lasting ?? Number.POSITIVE_INFINITY);
  c.pump.cutPower(end);
  c.log(t, 'power off');
  c.ramp(t);
  if (lasting === undefined) return;
  const act = (now: number): void => {
    if (c.pump.endsDark(now)) restorePower(c, now);
  };
  c.agenda.add({ t: end, rank, act });
}

function turnHose(c: Reins, deed: DeedOf<'hose'>, t: number): void {
  c.scenario.hoses.forEach((hose, i) => {
    if (deed.name !== undefined && hose.name !== deed.name) return;
    c.hoses.turn(i, deed.to === 'on', t);
    enterSpent(c, i);
  });
  c.set({ hose: c.hoses.flow });
  c.log(t, deed.name === undefined ? `hose ${deed.to}` : `hose ${deed.name} ${deed.to}`);
}

/** Enters the moment at which an open hose of limited volume has given all; one shut before then, or opened anew, passes it over. */
export function enterSpent(c: Reins, i: number): void {
  const end = c.hoses.spent(i);
  if (end === Number.POSITIVE_INFINITY) return;
  const act = (t: number): void => {
    if (c.hoses.spent(i) > t) return;
    c.hoses.turn(i, false, t);
    c.set({ hose: c.hoses.flow });
    c.log(t, `hose ${c.scenario.hoses[i].name} off`);
  };
  c.agenda.add({ t: end, rank: -1, act });
}

function startStorm(c: Reins, deed: DeedOf<'storm'>, t: number): void {
  const changes = c.sky.addStorm(t, deed.depth, deed.lasting, deed.shape);
  c.log(t, 'storm');
  c.refreshSky(t);
  changes.forEach((at, i) => {
    const over = i === changes.length - 1;
    c.agenda.add({
      t: at,
      rank: -1,
      act: (now) => {
        c.refreshSky(now);
        if (over) c.log(now, 'storm over');
      },
    });
  });
}

/** Draws water out for good until the pond is down to a level; at once over where it is. A new order replaces a running one. */
function pumpOut(c: Reins, deed: DeedOf<'pump out'>, t: number): void {
  c.set({ pumpOut: deed.flow });
  c.log(t, 'pump out');
  c.drop(PUMP_OUT);
  const low = c.watch('pond', deed.until, -1, PUMP_OUT, (now) => {
    c.set({ pumpOut: 0 });
    c.log(now, 'pump out over');
    c.drop(PUMP_OUT);
  });
  if (c.holds(low)) low.act(t);
}
