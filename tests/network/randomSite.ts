import fc from 'fast-check';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { type ActionPlaces, actionFile, randomAction } from './randomActions.ts';
import {
  between,
  blockableNames,
  course,
  crest,
  type ReachHeight,
  reachFile,
  reachHeights,
  reachName,
  rounded,
} from './randomCourse.ts';

const numbers = fc.record({
  /** Bath tub, garden, hall. */
  scale: fc.constantFrom(0.05, 1, 1, 1, 1, 20),
  span: fc.constantFrom(6000, 6000, 6000, 90_000),
  area: rounded(2, 60),
  depth: rounded(0.3, 1.5),
  level: rounded(0.02, 0.25),
  ledge: fc.boolean(),
  empty: fc.constantFrom(false, false, false, false, true),
  intakeDepth: rounded(0.01, 0.25),
  blockage: fc.constantFrom(0, 0, 0.3, 0.8, 1),
  vault: rounded(0.2, 1),
  pumpFlow: rounded(0.5, 12),
  pumpHead: rounded(1.5, 7),
  box: fc.boolean(),
  standingLoss: fc.constantFrom(undefined, undefined, 0, 10),
  main: rounded(0.03, 0.12),
  feed: rounded(0.03, 0.08),
  /** What the main is longer than its rise, m. */
  detour: rounded(0, 20),
  check: fc.constantFrom(true, true, false, 'unknown', { leak: 2e-6 }),
  valves: fc.tuple(fc.oneof(rounded(0, 1), fc.constant(0)), fc.oneof(rounded(0, 1), fc.constant(0))),
  cock: fc.boolean(),
  filter: fc.boolean(),
  topFeed: fc.constantFrom('none', 'filter', 'pond', 'first'),
  teeRaise: fc.constantFrom(0, 0, 0.3, -0.2),
  outletRaise: fc.constantFrom(0.1, 0.1, -0.1),
  gap: rounded(0, 0.02),
  grain: between(0.0003, 0.01),
  lip: rounded(0.3, 1.5),
  reaches: course,
  start: fc.constantFrom('standing', 'running', 'overnight'),
  running: fc.boolean(),
  cutOut: fc.boolean(),
  autofill: fc.constantFrom(undefined, 'pond', 'vault'),
  overflow: fc.boolean(),
  leak: fc.constantFrom(0, 0, 1e-6, 1e-5),
  mainLeak: fc.constantFrom(0, 0, 0, 1e-5),
  evaporation: rounded(0, 10),
  actions: fc.array(randomAction, { maxLength: 6 }),
});

type Numbers = typeof numbers extends fc.Arbitrary<infer T> ? T : never;

/** A site's file, all of its elevations in order, so that it is valid whatever the numbers. */
export const siteFile: fc.Arbitrary<Record<string, unknown>> = numbers.map(fileOf);

/** The same, read and checked. */
export const site: fc.Arbitrary<Scenario> = siteFile.map((file) => {
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1) + JSON.stringify(file));
  return reading.scenario;
});

function fileOf(n: Numbers): Record<string, unknown> {
  const floor = -n.depth;
  const suction = floor - 0.3;
  const heights = reachHeights(n.reaches);
  const start = n.empty || (n.start === 'running' && !n.running) ? 'standing' : n.start;
  return {
    title: 'random site',
    starts: '2031-06-01T07:50',
    span: n.span,
    start,
    pond: pondFile(n, floor),
    intake: {
      width: 0.5 * Math.max(1, n.scale),
      elevation: Math.max(floor + 0.01, -n.level - n.intakeDepth),
      blockage: n.blockage,
    },
    vault: {
      profile: [
        [floor - 0.4, n.vault * n.scale],
        [0.05, n.vault * n.scale],
      ],
    },
    pump: {
      curve: n.box
        ? { flow: `${n.pumpFlow} L/s`, head: n.pumpHead }
        : [
            [0, n.pumpHead],
            [n.pumpFlow / 2000, 0.8 * n.pumpHead],
            [n.pumpFlow / 1000, 0.2 * n.pumpHead],
          ],
      suction,
      minimum: suction + 0.15,
      standingLoss: n.standingLoss,
      running: n.running,
      efficiency: 0.3,
      cutOut: n.cutOut ? { below: suction + 0.2, restart: suction + 0.25 } : undefined,
    },
    plumbing: plumbingFile(n, heights[0]),
    ...(n.filter ? { filter: filterFile(n, filterTop(n, heights[0])) } : {}),
    watercourse: n.reaches.map((r, i) => reachFile(r, heights[i], i, n.scale)),
    weather: { evaporation: `${n.evaporation} mm/d` },
    supply: {
      hose: { flow: '20 L/min', on: false },
      autofill: n.autofill ? { flow: '10 L/min', set: -n.level, low: -n.level - 0.02, in: n.autofill } : undefined,
    },
    actions: n.actions.flatMap((a) => actionFile(a, placesOf(n, heights)) ?? []),
  };
}

