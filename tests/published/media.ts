/** Published beds, mats, lift and gaps against the media. */
import { daviesViscous, ergunInertial, ergunViscous, gapVelocity, layerLoss, liftHead } from '../../sim/laws/media.ts';
import { liftOnset } from '../../sim/network/media.ts';
import { published, publishedBy } from './checks.ts';
import { FOOT, G, GPM, INCH, PCF, PSI, rootOf } from './units.ts';

const COMPANION = 'as re-typed in the FOSSEE textbook companions; printed page not seen';
const out = new Float64Array(4);

/** Head per length lost by a bed of grains at a superficial velocity. */
const bed = (porosity: number, grain: number, viscosity: number, u: number): number =>
  ergunViscous(porosity, grain, viscosity) * u + ergunInertial(porosity, grain) * u * u;

published({
  id: 'bed Ergun',
  source: 'Ergun (1952), Chem. Eng. Prog. 48; fluids 1.0.22, packed_bed.Ergun(0.0008, 0.4, 0.001, 1000, 0.001, L=1)',
  memory: false,
  kind: 'library regression',
  tolerance: 1e-6,
  expected: 1338.867,
  got: () => 1000 * G * bed(0.4, 0.0008, 1e-6, 0.001),
});
published({
  id: 'bed 20 mm gravel at 10 mm/s',
  source: "Ergun's equation split as Forchheimer's, evaluated by hand",
  memory: false,
  kind: 'derived',
  tolerance: 0.002,
  expected: 103,
  got: () => 998.2 * G * bed(0.4, 0.02, 0.0010016 / 998.2, 0.01),
});
published({
  id: 'bed Geankoplis 3.1-4',
  source: `Geankoplis, Transport Processes and Unit Operations, example 3.1-4, air (${COMPANION}); the answer is recalled`,
  memory: true,
  kind: 'published value',
  tolerance: 0.005,
  expected: 4970,
  got: () => {
    const inlet = 1.1 * 101325;
    const massVelocity = 0.358 / ((Math.PI / 4) * 0.61 ** 2);
    const fall = (loss: number): number => {
      const density = ((inlet - loss / 2) * 28.97e-3) / (8.314462618 * 311);
      return density * G * 2.44 * bed(0.38, 0.0127, 1.9e-5 / density, massVelocity / density);
    };
    return rootOf((loss) => loss - fall(loss), 0, 20000);
  },
});
published({
  id: 'bed Das 7.6 conductivity by void ratio',
  source: `B.M. Das, Principles of Geotechnical Engineering, example 7.6 (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.01,
  expected: 0.04,
  got: () => (0.02 * ergunViscous(0.5 / 1.5, 1e-3, 1e-6)) / ergunViscous(0.65 / 1.65, 1e-3, 1e-6),
});
publishedBy(
  {
    source: `Abulencia & Theodore, Fluid Flow for the Practicing Chemical Engineer, example 26.2 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.002,
  },
  [
    [
      'bed Abulencia 26.2 velocity',
      0.01195,
      () => 1.25 / ergunViscous(0.25, 0.00417 * FOOT, (0.000676 / 62.4) * FOOT ** 2) / FOOT,
    ],
  ],
);

/** Velocity at which a bed's loss carries its buoyant weight, m/s. */
const fluidising = (porosity: number, grain: number, viscosity: number, density: number, solid: number): number =>
  rootOf(
    (u) => bed(porosity, grain, viscosity, u) - liftHead((solid - density) * (1 - porosity) * G, 1, density),
    0,
    1,
  );
