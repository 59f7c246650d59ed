/** Published pipe friction, fittings and valves against the pipe. */
import { fittingsLoss, turbulentFriction } from '../../sim/laws/fittings.ts';
import { makePipe, pipeLoss } from '../../sim/laws/pipe.ts';
import { ballValveLoss, cockLoss } from '../../sim/laws/valve.ts';
import { kinematicViscosity } from '../../sim/laws/water.ts';
import { published, publishedBy } from './checks.ts';
import { friction, roughnessFor } from './roughness.ts';
import { FOOT, G, GALLON_US, GPM, INCH, PCF, rootOf } from './units.ts';

const COMPANION = 'as re-typed in the FOSSEE textbook companions; printed page not seen';
const CRANE = 'Crane TP-410 (2009), printed answer as quoted in the worked problems of the fluids library';
const out = new Float64Array(2);

interface Line {
  readonly bore: number;
  readonly length: number;
  readonly roughness: number;
  readonly k: number;
  /** Kinematic, m²/s. */
  readonly viscosity: number;
}

function loss({ bore, length, roughness, k, viscosity }: Line, flow: number): number {
  pipeLoss(makePipe(bore, length, roughness, k, viscosity), flow, 0, out);
  return out[0];
}

publishedBy(
  {
    source: `Cengel & Cimbala, Fluid Mechanics, example 8-2 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.005,
  },
  [
    [
      'pipe Cengel 8-2 laminar head',
      4.46,
      () =>
        loss(
          { bore: 0.003, length: 9, roughness: 0, k: 0, viscosity: 0.001519 / 1000 },
          (0.9 * Math.PI * 0.003 ** 2) / 4,
        ),
    ],
  ],
);
const tube: Line = { bore: 0.05, length: 60, roughness: 2e-6, k: 0, viscosity: 0.001138 / 999 };
publishedBy(
  {
    source: `Cengel & Cimbala, Fluid Mechanics, example 8-3 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.005,
  },
  [
    ['pipe Cengel 8-3 friction factor', 0.0172, () => friction((4 * 0.006) / (Math.PI * 0.05 * tube.viscosity), 4e-5)],
    ['pipe Cengel 8-3 head', 9.85, () => loss(tube, 0.006)],
    ['pipe Cengel 8-3 pressure', 96536, () => 999 * G * loss(tube, 0.006)],
  ],
);
const line: Line = {
  bore: 0.05,
  length: 89,
  roughness: 2.6e-4,
  k: 0.5 + 2 * 0.3 + 0.2 + 1.06,
  viscosity: 0.001307 / 999.7,
};
publishedBy(
  {
    source: `Cengel & Cimbala, Fluid Mechanics, example 8-8 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.005,
  },
  [
    [
      'pipe Cengel 8-8 friction factor',
      0.0315,
      () => friction((4 * 0.006) / (Math.PI * 0.05 * line.viscosity), 0.0052),
    ],
    ['pipe Cengel 8-8 head between reservoirs', 27.8, () => loss(line, 0.006)],
  ],
);

/** Inside diameters of schedule 40 pipe (ASTM D1785, ASME B36.10M). */
const BORE = { 2: 2.067 * INCH, 3: 3.068 * INCH } as const;
const smooth50 = makePipe(BORE[2], 1, 0, 0, kinematicViscosity(30));
publishedBy({ source: `${CRANE}, example 7-1`, kind: 'published value', tolerance: 0.01 }, [
  ['pipe Crane 7-1 Reynolds number', 100600, () => smooth50.reynolds * (0.2 / 60)],
  ['pipe Crane 7-1 friction factor', 0.0179, () => friction(smooth50.reynolds * (0.2 / 60), 0)],
]);
published({
  id: 'pipe Crane 7-15 head',
  source: `${CRANE}, example 7-15; 3 in valve K from 600, gate from 8 and elbows from 30 f_T`,
  memory: false,
  kind: 'published value',
  tolerance: 0.005,
  expected: 421,
  got: () => {
    const bore = BORE[3];
    const lift = 600 * turbulentFriction(2.469 * INCH) * (3.068 / 2.469) ** 4;
    const k = lift + 8 * turbulentFriction(bore) + fittingsLoss({ elbow90: 4, exit: 1 }, bore);
    const viscosity = 0.95e-3 / (62.298 * PCF);
    return (400 * FOOT + loss({ bore, length: 500 * FOOT, roughness: 0.0022 * INCH, k, viscosity }, 100 * GPM)) / FOOT;
  },
});
/** The solution takes the ratio of the two bores, 2.067 to 3.068, as 0.67. */
const NARROWED = 0.67;
published({
  id: 'pipe Crane 7-19 flow',
  source: `${CRANE}, example 7-19; miter bend K from 60 and gate from 8 f_T, contraction 0.5 (1 − β²)`,
  memory: false,
  kind: 'published value',
  tolerance: 0.01,
  expected: 137,
  got: () => {
    const viscosity = 1.1e-3 / (62.364 * PCF);
    const roughness = 0.0018 * INCH;
    const wide = fittingsLoss({ entrance: 1 }, BORE[3]) + (60 + 8) * turbulentFriction(BORE[3]);
    const narrow = fittingsLoss({ exit: 1 }, BORE[2]) + 0.5 * (1 - NARROWED ** 2);
    const head = (flow: number): number =>
      loss({ bore: BORE[3], length: 10 * FOOT, roughness, k: wide, viscosity }, flow) +
      loss({ bore: NARROWED * BORE[3], length: 20 * FOOT, roughness, k: narrow, viscosity }, flow);
    return rootOf((flow) => head(flow) - 11.5 * FOOT, 0, 0.1) / GPM;
  },
});

publishedBy(
  {
    source: `R.S. Paradise, Problems in Hydraulics, example 6.2; Choudhary & Prakash, Fluid Mechanics, example 7.18 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.002,
  },
  [
    [
      'pipe Paradise 6.2 siphon',
      1974,
      () => {
        const bore = 14 * INCH;
        const siphon = { bore, length: 3200 * FOOT, roughness: roughnessFor(0.04, bore), k: 1.5, viscosity: 1e-10 };
        // The book's gallon is 1/6.24 cubic foot.
        return (rootOf((flow) => loss(siphon, flow) - 42 * FOOT, 0, 1) / FOOT ** 3) * 6.24 * 60;
      },
    ],
    [
      'pipe Choudhary 7.18 siphon',
      4.65e-3,
      () => {
        const siphon = { bore: 0.1, length: 700, roughness: roughnessFor(0.08, 0.1), k: 0, viscosity: 1e-10 };
        return rootOf((flow) => loss(siphon, flow) - 10, 0, 1);
      },
    ],
  ],
);

