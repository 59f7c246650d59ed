import fc from 'fast-check';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** A number of the site as crews would write it: three digits behind the point. */
const rounded = (min: number, max: number): fc.Arbitrary<number> =>
  between(min, max).map((x) => Math.round(x * 1000) / 1000);

const crest = (low: number, width: number, tilt: number): [number, number][] => [
  [0, low],
  [width, low + tilt],
];

const stone = fc.record({
  width: rounded(0.2, 1.5),
  raise: rounded(0, 0.04),
  tilt: rounded(0, 0.02),
  cd: rounded(0.82, 1),
  seep: fc.constantFrom(0, 3e-4, 3e-3),
  splash: fc.constantFrom(0, 0, 0.0002),
  along: fc.option(rounded(0.05, 0.4), { nil: undefined }),
});

const reach = fc.record({
  kind: fc.constantFrom('pool', 'pool', 'stream'),
  drop: rounded(0.15, 0.5),
  area: rounded(0.3, 4),
  stones: fc.array(stone, { minLength: 1, maxLength: 3 }),
  slope: rounded(0.005, 0.08),
  length: rounded(1, 6),
  manning: rounded(0.03, 0.25),
});

/** What is done on the site: anything, at any time, in any order. */
const action = fc.record({
  at: rounded(0, 5000),
  kind: fc.nat({ max: 9 }),
  x: rounded(0, 1),
});

