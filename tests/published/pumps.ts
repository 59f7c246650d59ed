/** Published pump curves, affinity, power and standing loss against the pump. */
import {
  curveFromPoints,
  curveHead,
  monotoneSlopes,
  type PowerCurve,
  pumpHead,
  standingLoss,
  wirePower,
} from '../../sim/laws/pump.ts';
import { published, publishedBy } from './checks.ts';
import { FOOT, G, GPM, HORSEPOWER, rootOf } from './units.ts';

const COMPANION = 'as re-typed in the FOSSEE textbook companions; printed page not seen';
const out = new Float64Array(3);

const rpn14 = {
  x: [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20],
  y: [0, 2.76429e-5, 0.0437498, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994],
  slopes: [
    1.04795355904934e-6, 0.000829286337860659, 0.341584510990197, 0.423218725490196, 0.59669, 0.0822609884336083,
    0.00128070626705597, 4.4163040463891e-5, 8.63862587378763e-6,
  ],
  at: [8.04, 8.14, 8.45, 8.95, 9.6, 11, 13.5, 17.5],
  between: [
    3.46847019622973e-6, 0.0176292811418463, 0.102152952656454, 0.308463545343137, 0.758026901156639, 0.991433070541638,
    0.999741203709972, 0.999978702759119,
  ],
};
const rising = curveFromPoints(rpn14.x.map((x, i) => [x, rpn14.y[i]] as const));
publishedBy(
  {
    source:
      'Fritsch & Carlson (1980), SIAM J. Numer. Anal. 17, data RPN 14; values by R 4.2.2 splinefun(method = "monoH.FC")',
    kind: 'library regression',
    tolerance: 1e-6,
  },
  [
    ...rpn14.slopes.map(
      (slope, i) => [`curve RPN 14 slope ${i + 1}`, slope, () => monotoneSlopes(rpn14.x, rpn14.y)[i]] as const,
    ),
    ...rpn14.between.map(
      (y, i) =>
        [
          `curve RPN 14 at ${rpn14.at[i]}`,
          y,
          () => {
            curveHead(rising, rpn14.at[i], out);
            return out[0];
          },
        ] as const,
    ),
  ],
);

/** m³/h and m. */
const hydraulicInstitute = {
  flow: [0, 22.7, 45.4, 68.1, 90.8, 113.6, 136.3, 159, 181.7, 204.4, 227.1, 249.8, 272.5],
  head: [61, 60.7, 59.7, 58.5, 57.9, 56.7, 54.9, 53.3, 50.3, 47.2, 42.7, 38.1, 30.5],
  efficiency: [0, 0.25, 0.4, 0.5, 0.58, 0.65, 0.71, 0.75, 0.77, 0.78, 0.76, 0.72, 0.65],
  kilowatts: [0, 15, 18.5, 21.7, 24.7, 26.9, 28.6, 30.8, 32.3, 33.7, 34.8, 36, 34.8],
};
const perHour = curveFromPoints(hydraulicInstitute.flow.map((q, i) => [q, hydraulicInstitute.head[i]] as const));
publishedBy(
  {
    source:
      'Hydraulic Institute public data tool, Pump Fundamentals B, curve; values by R 4.2.2 splinefun(method = "monoH.FC")',
    kind: 'library regression',
    tolerance: 1e-9,
  },
  [
    [10, 60.9058423369314, -0.00860787257814605],
    [100, 57.4881916260667, -0.0500296618760219],
    [150, 54.0259633021327, -0.0655434350598351],
    [220, 44.1619358946158, -0.208571145472765],
    [260, 34.8893999042325, -0.347465175719451],
  ].flatMap(([q, head, slope]) => {
    const at = (i: number) => (): number => {
      curveHead(perHour, q, out);
      return out[i];
    };
    return [
      [`curve HI head at ${q}`, head, at(0)],
      [`curve HI slope at ${q}`, slope, at(1)],
    ] as const;
  }),
);

const byEfficiency = (efficiency: number): PowerCurve => ({
  flow: new Float64Array(0),
  watts: new Float64Array(0),
  efficiency,
});
/** Shaft power of a head at a flow, W. */
function power(flow: number, head: number, efficiency: number, density: number): number {
  wirePower(byEfficiency(efficiency), flow, 1, Float64Array.of(head, 0, 0), density, out);
  return out[0];
}

const inSI = curveFromPoints(hydraulicInstitute.flow.map((q, i) => [q / 3600, hydraulicInstitute.head[i]] as const));
publishedBy(
  {
    source: 'Hydraulic Institute public data tool, Pump Fundamentals B, table and eq. 1.B.4 (efficiency to two digits)',
    kind: 'published value',
    tolerance: 0.01,
  },
  hydraulicInstitute.kilowatts.slice(1).map((kilowatts, i) => {
    const flow = hydraulicInstitute.flow[i + 1];
    const got = (): number => {
      const head = new Float64Array(3);
      pumpHead(inSI, flow / 3600, 1, 0, head);
      wirePower(byEfficiency(hydraulicInstitute.efficiency[i + 1]), flow / 3600, 1, head, 1000, out);
      return out[0] / 1000;
    };
    return [`power HI at ${flow} m³/h`, kilowatts, got] as const;
  }),
);