publishedBy(
  {
    source:
      'Illinois Administrative Code 77, part 906, appendix A, exhibit I: schedule 40 plastic pipe by Hazen–Williams, C = 150 (another formula, empirical, held good to a tenth)',
    kind: 'published value',
    tolerance: 0.1,
  },
  (
    [
      [2, 0.05248, 20, 0.74],
      [2, 0.05248, 30, 1.54],
      [2, 0.05248, 40, 2.62],
      [2, 0.05248, 50, 3.98],
      [3, 0.07792, 50, 0.58],
      [3, 0.07792, 60, 0.81],
      [3, 0.07792, 80, 1.38],
      [3, 0.07792, 100, 2.09],
    ] as const
  ).map(
    ([size, bore, gpm, head]) =>
      [
        `pipe plastic ${size} in at ${gpm} gpm`,
        head,
        () =>
          loss({ bore, length: 100 * FOOT, roughness: 1.5e-6, k: 0, viscosity: kinematicViscosity(15) }, gpm * GPM) /
          FOOT,
      ] as const,
  ),
);
published({
  id: 'friction Colebrook 1e5, 1e-4',
  source: 'fluids 1.0.22, friction.Colebrook(1e5, 1e-4)',
  memory: false,
  kind: 'library regression',
  tolerance: 1e-6,
  expected: 0.0185138661,
  got: () => friction(1e5, 1e-4),
});
publishedBy(
  {
    source: "Moody diagram points (any hydraulics text), equal to Colebrook's equation",
    memory: true,
    kind: 'derived',
    tolerance: 0.006,
  },
  [
    [1e4, 0, 0.0309],
    [1e5, 0, 0.018],
    [1e6, 0, 0.0116],
    [1e5, 0.001, 0.0222],
    [1e6, 0.001, 0.0199],
    [1e5, 0.01, 0.0385],
    [1e8, 0.05, 0.0716],
  ].map(([re, rough, f]) => [`friction Moody ${re}, ${rough}`, f, () => friction(re, rough)] as const),
);

