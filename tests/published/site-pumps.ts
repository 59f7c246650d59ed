/** Published duty points, speeds, lifts and depths, answered by the balance or a run of a site. */
import { balance } from '../../sim/balance.ts';
import { fittingsLoss, turbulentFriction } from '../../sim/laws/fittings.ts';
import { LEDGER } from '../../sim/network/ledger.ts';
import type { BalanceAnswer } from '../../sim/results/answer.ts';
import type { Filter, Scenario, Stream } from '../../sim/scenario/scenario.ts';
import { run } from '../../sim/simulate.ts';
import { published, publishedBy } from './checks.ts';
import { roughnessFor } from './roughness.ts';
import { type LabParts, labSite, stone, topFeed, vessel, walls, weir } from './site.ts';
import { COMPANION, flowAt, lossOnly, once, openIntake, steadyPump } from './site-parts.ts';
import { FOOT, GPM, HORSEPOWER, INCH } from './units.ts';

const CRANE = 'Crane TP-410 (2009), printed answer as quoted in the worked problems of the fluids library';

/** A pump that lifts from a pond at −5 m through a main to an open end at a height over it; all the loss is in the main. */
function lifting(lift: number, parts: Pick<LabParts, 'pump'> & Partial<LabParts>, main: object): Scenario {
  const end = lift - 5;
  return labSite({
    span: 600,
    intake: openIntake,
    watercourse: [vessel('top', walls(10, end - 3, end + 3), { stones: [stone('lip', weir(10, end - 1))] })],
    plumbing: {
      main,
      profile: walls(0.2, -9, end + 5),
      level: end,
      tee: end - 0.5,
      topFeed: topFeed(end, 'top', { diameter: 0.3, length: 0 }),
      bottomFeed: undefined,
    },
    ...parts,
  });
}

