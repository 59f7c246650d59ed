import { startVolumes } from '../../sim/begin.ts';
import { levelOf } from '../../sim/laws/storage.ts';
import { March } from '../../sim/march.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { settingsOf } from '../../sim/network/start.ts';
import { volumesAt } from '../../sim/results/inside.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

type Parts = Record<string, unknown>;

/**
 * The smallest site: a pond and a vault with upright walls, 10 m² and 0.5 m², the pump off, its one feed shut; nothing
 * moves. Parts given replace its own, key by key of the file.
 */
export function smallSite(parts: Parts = {}): Scenario {
  const reading = readScenario(JSON.stringify({ ...STILL, ...parts }));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.scenario;
}

const STILL: Parts = {
  title: 'small site',
  span: '1 h',
  start: 'standing',
  pond: upright(10, -1, -0.2),
  intake: { width: 0.5, elevation: -0.5 },
  vault: {
    profile: [
      [-1.2, 0.5],
      [0.2, 0.5],
    ],
  },
  pump: { curve: { flow: 0.004, head: 4 }, suction: -1.1, minimum: -0.9, running: false },
  plumbing: {
    main: { diameter: 0.05, length: 4 },
    tee: 0.5,
    bottomFeed: { diameter: 0.05, length: 1, inlet: 0.5, valve: 0 },
  },
};

/** Pond and vault kept apart: the intake's lip at −0.3 m, over what either of them holds. */
export const APART: Parts = {
  pond: { ...upright(10, -1, -0.4), fillMark: -0.2 },
  intake: { width: 0.5, elevation: -0.3 },
  vault: {
    profile: [
      [-1.2, 0.5],
      [0.2, 0.5],
    ],
    level: -0.9,
  },
};

/** A pond with upright walls from a floor up, a rim at 0 and a level. */
export function upright(area: number, floor: number, level: number): Parts {
  return {
    profile: [
      [floor, area],
      [0.1, area],
    ],
    level,
    rim: {
      crest: [
        [0, 0],
        [1, 0],
      ],
    },
  };
}

/** A pool with upright walls, 1 m deep, whose stones are given; its level at t = 0, if not the start's. */
export function uprightPool(
  name: string,
  area: number,
  floor: number,
  level: number | 'empty' | undefined,
  more: Parts,
): Parts {
  return {
    name,
    kind: 'pool',
    profile: [
      [floor, area],
      [floor + 1, area],
    ],
    level,
    rim: {
      crest: [
        [0, floor + 0.95],
        [1, floor + 0.95],
      ],
    },
    ...more,
  };
}

/** A level stone of a width at an elevation. */
export const stone = (name: string, width: number, z: number, more: Parts = {}): Parts => ({
  name,
  crest: [
    [0, z],
    [width, z],
  ],
  ...more,
});

/** A site on its way: the march, and the level of a basin at any moment that was passed. */
export interface Run {
  readonly march: March;
  readonly levelAt: (basin: string, t: number) => number;
}

/** Marches a site over its span, with a share of the usual tolerance. */
export function marched(scenario: Scenario, tolerance = 1): Run {
  const network = assemble(scenario);
  const pumpSpeed = scenario.pump.running ? 1 : 0;
  const march = new March(scenario, network, {
    settings: settingsOf(scenario, network, pumpSpeed),
    volumes: startVolumes(scenario, network),
    actions: scenario.actions,
    weather: true,
    cutOut: true,
    pumpSpeed,
    tolerance,
  });
  march.to(scenario.span);
  march.finish();
  const out = new Float64Array(network.size);
  const levelAt = (basin: string, t: number): number => {
    const i = network.parts.basins.findIndex((b) => b.name === basin);
    volumesAt(march.record, t, out);
    return levelOf(network.parts.basins[i].storage, out[i]);
  };
  return { march, levelAt };
}

/** What a run did, to the hundredth of a second: a switch by level is landed on within 3e-7 m³. */
export const log = ({ march }: Run): string[] => march.events.map(({ t, what }) => `${Number(t.toFixed(2))} ${what}`);

/** Main and feed of the running site, inside diameters. */
export const MAIN = { diameter: 0.05, length: 8, roughness: 1.5e-6, k: 2.5 };
export const FEED = { diameter: 0.045, length: 3, roughness: 1.5e-6, k: 1.7 };

/** Elevation of the weir over which the spring of the running site spills, m. */
export const LIP = 1.2;

/** A pump at work: from the pond by a drowned bottom feed up into a spring, whose one weir falls back into the pond. */
export const RUNNING: Parts = {
  pump: { curve: { flow: 0.006, head: 5 }, suction: -1.1, minimum: -0.9, power: 300 },
  watercourse: [uprightPool('spring', 1, 0.7, undefined, { stones: [stone('weir', 0.8, LIP, { cd: 0.9 })] })],
  intake: { width: 0.3, elevation: -0.26 },
  pond: upright(10, -1, -0.2),
  plumbing: { main: MAIN, tee: 0.8, bottomFeed: { ...FEED, inlet: 0.75 } },
  start: 'running',
};

/** The running site with other parts in place of its own. */
export const runningSite = (parts: Parts = {}): Scenario => smallSite({ ...RUNNING, ...parts });