publishedBy(
  {
    source: 'Crane TP-410 (2009), appendix A, friction factor in complete turbulence, two digits',
    memory: true,
    kind: 'published value',
    tolerance: 0.03,
  },
  [
    [0.5, 0.622, 0.026],
    [0.75, 0.824, 0.024],
    [1, 1.049, 0.022],
    [1.25, 1.38, 0.021],
    [1.5, 1.61, 0.02],
    [2, 2.067, 0.019],
    [2.5, 2.469, 0.018],
    [3, 3.068, 0.017],
    [4, 4.026, 0.016],
    [6, 6.065, 0.015],
  ].map(([size, bore, f]) => [`fittings f_T ${size} in`, f, () => turbulentFriction(bore * INCH)] as const),
);
publishedBy(
  {
    source: 'Crane TP-410, appendix A, "K" factor table: multiples of f_T (0.0190 in 2 in pipe), entrance and exit',
    memory: true,
    kind: 'published value',
    tolerance: 0.012,
  },
  [
    ['fittings K elbow 90°', 0.57, () => fittingsLoss({ elbow90: 1 }, BORE[2])],
    ['fittings K elbow 45°', 0.304, () => fittingsLoss({ elbow45: 1 }, BORE[2])],
    ['fittings K ball valve', 0.057, () => fittingsLoss({ ballValve: 1 }, BORE[2])],
    ['fittings K swing check', 1.9, () => fittingsLoss({ checkSwing: 1 }, BORE[2])],
    ['fittings K entrance', 0.5, () => fittingsLoss({ entrance: 1 }, BORE[2])],
    ['fittings K exit', 1, () => fittingsLoss({ exit: 1 }, BORE[2])],
  ],
);

const openings = [1, 8 / 9, 7 / 9, 6 / 9, 5 / 9, 4 / 9, 3 / 9, 2 / 9, 1 / 9];
publishedBy(
  {
    source: 'Miller (1978), Internal Flow Systems, sec. 14.6, ball valve, as fitted in the FluidDissipation library',
    kind: 'published value',
    tolerance: 0.005,
  },
  [0.127, 0.34, 0.909, 2.43, 6.48, 17.3, 46.2, 123.5, 330].map(
    (k, i) => [`valve ball ${10 * i}° closed`, k, () => ballValveLoss(openings[i])] as const,
  ),
);
publishedBy(
  {
    source: "Perry's Chemical Engineers' Handbook, additional frictional loss, plug cock (Weisbach)",
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    [5, 0.05],
    [10, 0.29],
    [20, 1.56],
    [40, 17.3],
    [60, 206],
  ].map(([degrees, k]) => [`valve cock ${degrees}° closed`, k, () => cockLoss(1 - degrees / 90)] as const),
);
publishedBy(
  {
    source: 'Munson, Young & Okiishi, Fundamentals of Fluid Mechanics, table 8.2 (its ball valve is the cock)',
    kind: 'published value',
    tolerance: 0.025,
  },
  [
    ['valve cock a third closed', 5.5, () => cockLoss(2 / 3)],
    ['valve cock two thirds closed', 210, () => cockLoss(1 / 3)],
  ],
);

publishedBy(
  {
    source:
      'Minnesota Pollution Control Agency, onsite sewage worksheets, table II: liquid in plastic pipe, gal/ft, two digits',
    kind: 'published value',
    tolerance: 0.045,
  },
  [
    [1, 1.049, 0.045],
    [1.25, 1.38, 0.078],
    [1.5, 1.61, 0.11],
    [2, 2.067, 0.17],
  ].map(
    ([size, bore, gallons]) =>
      [
        `pipe holds, ${size} in`,
        gallons,
        () => (makePipe(bore * INCH, 1, 0, 0, 1e-6).area * FOOT) / GALLON_US,
      ] as const,
  ),
);