const schaschke = once(() => {
  const points = [
    [0, 40],
    [0.002, 39.5],
    [0.004, 38],
    [0.006, 35],
    [0.008, 30],
    [0.01, 20],
  ] as const;
  const velocity = 0.0066 / ((Math.PI / 4) * 0.05 ** 2);
  const roughness = roughnessFor(0.02, 0.05, (velocity * 0.05) / 1.139e-6);
  const main = { diameter: 0.05, length: 100, roughness, k: 1 };
  return balance(lifting(10, { pump: { curve: { kind: 'points', points } } }, main));
});
publishedBy(
  {
    source: `Schaschke, Worked Examples, example 9.10, read there from a graph; its constant friction factor met by our own at the duty point (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.012,
  },
  [
    ['site-duty Schaschke 9.10, flow, m³/s', 0.0066, () => schaschke().duty.flow],
    ['site-duty Schaschke 9.10, head, m', 33.8, () => schaschke().duty.head],
  ],
);

const crane15 = once(() => {
  const bore = 3.068 * INCH;
  const liftCheck = 600 * turbulentFriction(2.469 * INCH) * (3.068 / 2.469) ** 4;
  const k = liftCheck + 8 * turbulentFriction(bore) + fittingsLoss({ elbow90: 4, exit: 1 }, bore);
  const main = { diameter: bore, length: 500 * FOOT, roughness: 0.0022 * INCH, k };
  const power = { kind: 'efficiency', efficiency: 0.7 } as const;
  return balance(lifting(400 * FOOT, { pump: { curve: steadyPump(100 * GPM), power }, celsius: 22 }, main));
});
publishedBy(
  {
    source: `${CRANE}, example 7-15; 3 in lift check from 600, gate from 8 and elbows from 30 f_T`,
    kind: 'published value',
    tolerance: 0.005,
  },
  [
    ['site-duty Crane 7-15, head at 100 gal/min, ft', 421, () => crane15().duty.head / FOOT],
    ['site-duty Crane 7-15, power at 70 %, hp', 15.2, () => crane15().duty.power / HORSEPOWER],
  ],
);

/** A pump that turns water over without lifting it, slowed down from 3500 to 1700 rpm: flow m³/s and power W at the end. */
const crane33 = once(() => {
  const [flow, head] = [400 * GPM, 126 * FOOT];
  const points = [
    [0, 160 * FOOT],
    [flow, head],
    [2 * flow, 10 * FOOT],
  ] as const;
  const power = {
    kind: 'points',
    points: [
      [0, 10 * HORSEPOWER],
      [flow, 17.5 * HORSEPOWER],
      [2 * flow, 20 * HORSEPOWER],
    ],
  } as const;
  const main = lossOnly((head * 2 * 9.80665) / flow ** 2, 1);
  const slower = { timing: { at: 60 }, deed: { do: 'pump', to: 1700 / 3500 }, place: 'slower' } as const;
  const pump = { curve: { kind: 'points', points }, power, running: true } as const;
  const site = lifting(0, { pump, actions: [slower], pond: { profile: walls(1e6, -10, 0) } }, main);
  const { record } = run(site);
  const energy = (t: number): number => record.ledger(record.rowAt(t), LEDGER.energy);
  const before = record.time(record.length - 2);
  return {
    flow: flowAt(record, 'main', site.span),
    power: (energy(site.span) - energy(before)) / (site.span - before),
  };
});
publishedBy(
  { source: `${CRANE}, example 7-33 (affinity at 1700 of 3500 rpm)`, kind: 'published value', tolerance: 0.002 },
  [
    ['site-speed Crane 7-33, flow, gal/min', 194.3, () => crane33().flow / GPM],
    ['site-speed Crane 7-33, power, hp', 2.005, () => crane33().power / HORSEPOWER],
  ],
);

/** Soil of Das: grains of 2.68 at a void ratio of 0.52, 2 m thick under 0.7 m of water, in a filter of 1 m². */
const das = { area: 1, thickness: 2, porosity: 0.52 / 1.52, weight: ((2.68 - 1) / 1.52) * 9810 * 2 };
const dasBalance = once((): BalanceAnswer => {
  const flow = 0.01;
  const layer = {
    name: 'soil',
    thickness: das.thickness,
    porosity: das.porosity,
    grain: undefined,
    // Loses 1.5 m at that flow.
    permittivity: flow / das.area / 1.5,
    capture: 0,
    beta: 0,
    deposit: 0,
  };
  const filter: Filter = {
    profile: walls(das.area, -1, 4),
    displaced: [],
    level: undefined,
    leak: undefined,
    media: {
      bottom: 0,
      area: das.area,
      perimeter: 4,
      gap: 0,
      layers: [layer],
      submergedWeight: das.weight,
      holdDown: 0,
      liftSlack: 0.01,
      removal: 0,
      tanks: 1,
    },
    lip: weir(10, 2.7),
    rim: weir(10, 4),
  };
  const feed = {
    diameter: 1,
    length: 1,
    roughness: 0,
    fittings: {},
    k: 0,
    valve: 1,
    law: 'ball',
    inlet: -0.5,
  } as const;
  return balance(
    labSite({
      span: 1,
      celsius: 4,
      intake: openIntake,
      pump: { curve: steadyPump(flow) },
      plumbing: { profile: walls(0.2, -9, 10), tee: -1, bottomFeed: feed },
      filter,
    }),
  );
});
publishedBy(
  {
    source: `B.M. Das, Principles of Geotechnical Engineering, example 9.3: 1.5 m of head up through 2 m of soil (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.003,
  },
  [
    ['site-lift Das 9.3, head over head of lifting', 0.75 / (1.68 / 1.52), () => dasBalance().lift ?? Number.NaN],
    [
      'site-lift Das 9.3, effective stress on the rack, kPa',
      6.97,
      () => ((1 - (dasBalance().lift ?? Number.NaN)) * das.weight) / das.area / 1000,
    ],
  ],
);

published({
  id: 'site-stream Natarajan 8.6, depth, m',
  source: `M.K. Natarajan, Principles of Fluid Mechanics, example 8.6, wide channel (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.01,
  expected: 0.59,
  got: () => {
    const channel: Stream = {
      kind: 'stream',
      name: 'channel',
      length: 10,
      width: 1,
      slope: 0.0016,
      manning: 0.02,
      foot: 0,
      blockage: 0,
      edge: undefined,
      level: undefined,
      leak: undefined,
    };
    const pump = { curve: steadyPump(0.84) };
    const site = lifting(10, { pump, watercourse: [channel] }, { diameter: 1, length: 1 });
    const { topFeed: feed } = site.plumbing;
    const plumbing = { ...site.plumbing, topFeed: feed && { ...feed, to: 'channel' } };
    return balance({ ...site, plumbing }).levels.channel;
  },
});