published({
  id: 'bed Coulson 6.1 minimum fluidising velocity',
  source: `Coulson & Richardson, Chemical Engineering 2, example 6.1: spheres of 3 mm at porosity 0.4 in a liquid (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.005,
  expected: 0.0364,
  got: () => fluidising(0.4, 0.003, 0.003 / 1100, 1100, 4200),
});
published({
  id: 'bed Kunii 3.2 minimum fluidising velocity',
  source: `Kunii & Levenspiel, Fluidization Engineering, ch. 3 example 2, fine grains: viscous term alone (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.002,
  expected: 0.0401,
  got: () => liftHead((2600 - 1.2) * 0.45 * G, 1, 1.2) / ergunViscous(0.55, 0.67 * 1.6e-4, 1.8e-5 / 1.2),
});
published({
  id: 'lift McCabe 7.3 onset in water',
  source:
    'McCabe, Smith & Harriott, Unit Operations of Chemical Engineering, example 7.3: ion-exchange beads of 1.1 mm, ' +
    '1240 kg/m³, porosity 0.4, 8 ft deep in water at 20 °C; example and answer recalled',
  memory: true,
  kind: 'published value',
  tolerance: 0.01,
  expected: 0.00194,
  got: () => {
    const beads = { name: 'beads', thickness: 8 * FOOT, porosity: 0.4, grain: 0.0011, permittivity: undefined };
    const submergedWeight = (1240 - 998.2) * 0.6 * 8 * FOOT * G;
    const layers = [{ ...beads, capture: 0, beta: 1, deposit: 0 }];
    const media = { bottom: 0, area: 1, perimeter: 4, gap: 0, layers, submergedWeight, holdDown: 0 };
    return liftOnset({ ...media, liftSlack: 0, removal: 0, tanks: 8 }, 20);
  },
});

published({
  id: 'lift Abulencia 26.6 pressure',
  source: `Abulencia & Theodore, Fluid Flow for the Practicing Chemical Engineer, example 26.6 (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 5e-4,
  expected: 583.84,
  got: () => {
    const weight = (84 - 55) * PCF * (1 - 0.38) * 8 * FOOT * G;
    return 55 * (liftHead(weight, 1, 55 * PCF) / FOOT + 8);
  },
});
const dasWeight = (depth: number): number => ((2.68 - 1) / 1.52) * 9.81e3 * depth;
publishedBy(
  {
    source: `B.M. Das, Principles of Geotechnical Engineering, examples 9.3 and 9.4 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.003,
  },
  [
    // Effective stress is what of the lift head is left over the head that acts.
    ['lift Das 9.3 at 1 m', 3.49, () => 9.81 * (liftHead(dasWeight(1), 1, 9810 / G) - 0.75)],
    ['lift Das 9.3 at 2 m', 6.97, () => 9.81 * (liftHead(dasWeight(2), 1, 9810 / G) - 1.5)],
    [
      'lift Das 9.4 safety against heave',
      1.75,
      () => liftHead((112 - 62.4) * PCF * 20 * FOOT * G, 1, 62.4 * PCF) / (0.357 * (30.5 - 5) * FOOT),
    ],
  ],
);

/** Leak of an annulus taken as a gap between plates. */
function annulus(diameter: number, gap: number, length: number, pressure: number, viscosity: number): number {
  const density = 800;
  gapVelocity(pressure / (density * G), length, gap, viscosity / density, out);
  return out[0] * Math.PI * diameter * gap;
}
publishedBy(
  {
    source: `Fox & McDonald, Introduction to Fluid Mechanics, example 8.1; de Nevers, Fluid Mechanics for Chemical Engineers, example 6.13 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.002,
  },
  [
    ['gap Fox 8.1', 57.6e-9, () => annulus(0.025, 5e-6, 0.015, 19e6, 0.018)],
    [
      'gap de Nevers 6.13',
      0.2706,
      () => (annulus(0.25 * INCH, 1e-4 * INCH, INCH, 100 * PSI, 0.6e-3) * 3600) / INCH ** 3,
    ],
  ],
);

/** Head a mat of given permittivity loses, m. */
const mat = (permittivity: number, u: number): number =>
  layerLoss(undefined, permittivity, 0.005, 0.85, 0.85, 1e-6).viscous * 0.005 * u;
publishedBy(
  {
    source: 'AASHTO M 288 permittivities by ASTM D4491 in a US federal guide specification; a seller’s nonwoven',
    kind: 'published value',
    tolerance: 0.035,
  },
  [
    ['mat 0.5 1/s at 2 mm/s', 0.004, () => mat(0.5, 0.002)],
    ['mat 0.2 1/s at 2 mm/s', 0.01, () => mat(0.2, 0.002)],
    ['mat 0.1 1/s at 2 mm/s', 0.02, () => mat(0.1, 0.002)],
    ['mat 0.7 1/s under 50 mm', 50, () => ((0.05 / mat(0.7, 1)) * FOOT ** 2) / GPM],
  ],
);

const solids = [0.02, 0.03, 0.05, 0.08, 0.1, 0.2];
const fibre = (solid: number): number => daviesViscous(1 - solid, 1e-3, 1e-6) * ((G * 1e-6) / 1e-6);
publishedBy(
  {
    source: 'Davies (1952), Proc. Inst. Mech. Engrs. 1B: 64 c^1.5 (1 + 56 c³), evaluated',
    memory: true,
    kind: 'derived',
    tolerance: 0.004,
  },
  [0.181, 0.333, 0.721, 1.49, 2.14, 8.29].map(
    (k, i) => [`mat Davies at ${solids[i]}`, k, () => fibre(solids[i])] as const,
  ),
);
publishedBy(
  {
    source: 'Happel (1959), AIChE J. 5(2), flow across cylinders in cells: theory beside a measured correlation',
    memory: true,
    kind: 'derived',
    tolerance: 0.2,
  },
  [0.2197, 0.3827, 0.7997, 1.664, 2.42, 9.326].map(
    (k, i) => [`mat Happel at ${solids[i]}`, k, () => fibre(solids[i])] as const,
  ),
);
