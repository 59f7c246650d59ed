/** Published times in which weirs and orifices empty a vessel, answered by running a site with that vessel in it. */
import { IDEAL_CREST } from '../../sim/laws/crest.ts';
import { published, publishedBy } from './checks.ts';
import { flowAtStart, labSite, levelAfter, levelAt, stone, timeToFall, vee, vessel, walls, weir } from './site.ts';
import { COMPANION, holeArea, profileOf, timeWhen } from './site-parts.ts';
import { FOOT, G, INCH, rootOf, YARD } from './units.ts';

/** Coefficient on the ideal broad crest of a weir that passes c b h^1.5 in meters. */
const onCrest = (c: number): number => c / IDEAL_CREST;
/** The same for feet. */
const inFeet = (c: number): number => onCrest(c * Math.sqrt(FOOT));
/** The same of a V with sides of 45°, whose c is on h^2.5. */
const onVee = (c: number): number => c / (0.8 * IDEAL_CREST);

/** Time in which a vessel falls from one head over a crest to another. */
function overCrest(area: number, crest: ReturnType<typeof weir>, from: number, to: number, span: number): number {
  const tank = vessel('tank', walls(area, -1), { level: from, stones: [stone('lip', crest)] });
  const pond = { profile: walls(1e8, -10, 0) };
  return timeToFall(labSite({ span, pond, watercourse: [tank] }), 'tank', to);
}

/** Time in which a vessel falls from one head over a hole to another. */
function throughHole(profile: ReturnType<typeof profileOf>, hole: number, from: number, to: number, span: number) {
  const tank = vessel('tank', profile, { level: from, leak: { elevation: 0, area: hole } });
  return timeToFall(labSite({ span, watercourse: [tank] }), 'tank', to);
}

publishedBy(
  {
    source: `J. Lal, Hydraulics, example 4.9; Walshaw & Jobson, Mechanics of Fluids, example 5.6.2 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    [
      'site-weir Lal 4.9, reservoir falling by half its head, min',
      109.5,
      () => {
        const crest = weir(5 * FOOT, 0, inFeet((2 / 3) * 0.6 * Math.sqrt(2 * 32.2)));
        return overCrest(20000 * YARD ** 2, crest, 2 * FOOT, FOOT, 8000) / 60;
      },
    ],
    [
      'site-weir Walshaw 5.6.2, reservoir falling from 2 ft to 3 in, s',
      30200,
      () => {
        const crest = weir(12 * FOOT, 0, inFeet(0.4 * Math.sqrt(2 * 32.2)));
        return overCrest(50000 * YARD ** 2, crest, 2 * FOOT, 3 * INCH, 40000);
      },
    ],
  ],
);
publishedBy(
  {
    source: `Schaschke, Worked Examples, example 7.11; Lewitt, Hydraulics and Fluid Mechanics, example 5.8 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.002,
  },
  [
    [
      'site-notch Schaschke 7.11, tank falling over a V, s',
      257,
      () => overCrest(8, vee(1, 0, onVee(1.5)), 0.15, 0.05, 400),
    ],
    [
      'site-notch Lewitt 5.8, tank falling over a V to an inch, min',
      8.2,
      () => overCrest(48 * FOOT ** 2, vee(1, 0, onVee(2.64 * Math.sqrt(FOOT))), FOOT, INCH, 700) / 60,
    ],
  ],
);
published({
  id: 'site-weir broad crest falling for a minute, m',
  source: 'H = H₀/(1 + C b √H₀ t/2A)², integrated',
  memory: false,
  kind: 'derived',
  tolerance: 1e-3,
  expected: 0.003356887118678166,
  got: () => {
    const pool = vessel('pool', walls(2, -1), { level: 0.05, stones: [stone('lip', weir(0.5, 0, onCrest(1.705)))] });
    return levelAfter(labSite({ span: 60, watercourse: [pool] }), 'pool');
  },
});
published({
  id: 'site-weir Brasch 5.9, broad crest, m³/s',
  source: `Brasch & Whyman, Problems in Fluid Flow, example 5.9, 1.705 B (D − Z)^1.5 (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.001,
  expected: 33.47,
  got: () => {
    const channel = vessel('channel', walls(1000), { level: 2.58, stones: [stone('sill', weir(12.8, 1.25))] });
    return flowAtStart(labSite({ span: 1, watercourse: [channel] }), 'sill');
  },
});

const schaschke = (hole: number, gravity: number): number => holeArea(0.6, (Math.PI / 4) * hole ** 2, gravity);
const frustum = (h: number): number => Math.PI * ((4 * (h / FOOT + 6)) / 16) ** 2 * FOOT ** 2;
publishedBy(
  {
    source: `Schaschke, Worked Examples, examples 6.3 and 6.4 (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    [
      // A prism takes as long for the upper three quarters of its head as for the rest of it.
      'site-drain Schaschke 6.3, cylinder emptied, twice the time to a quarter, s',
      2124.5,
      () => {
        const area = Math.PI / 4;
        const head = 1 / area;
        return (
          2 *
          throughHole(
            [
              [0, area],
              [2, area],
            ],
            schaschke(0.02, 9.8),
            head,
            head / 4,
            1500,
          )
        );
      },
    ],
    [
      'site-drain Schaschke 6.4, sphere emptied, s',
      2285,
      () => {
        const sphere = profileOf((h) => Math.PI * (4 * h - h * h), 2);
        return throughHole(sphere, schaschke(0.05, 9.81), 1.5, 0.001, 2400);
      },
    ],
  ],
);
publishedBy(
  { source: `J. Lal, Hydraulics, examples 3.6 and 3.7 (${COMPANION})`, kind: 'published value', tolerance: 0.002 },
  [
    [
      'site-drain Lal 3.6, coefficient from four minutes of falling',
      0.619,
      () => {
        const area = (Math.PI / 4) * (4 * FOOT) ** 2;
        const bore = (Math.PI / 4) * (2 * INCH) ** 2;
        const time = (cd: number): number =>
          throughHole(
            [
              [0, area],
              [3, area],
            ],
            holeArea(cd, bore, 32.2 * FOOT),
            6 * FOOT,
            2 * FOOT,
            400,
          );
        return rootOf((cd) => 240 - time(cd), 0.5, 0.8);
      },
    ],
    [
      'site-drain Lal 3.7, frustum of a cone, min',
      5.14,
      () => {
        const hole = holeArea(0.61, (9 / 144) * FOOT ** 2, 32.2 * FOOT);
        return throughHole(profileOf(frustum, 11 * FOOT), hole, 10 * FOOT, 2 * FOOT, 400) / 60;
      },
    ],
  ],
);
published({
  id: 'site-drain Schaschke 6.8, tank with an inflow, s',
  source: 'Schaschke, Worked Examples, example 6.8: t = −2A/k² [Q ln((Q − k√H₂)/(Q − k√H₁)) + k(√H₂ − √H₁)], evaluated',
  memory: false,
  kind: 'derived',
  tolerance: 0.001,
  expected: 1525.3,
  got: () => {
    const leak = { elevation: -6, area: 0.32659863237109044 / Math.sqrt(2 * G) };
    const hoses = [{ name: 'inflow', flow: 0.2, on: true, meter: undefined }];
    const site = labSite({ span: 1600, pond: { profile: walls(150, -10, 0), level: -4.5, leak }, hoses });
    return timeWhen(site, (record, t) => -5.5 - levelAt(record, 'pond', t));
  },
});