const numbers = fc.record({
  area: rounded(2, 60),
  depth: rounded(0.3, 1.5),
  level: rounded(0.02, 0.25),
  ledge: fc.boolean(),
  intakeDepth: rounded(0.01, 0.25),
  blockage: fc.constantFrom(0, 0, 0.3, 0.8, 1),
  vault: rounded(0.2, 1),
  pumpFlow: rounded(0.5, 12),
  pumpHead: rounded(1.5, 7),
  box: fc.boolean(),
  main: rounded(0.03, 0.12),
  feed: rounded(0.03, 0.08),
  length: rounded(2, 20),
  check: fc.constantFrom(true, true, false, 'unknown', { leak: 2e-6 }),
  valves: fc.tuple(rounded(0, 1), rounded(0, 1)),
  cock: fc.boolean(),
  filter: fc.boolean(),
  topFeed: fc.boolean(),
  gap: rounded(0, 0.02),
  grain: rounded(0.0005, 0.01),
  lip: rounded(0.3, 1.5),
  reaches: fc.array(reach, { maxLength: 4 }),
  start: fc.constantFrom('standing', 'running', 'overnight'),
  running: fc.boolean(),
  cutOut: fc.boolean(),
  autofill: fc.constantFrom(undefined, 'pond', 'vault'),
  leak: fc.constantFrom(0, 0, 1e-6, 1e-5),
  evaporation: rounded(0, 10),
  actions: fc.array(action, { maxLength: 6 }),
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
  const shelf = -n.depth / 2;
  const heights = reachHeights(n);
  const filterTop = (heights[0]?.top ?? 0) + n.lip;
  const first = heights[0] ? heights[0].foot + 0.01 : -n.level;
  const inlet = Math.round((n.filter ? filterTop - 0.6 : first) * 1000) / 1000;
  return {
    title: 'random site',
    span: 6000,
    start: n.running ? n.start : n.start === 'running' ? 'standing' : n.start,
    pond: {
      profile: n.ledge
        ? [
            [floor, 0.4 * n.area],
            [shelf, 0.6 * n.area],
            [shelf, 0.9 * n.area],
            [0.05, n.area],
          ]
        : [
            [floor, 0.5 * n.area],
            [0.05, n.area],
          ],
      displaced: [{ from: floor, to: floor + 0.1, fraction: 0.6 }],
      level: -n.level,
      rim: { crest: crest(0, 1.5, 0.01) },
      leak: n.leak > 0 ? { elevation: shelf, area: n.leak } : undefined,
    },
    intake: { width: 0.5, elevation: Math.max(floor + 0.01, -n.level - n.intakeDepth), blockage: n.blockage },
    vault: {
      profile: [
        [floor - 0.4, n.vault],
        [0.05, n.vault],
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
      running: n.running,
      efficiency: 0.3,
      cutOut: n.cutOut ? { below: suction + 0.2, restart: suction + 0.25 } : undefined,
    },
    plumbing: {
      main: { diameter: n.main, length: n.length, fittings: { elbow90: 3 }, checkValve: n.check },
      tee: inlet,
      bottomFeed: feed(n, n.valves[0], { inlet }),
      ...(n.topFeed
        ? { topFeed: feed(n, n.valves[1], { outlet: filterTop + 0.1, ...(n.filter ? { to: 'filter' } : {}) }) }
        : {}),
    },
    ...(n.filter ? { filter: filterOf(n, filterTop) } : {}),
    watercourse: n.reaches.map((r, i) => reachFile(r, heights[i], i)),
    weather: { evaporation: `${n.evaporation} mm/d` },
    supply: {
      hose: { flow: '20 L/min', on: false },
      autofill: n.autofill ? { flow: '10 L/min', set: -n.level, low: -n.level - 0.02, in: n.autofill } : undefined,
    },
    actions: n.actions.map((a) => actionOf(a, n)),
  };
}

function feed(n: Numbers, valve: number, own: object): object {
  return { diameter: n.feed, length: 2, fittings: { elbow90: 2 }, valve, law: n.cock ? 'cock' : undefined, ...own };
}

/** Elevations of the reaches from the pond's edge up: each spills into the next one's top. */
function reachHeights(n: Numbers): { foot: number; top: number }[] {
  const heights: { foot: number; top: number }[] = [];
  let below = 0.05;
  for (const r of [...n.reaches].reverse()) {
    const foot = r.kind === 'stream' ? below + 0.05 : below;
    const top = r.kind === 'stream' ? foot + r.slope * r.length : foot + r.drop;
    heights.unshift({ foot, top });
    below = top + 0.05;
  }
  return heights;
}

function reachFile(r: Numbers['reaches'][number], h: { foot: number; top: number }, i: number): object {
  if (r.kind === 'stream') {
    const bed = { length: r.length, width: 0.5, slope: r.slope, manning: r.manning, foot: h.foot };
    return { name: `run ${i}`, kind: 'stream', ...bed, edge: { height: 0.1, length: 0.5 } };
  }
  return {
    name: `pool ${i}`,
    kind: 'pool',
    profile: [
      [h.foot - 0.1, 0.4 * r.area],
      [h.top + 0.2, r.area],
    ],
    stones: r.stones.map((s, k) => ({
      name: `stone ${i}.${k}`,
      main: k === 0,
      crest: crest(h.top + (k === 0 ? 0 : s.raise), s.width, s.tilt),
      cd: s.cd,
      seep: { k: s.seep, foot: h.top - 0.1 },
      fall: 0.1,
      splash: s.splash,
      along: s.along,
      nose: s.along ? 0.01 : undefined,
    })),
    rim: { crest: crest(h.top + 0.15, 1, 0) },
  };
}

function filterOf(n: Numbers, lip: number): object {
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

function actionOf(a: Numbers['actions'][number], n: Numbers): object {
  const at = a.at;
  const deeds: object[] = [
    { do: 'pump', to: 'off' },
    { do: 'pump', to: 'on' },
    { do: 'pump', to: Math.round(120 * a.x) / 100 },
    { do: 'hose', to: a.x < 0.5 ? 'on' : 'off' },
    { do: 'power', to: 'off', for: '5 min' },
    { do: 'bottom valve', to: a.x },
    { do: 'storm', depth: '20 mm', lasting: '20 min', shape: a.x < 0.5 ? 'even' : 'scs2' },
    { do: 'blockage', of: 'intake', to: a.x },
    { do: 'check valve', to: a.x < 0.5 ? 'failed' : 'sound' },
    { do: 'pump out', flow: '30 L/min', until: -n.level - 0.1 * a.x },
  ];
  return { at, ...deeds[a.kind] };
}