function pondFile(n: Numbers, floor: number): object {
  const area = n.area * n.scale;
  const shelf = -n.depth / 2;
  const ledge = [
    [floor, 0.4 * area],
    [shelf, 0.6 * area],
    [shelf, 0.9 * area],
    [0.05, area],
  ];
  return {
    profile: n.ledge ? ledge : [ledge[0], ledge[3]],
    displaced: [{ from: floor, to: floor + 0.1, fraction: 0.6 }],
    level: n.empty ? 'empty' : -n.level,
    fillMark: -n.level,
    rim: { crest: crest(0, 1.5, 0.01) },
    overflow: n.overflow ? { elevation: -0.01, diameter: 0.075 } : undefined,
    leak: n.leak > 0 ? { elevation: shelf, area: n.leak } : undefined,
  };
}

const filterTop = (n: Numbers, first: ReachHeight | undefined): number => (first?.top ?? 0) + n.lip;

function inletOf(n: Numbers, first: ReachHeight | undefined): number {
  const under = first ? first.foot + 0.01 : -n.level;
  return Math.round((n.filter ? filterTop(n, first) - 0.6 : under) * 1000) / 1000;
}

function plumbingFile(n: Numbers, first: ReachHeight | undefined): object {
  const inlet = inletOf(n, first);
  const firstName = n.reaches[0] ? reachName(n.reaches[0], 0) : 'pond';
  const to = n.topFeed === 'first' ? firstName : n.topFeed === 'pond' || n.filter ? n.topFeed : undefined;
  // Not below the floor of the basin it ends in.
  const high = filterTop(n, first) + n.outletRaise;
  return {
    main: { diameter: n.main, length: n.detour + high + n.depth + 0.3, fittings: { elbow90: 3 }, checkValve: n.check },
    tee: Math.max(inlet + n.teeRaise, -n.depth - 0.2),
    leak: n.mainLeak > 0 ? { elevation: inlet, area: n.mainLeak } : undefined,
    bottomFeed: feedFile(n, n.valves[0], { inlet }),
    topFeed: n.topFeed === 'none' ? undefined : feedFile(n, n.valves[1], { outlet: high, to }),
  };
}

function feedFile(n: Numbers, valve: number, own: object): object {
  return { diameter: n.feed, length: 2, fittings: { elbow90: 2 }, valve, law: n.cock ? 'cock' : undefined, ...own };
}

function filterFile(n: Numbers, lip: number): object {
  return {
    profile: [
      [lip - 0.65, 0.5],
      [lip + 0.15, 0.5],
    ],
    media: {
      bottom: lip - 0.5,
      area: 0.42,
      perimeter: 2.6,
      gap: n.gap,
      layers: [
        { name: 'mat', thickness: 0.1, porosity: 0.92, grain: 0.002 },
        { name: 'bags', thickness: 0.25, porosity: 0.8, grain: n.grain },
      ],
      submergedWeight: 60,
    },
    lip: { crest: crest(lip, 0.6, 0) },
    rim: { crest: crest(lip + 0.1, 2, 0) },
  };
}

function placesOf(n: Numbers, heights: readonly ReachHeight[]): ActionPlaces {
  return {
    level: n.level,
    span: n.span,
    filter: n.filter,
    topFeed: n.topFeed !== 'none',
    autofill: n.autofill !== undefined,
    blockable: n.reaches.flatMap(blockableNames),
    floors: [
      ['pond', -n.depth],
      ['vault', -n.depth - 0.4],
      ['riser', -n.depth - 0.3],
      ...n.reaches.map((r, i) => [reachName(r, i), heights[i].foot] as const),
    ],
  };
}
