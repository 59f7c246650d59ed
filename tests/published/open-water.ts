/** Published orifices, channels, rain, water and basins against the laws of open water. */

import { holeFlow, overflowPipeFlow } from '../../sim/laws/orifice.ts';
import { rationalRunoff, typeTwoFraction } from '../../sim/laws/rain.ts';
import { makeStorage, volumeAt } from '../../sim/laws/storage.ts';
import { conveyance, normalDepth, streamFlow } from '../../sim/laws/stream.ts';
import { density, dynamicViscosity, kinematicViscosity } from '../../sim/laws/water.ts';
import { shapeBasin } from '../../sim/scenario/shapes.ts';
import { published, publishedBy } from './checks.ts';
import { CFS, FOOT, INCH, rootOf, YARD } from './units.ts';

const COMPANION = 'as re-typed in the FOSSEE textbook companions; printed page not seen';
const out = new Float64Array(2);

function hole(area: number, head: number): number {
  holeFlow(area, head, out);
  return out[0];
}
publishedBy(
  {
    source: `Subramanya, 1000 Solved Problems in Fluid Mechanics, example 13.1; Schaschke, Worked Examples, example 6.6 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.002,
  },
  [
    ['orifice Subramanya 13.1', 4.707e-3, () => hole((0.598 * Math.PI * 0.04 ** 2) / 4, 2)],
    ['orifice Schaschke 6.6 at the start', 0.01504, () => hole(0.62 * 0.01, 0.3)],
  ],
);
publishedBy(
  {
    source:
      'Francis (1855) on a lip of length πD, 3.33 ft^0.5/s; orifice coefficient 0.60 on the mouth (hydraulics texts)',
    kind: 'derived',
    tolerance: 0.002,
  },
  [
    [
      'overflow pipe as a weir',
      3.33 * Math.PI * 0.5 * 0.05 ** 1.5,
      () => {
        overflowPipeFlow(0.5 * FOOT, 0.05 * FOOT, out);
        return out[0] / CFS;
      },
    ],
    [
      'overflow pipe as an orifice',
      0.6 * (Math.PI / 4) * 0.25 * Math.sqrt(2 * 32.174),
      () => {
        overflowPipeFlow(0.5 * FOOT, FOOT, out);
        return out[0] / CFS;
      },
    ],
  ],
);

const natarajan = conveyance(1, 0.0016, 0.02);
publishedBy(
  {
    source: `M.K. Natarajan, Principles of Fluid Mechanics, example 8.6, wide channel (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.01,
  },
  [
    ['channel Natarajan 8.6 depth', 0.59, () => normalDepth(0.84, natarajan)],
    [
      'channel Natarajan 8.6 depth of its flow',
      0.59,
      () =>
        rootOf(
          (depth) => {
            streamFlow(natarajan, depth, out);
            return out[0] - 0.84;
          },
          0,
          5,
        ),
    ],
  ],
);

publishedBy(
  {
    source: 'USDA NRCS NEH 630 ch. 4, type II 24 h mass curve, the table of 23 points as carried in a public code',
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    [4, 0.048],
    [8, 0.12],
    [10, 0.181],
    [11.5, 0.283],
    [11.75, 0.357],
    [12, 0.663],
    [14, 0.82],
  ].map(([hour, share]) => [`rain type II at ${hour} h`, share, () => typeTwoFraction(hour)] as const),
);
publishedBy(
  {
    source: 'USDA NRCS TR-20, type II 24 h mass curve by half hours, between the points of the short table',
    memory: true,
    kind: 'published value',
    tolerance: 0.02,
  },
  [
    [5, 0.0632],
    [7.5, 0.1089],
    [15, 0.8538],
    [18, 0.9206],
  ].map(([hour, share]) => [`rain type II at ${hour} h by half hours`, share, () => typeTwoFraction(hour)] as const),
);
const haan = (hour: number): number => 0.5 + ((hour - 12) / 24) * (24.04 / (2 * Math.abs(hour - 12) + 0.04)) ** 0.75;
publishedBy(
  {
    source: 'Haan, Barfield & Hayes (1994), Design Hydrology and Sedimentology, eq. 3.7, closed form of type II',
    kind: 'published value',
    tolerance: 0.04,
  },
  [6, 11, 11.5, 12.5, 13, 16, 20].map(
    (hour) => [`rain type II, closed form at ${hour} h`, haan(hour), () => typeTwoFraction(hour)] as const,
  ),
);
published({
  id: 'rain inch an hour on an acre',
  source: 'Rational method, 1 in/h on 1 acre is 1.008 cfs (hydrology texts)',
  memory: true,
  kind: 'published value',
  tolerance: 5e-4,
  expected: 1.008,
  got: () => rationalRunoff(INCH / 3600, 4840 * YARD ** 2, 1) / CFS,
});

published({
  id: 'water viscosity R12-08',
  source: 'IAPWS R12-08 (2008), table 4, 298.15 K at 998 kg/m³ (0.95 kg/m³ above the density at 0.1 MPa)',
  memory: true,
  kind: 'published value',
  tolerance: 5e-4,
  expected: 889.7351e-6,
  got: () => dynamicViscosity(25),
});
publishedBy(
  { source: 'ISO/TR 3666 (1998), viscosity of water at 20 °C', memory: true, kind: 'published value', tolerance: 5e-4 },
  [
    ['water viscosity ISO 20 °C', 1.0016e-3, () => dynamicViscosity(20)],
    ['water kinematic viscosity ISO 20 °C', 1.0034e-6, () => kinematicViscosity(20)],
  ],
);
publishedBy(
  {
    source: 'Tanaka et al. (2001), Metrologia 38, density of water recommended by the CIPM',
    memory: true,
    kind: 'published value',
    tolerance: 2e-5,
  },
  [
    ['water density CIPM 4 °C', 999.975, () => density(4)],
    ['water density CIPM 20 °C', 998.2067, () => density(20)],
    ['water density CIPM 25 °C', 997.047, () => density(25)],
  ],
);
const degrees = [0, 5, 10, 15, 20, 25, 30];
publishedBy(
  { source: 'IAPWS SR6-08 (2011) by the iapws 1.5 library', kind: 'library regression', tolerance: 2e-5 },
  [999.84, 999.97, 999.7, 999.1, 998.21, 997.05, 995.65].map(
    (rho, i) => [`water density IAPWS ${degrees[i]} °C`, rho, () => density(degrees[i])] as const,
  ),
);
publishedBy(
  { source: 'IAPWS SR6-08 (2011) by the iapws 1.5 library', kind: 'library regression', tolerance: 2e-4 },
  [1.7918, 1.5182, 1.3059, 1.1375, 1.0016, 0.89, 0.7972].map(
    (mu, i) => [`water viscosity IAPWS ${degrees[i]} °C`, mu, () => 1000 * dynamicViscosity(degrees[i])] as const,
  ),
);

published({
  id: 'basin excavated pond',
  source: 'USDA NRCS Agriculture Handbook 590 (1997), Ponds, volume of an excavated pond by the prismoidal formula',
  memory: true,
  kind: 'published value',
  tolerance: 5e-4,
  expected: 3612,
  got: () => {
    const { profile } = shapeBasin({
      plan: 'rectangle',
      length: 148 * FOOT,
      width: 88 * FOOT,
      depth: 12 * FOOT,
      slope: 2,
    });
    return volumeAt(makeStorage(profile), 0) / YARD ** 3;
  },
});
published({
  id: 'basin with sloped banks',
  source: 'V = L W h + s (L + W) h² + (4/3) s² h³, integrated',
  memory: false,
  kind: 'derived',
  tolerance: 1e-9,
  expected: 4.572,
  got: () => {
    const { profile } = shapeBasin({ plan: 'rectangle', length: 3.6, width: 2.6, depth: 0.6, slope: 0.5 });
    return volumeAt(makeStorage(profile), 0);
  },
});
