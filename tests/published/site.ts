/**
 * Sites for the laboratory: a textbook's vessel, weir or pipe as a checked scenario in which everything else is inert.
 *
 * As it stands nothing moves: a deep pond 5 m under its rim, a vault behind a wall at the pond's level, pipework with
 * both valves shut and a sound check valve, the pump off, no weather. A case states what it adds. Vessels are pools of
 * the water course; a vessel that empties through pipework is the riser, given by `plumbing.profile` and `level`.
 */
import { ballValveLoss } from '../../sim/laws/valve.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { levelsOf } from '../../sim/network/start.ts';
import { volumesAt } from '../../sim/results/inside.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import type {
  Crest,
  Filter,
  Intake,
  Plumbing,
  Pond,
  Pool,
  ProfilePoint,
  Pump,
  Scenario,
  Stone,
  Stream,
  TopFeed,
} from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { rootOf } from './units.ts';

/** A level crest of a width at an elevation. */
export const weir = (width: number, elevation: number, cd = 1): Crest => ({
  crest: [
    [0, elevation],
    [width, elevation],
  ],
  cd,
});

/** A symmetrical V with its point at an elevation, its sides running `run` out per rise up to 10 m. */
export const vee = (run: number, elevation: number, cd = 1): Crest => ({
  crest: [
    [0, elevation + 10],
    [10 * run, elevation],
    [20 * run, elevation + 10],
  ],
  cd,
});

/** Straight walls from a floor up. */
export const walls = (area: number, floor = 0, top = floor + 20): readonly ProfilePoint[] => [
  [floor, area],
  [top, area],
];

const bare = { displaced: [], level: undefined, leak: undefined } as const;

/** A stone that is nothing but its crest. */
export const stone = (name: string, crest: Crest, rest: Partial<Stone> = {}): Stone => ({
  name,
  main: false,
  along: undefined,
  nose: 0,
  seep: { k: 0, foot: 0 },
  fall: 0,
  splash: 0,
  blockage: 0,
  ...crest,
  ...rest,
});

/** A vessel with an outlet crest, or with none in reach of its water. */
export const vessel = (name: string, profile: readonly ProfilePoint[], rest: Partial<Pool> = {}): Pool => {
  const top = profile[profile.length - 1][0];
  return {
    kind: 'pool',
    name,
    profile,
    stones: [stone(`${name} brim`, weir(1, top))],
    rim: weir(1, top + 1),
    ...bare,
    ...rest,
  };
};

/** A pipe that runs forward from the tee into the open, without a valve: what an open one would lose is taken off. */
export const topFeed = (outlet: number, to: string, rest: Partial<Omit<TopFeed, 'valve' | 'law'>> = {}): TopFeed => ({
  diameter: 0.05,
  length: 1,
  roughness: 0,
  fittings: {},
  outlet,
  to,
  ...rest,
  k: (rest.k ?? 0) - ballValveLoss(1),
  valve: 1,
  law: 'ball',
});

export interface LabParts {
  readonly span: number;
  readonly start?: Scenario['start'];
  readonly celsius?: number;
  readonly pond?: Partial<Pond>;
  readonly intake?: Partial<Intake>;
  readonly vault?: Partial<Scenario['vault']>;
  readonly pump?: Partial<Pump>;
  readonly plumbing?: Partial<Omit<Plumbing, 'main'>> & { readonly main?: Partial<Plumbing['main']> };
  readonly filter?: Filter;
  readonly watercourse?: readonly (Pool | Stream)[];
  readonly weather?: Partial<Scenario['weather']>;
  readonly hoses?: Scenario['hoses'];
  readonly autofill?: Scenario['autofill'];
  readonly actions?: Scenario['actions'];
}

const pipe = { diameter: 0.05, length: 1, roughness: 0, fittings: {}, k: 0 } as const;

/** The inert site with the parts of a case laid over it. */
export function labSite(parts: LabParts): Scenario {
  const pond: Pond = {
    profile: walls(1000, -10, 0),
    ...bare,
    level: -5,
    fillMark: undefined,
    rim: weir(1, 0),
    overflow: undefined,
    plantCover: 0,
    runoff: { area: 0, coefficient: 0 },
    boxVolume: undefined,
    ...parts.pond,
  };
  const plumbing: Plumbing = {
    tee: -4,
    bottomFeed: { ...pipe, valve: 0, law: 'ball', inlet: -4 },
    topFeed: undefined,
    profile: undefined,
    level: undefined,
    leak: undefined,
    ...parts.plumbing,
    main: { ...pipe, checkValve: { kind: 'sound' }, ...parts.plumbing?.main },
  };
  return {
    title: 'laboratory',
    notes: '',
    display: 'metric',
    starts: '2031-01-01T00:00',
    water: { temperature: parts.celsius ?? 15 },
    span: parts.span,
    start: parts.start ?? 'standing',
    pond,
    intake: { width: 1, elevation: -1, blockage: 0, ...parts.intake },
    vault: { ...bare, profile: walls(1, -9, 0), ...parts.vault },
    pump: {
      curve: { kind: 'box', flow: 1e-3, head: 1 },
      power: undefined,
      suction: -8.5,
      minimum: -8,
      standingLoss: undefined,
      running: false,
      speed: 1,
      cutOut: undefined,
      ...parts.pump,
    },
    plumbing,
    filter: parts.filter,
    watercourse: parts.watercourse ?? [],
    weather: { evaporation: 0, rain: undefined, ...parts.weather },
    hoses: parts.hoses ?? [],
    autofill: parts.autofill,
    limits: {},
    actions: parts.actions ?? [],
    debris: 0,
    load: 0,
    concentration: 0,
    assumed: [],
  };
}

/** Level of a basin at a time of a record, m. */
export function levelAt(record: RunRecord, basin: string, t: number): number {
  const { network } = record;
  const volumes = new Float64Array(network.size);
  volumesAt(record, t, volumes);
  return levelsOf(network, volumes)[indexOf(record, basin)];
}

function indexOf(record: RunRecord, basin: string): number {
  const index = record.network.parts.basins.findIndex(({ name }) => name === basin);
  if (index < 0) throw new Error(`no basin is called ${basin}`);
  return index;
}

/** A site's level at the end of its span, m. */
export const levelAfter = (site: Scenario, basin: string): number => levelAt(run(site).record, basin, site.span);

/** Time at which a level that falls all the while comes down to a mark, s; NaN if it does not within the span. */
export function timeToFall(site: Scenario, basin: string, mark: number): number {
  const { record } = run(site);
  if (levelAt(record, basin, site.span) > mark) return Number.NaN;
  return rootOf((t) => mark - levelAt(record, basin, t), 0, site.span);
}

/** Flow of that name as the site starts, m³/s. */
export function flowAtStart(site: Scenario, name: string): number {
  const { record } = run(site);
  return record.flow(0, record.network.parts.flowNames.indexOf(name));
}

/** Names of a site's basins and flows, for a case that asks for one. */
export const namesOf = (site: Scenario): { readonly basins: string[]; readonly flows: readonly string[] } => {
  const { basins, flowNames } = assemble(site).parts;
  return { basins: basins.map(({ name }) => name), flows: flowNames };
};