const crane33 = curveFromPoints([
  [0, 160 * FOOT],
  [200 * GPM, 150 * FOOT],
  [400 * GPM, 126 * FOOT],
  [500 * GPM, 105 * FOOT],
]);
const slow = 1700 / 3500;
publishedBy(
  {
    source:
      'Crane TP-410 (2009), example 7-33 (affinity at 1700 of 3500 rpm), printed answer as quoted in the worked problems of the fluids library',
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    [
      'affinity Crane 7-33 head',
      29.73,
      () => {
        pumpHead(crane33, 194.3 * GPM, slow, 0, out);
        return out[0] / FOOT;
      },
    ],
    [
      'affinity Crane 7-33 flow',
      194.3,
      () => {
        const drop = (flow: number): number => {
          pumpHead(crane33, flow, slow, 0, out);
          return 29.73 * FOOT - out[0];
        };
        return rootOf(drop, 0, 240 * GPM) / GPM;
      },
    ],
    [
      'affinity Crane 7-33 power',
      2.005,
      () => {
        const curve = { flow: Float64Array.of(0), watts: Float64Array.of(17.5 * HORSEPOWER), efficiency: 0 };
        wirePower(curve, 194.3 * GPM, slow, new Float64Array(3), 1000, out);
        return out[0] / HORSEPOWER;
      },
    ],
  ],
);
publishedBy(
  {
    source:
      'Crane TP-410 (2009), examples 7-15 and 7-34, printed answers as quoted in the worked problems of the fluids library',
    kind: 'published value',
    tolerance: 0.005,
  },
  [
    ['power Crane 7-15', 15.2, () => power(100 * GPM, 421 * FOOT, 0.7, 997.9) / HORSEPOWER],
    ['power Crane 7-34 shaft', 107.06, () => power(700 * GPM, 428 * FOOT, 70.7 / 100, 999) / HORSEPOWER],
    ['power Crane 7-34 wire', 117.39, () => power(700 * GPM, 428 * FOOT, (70.7 / 100) * 0.95 * 0.96, 999) / HORSEPOWER],
  ],
);
publishedBy(
  {
    source: `Cengel & Cimbala, Fluid Mechanics, example 14-2 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    ['power Cengel 14-2 greater', 6530, () => power(0.0233, 21.9, 0.765, 998)],
    ['power Cengel 14-2 lesser', 2379, () => power(0.0233, 7.3, 0.7, 998)],
  ],
);
published({
  id: 'power Khan 12.1 efficiency',
  source: `I.A. Khan, Fluid Mechanics, example 12.1 (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.006,
  expected: 0.74,
  got: () => power(0.25, 25, 1, 7848 / G) / (350 * ((2 * Math.PI * 1800) / 60)),
});

const schaschke = curveFromPoints([
  [0, 40],
  [0.002, 39.5],
  [0.004, 38],
  [0.006, 35],
  [0.008, 30],
  [0.01, 20],
]);
function headOf(curve: typeof schaschke, flow: number, speed = 1): number {
  pumpHead(curve, flow, speed, 0, out);
  return out[0];
}
const dutyFlow = (): number => rootOf((flow) => 10 + 5.42e5 * flow * flow - headOf(schaschke, flow), 0, 0.01);
publishedBy(
  {
    source: `Schaschke, Fluid Mechanics: Worked Examples for Engineers, example 9.10, read from a graph (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.012,
  },
  [
    ['duty Schaschke 9.10 flow', 0.0066, dutyFlow],
    ['duty Schaschke 9.10 head', 33.8, () => headOf(schaschke, dutyFlow())],
  ],
);
published({
  id: 'affinity Schaschke 9.10 speed',
  source: `Schaschke, Fluid Mechanics: Worked Examples for Engineers, example 9.10 part 2 (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.001,
  expected: 987,
  got: () => {
    const corresponding = rootOf((flow) => 34 - headOf(schaschke, flow), 0, 0.01);
    return 1200 * rootOf((n) => headOf(schaschke, n * corresponding, n) - 23, 0.1, 1);
  },
});

const FOUR_QUADRANT =
  'Wylie & Streeter (1978/1993), Fluid Transients, complete characteristics at nq 25, as carried in two public codes';
publishedBy({ source: FOUR_QUADRANT, kind: 'published value', tolerance: 0.005 }, [
  [
    'standing pump, head at rated flow over rated head',
    0.692,
    () => {
      const rated = curveFromPoints([
        [0, 5],
        [0.003, 4],
        [0.006, 1],
      ]);
      const area = 0.002;
      return (standingLoss(rated, area) * (0.003 / area) ** 2) / (2 * G) / 4;
    },
  ],
]);
publishedBy({ source: `derived from ${FOUR_QUADRANT}`, kind: 'derived', tolerance: 0.01 }, [
  [
    'standing pump, K on a 50 mm main',
    23.2,
    () => {
      const rated = curveFromPoints([
        [0, 5],
        [0.003, 4],
        [0.006, 1],
      ]);
      return standingLoss(rated, (Math.PI / 4) * 0.05 ** 2);
    },
  ],
]);
