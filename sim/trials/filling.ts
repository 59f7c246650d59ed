import { volumeAt } from '../laws/storage.ts';
import { March } from '../march.ts';
import { assemble } from '../network/assemble.ts';
import type { Network } from '../network/network.ts';
import { layOwnLevels, pondStart, settingsOf, standingVolumes } from '../network/start.ts';
import type { Action, Hose, Scenario } from '../scenario/scenario.ts';
import type { Trial } from './trial.ts';

const DAY = 86400;
/** A fill that takes this many times the water's worth of the hose, and a day, comes to no end. */
const PATIENCE = 10;

export interface FillingTrial extends Trial {
  /** Seconds from the opening of the hose until the pond stands at its mark; null where it never does. */
  readonly time: number | null;
  /** Moment of the site's own clock at which the hose is opened, s from the run's start. */
  readonly opened: number;
  readonly hoses: readonly Hose[];
  /** All hoses together, m³/s. */
  readonly flow: number;
}

/** Which hoses fill, and from when: those on at the start, else those of the first 'hose on', else all of them. */
function fillingHoses(s: Scenario): { hoses: readonly Hose[]; opened: number } {
  const running = s.hoses.filter((hose) => hose.on);
  if (running.length > 0) return { hoses: running, opened: 0 };
  let first: { at: number; name: string | undefined } | undefined;
  for (const { deed, ...action } of s.actions) {
    if (deed.do !== 'hose' || deed.to !== 'on' || !('timing' in action) || !('at' in action.timing)) continue;
    const { at } = action.timing;
    if (first === undefined || at < first.at) first = { at, name: deed.name };
  }
  const named = s.hoses.filter((hose) => first?.name === undefined || hose.name === first.name);
  return { hoses: named, opened: first?.at ?? 0 };
}

/** Everything standing, the pond at its own level; empty where the file says so. */
function startOfFill(s: Scenario, network: Network): Float64Array {
  const volumes = standingVolumes(s, network, pondStart(s));
  layOwnLevels(s, network, volumes);
  return volumes;
}

/**
 * Fills the pond from its level to its fill mark with the hose, the pump off, nothing else from outside; undefined
 * where there is no hose that runs or no mark.
 *
 * @throws RunFailure where the march fails
 */
export function fill(s: Scenario): FillingTrial | undefined {
  const { fillMark } = s.pond;
  const { hoses, opened } = fillingHoses(s);
  const flow = hoses.reduce((sum, hose) => sum + hose.flow, 0);
  if (fillMark === undefined || flow <= 0) return undefined;
  const filling: Scenario = { ...s, hoses: s.hoses.map((hose) => ({ ...hose, on: hoses.includes(hose) })) };
  const network = assemble(filling);
  const volumes = startOfFill(filling, network);
  const { basins, pond, circuit } = network.parts;
  const wanted = [pond, circuit.vault].reduce(
    (sum, i) => sum + Math.max(0, volumeAt(basins[i].storage, fillMark) - volumes[i]),
    0,
  );
  const span = DAY + (PATIENCE * wanted) / flow;
  const full: Action = {
    timing: { when: { basin: 'pond', crossing: 'rises', level: fillMark } },
    deed: { do: 'hose', to: 'off', name: undefined },
    place: 'trial',
  };
  const settings = { ...settingsOf(filling, network, 0), autofill: false };
  const march = new March(filling, network, {
    settings,
    volumes,
    actions: [full],
    weather: false,
    cutOut: false,
    pumpSpeed: 0,
  });
  const shut = (): number | undefined => march.events.find((event) => event.what === 'hose off')?.t;
  for (let t = (1.001 * wanted) / flow; shut() === undefined && march.time < span; t *= 2) march.to(Math.min(span, t));
  return { record: march.record, time: shut() ?? null, opened, hoses, flow };
}
