/** Closed forms that hold laws for which nothing is in print. */
import { chordFrom, villemonte } from '../../sim/laws/crest.ts';
import { frictionFactor, makeTransition } from '../../sim/laws/friction.ts';
import { daviesViscous, ergunViscous, gapVelocity, viscousCoefficient } from '../../sim/laws/media.ts';
import { holeFlow } from '../../sim/laws/orifice.ts';
import { makePipe, pipeLoss } from '../../sim/laws/pipe.ts';
import { curveFromBox, curveHead, pumpHead } from '../../sim/laws/pump.ts';
import { seepageFlow } from '../../sim/laws/seepage.ts';
import { reachOfSheet } from '../../sim/laws/sheet.ts';
import { levelOf, makeStorage } from '../../sim/laws/storage.ts';
import { jarrettManning } from '../../sim/laws/stream.ts';
import { evaporationFlow, floatValveFlow } from '../../sim/laws/surface.ts';
import { ballValveLoss } from '../../sim/laws/valve.ts';
import { publishedBy } from './checks.ts';
import { G } from './units.ts';

const out = new Float64Array(4);
const after = (run: () => void): number => {
  run();
  return out[0];
};

const bowl = makeStorage([
  [-1, 0],
  [0, 3],
]);
const box = curveFromBox(0.004, 4);

publishedBy({ source: 'closed form of the law', kind: 'derived', tolerance: 1e-9 }, [
  ['seepage, linear in the levels over its foot', 3e-3 * 0.2, () => after(() => seepageFlow(3e-3, 0.1, 0.3, 0, out))],
  ['float valve, half way', 1e-4, () => after(() => floatValveFlow(2e-4, -0.05, -0.01, -0.03, out))],
  ['evaporation, rate by area', 1.2e-7, () => after(() => evaporationFlow(6e-8, 2, 0, 0.3, out))],
  ['evaporation of half a millimeter', 0.6e-7, () => after(() => evaporationFlow(6e-8, 2, 0, 0.0005, out))],
  ['hole under half a millimeter', 0.5e-6 * Math.sqrt(2 * G * 0.001), () => after(() => holeFlow(1e-6, 0.0005, out))],
  [
    'reach of a sheet, critical velocity by time of fall',
    Math.cbrt(0.01 * G) * Math.sqrt((2 * 0.6) / G),
    () => reachOfSheet(0.01, 0.6),
  ],
  ['bowl ending in a point, level at a quarter of its volume', -0.5, () => levelOf(bowl, 1.5 / 4)],
  [
    'pipe of no length, ten diameters of laminar friction',
    ((640 / 1000) * ((1e3 * 1e-6) / 0.05) ** 2) / (2 * G),
    () => after(() => pipeLoss(makePipe(0.05, 0, 0, 0, 1e-6), 1e3 * 1e-6 * (Math.PI / 4) * 0.05, 0, out)),
  ],
  ['pump from the box, three quarters of its head at half its flow', 3, () => after(() => curveHead(box, 2e-3, out))],
  [
    'pump driven beyond the flow of no head',
    -1e5 * (0.005 ** 2 - 0.004 ** 2),
    () => after(() => pumpHead(box, 0.005, 1, 1e5, out)),
  ],
  [
    'mat between Ergun and Davies',
    (ergunViscous(0.92, 1e-3, 1e-6) + daviesViscous(0.92, 1e-3, 1e-6)) / 2,
    () => viscousCoefficient(0.92, 1e-3, 1e-6),
  ],
]);

publishedBy(
  { source: 'Villemonte (1947) with a chord over the last 0.1 mm of a shallow head', kind: 'derived', tolerance: 1e-9 },
  [['crest drowned, chord from 0.0075 under 20 mm', 0.0075, () => chordFrom(0.02)]],
);
publishedBy({ source: 'Villemonte (1947), half way down the chord', kind: 'derived', tolerance: 1e-9 }, [
  ['crest drowned, on the chord', 0.001 ** 0.385 / 2, () => after(() => villemonte(0.9995 ** (2 / 3), out))],
]);
publishedBy(
  {
    source: 'Jarrett (1984), J. Hydraulic Eng. 110(11), 0.39 S^0.38 R^−0.16 in feet',
    kind: 'derived',
    tolerance: 0.01,
  },
  [['channel Jarrett n', 0.39 * 0.02 ** 0.38 * (0.3 / 0.3048) ** -0.16, () => jarrettManning(0.02, 0.3)]],
);
publishedBy({ source: 'Miller (1978): the law of the open valve at 5 % open', kind: 'derived', tolerance: 0.001 }, [
  ['valve ball nearly shut', 10 ** (2.945 - 3.84 * 0.05), () => ballValveLoss(0.05 - 1e-12)],
]);
publishedBy(
  {
    source: 'Hagen–Poiseuille, f = 64/Re; fluids 1.0.22, friction.friction_laminar(128)',
    kind: 'library regression',
    tolerance: 1e-9,
  },
  [['friction laminar', 0.5, () => after(() => frictionFactor(128, makeTransition(0), out))]],
);
publishedBy(
  { source: 'f of the cubic at Re 2000 (1 + 1e-3): 64/Re to second order', kind: 'derived', tolerance: 1e-5 },
  [['friction just beyond laminar', 64 / 2002, () => after(() => frictionFactor(2002, makeTransition(0), out))]],
);
publishedBy(
  {
    source: 'Entrance 0.5, exit 1 and Darcy friction 0.04 between plates, viscosity away: u² = 2 g h/(1.5 + 0.04 L/2δ)',
    kind: 'derived',
    tolerance: 1e-3,
  },
  [
    [
      'gap, short and wide',
      Math.sqrt((2 * G * 0.1) / 1.52),
      () => after(() => gapVelocity(0.1, 0.05, 0.05, 1e-9, out)),
    ],
    ['gap, long and narrow', Math.sqrt((2 * G * 0.1) / 5.5), () => after(() => gapVelocity(0.1, 1, 0.005, 1e-9, out))],
  ],
);
