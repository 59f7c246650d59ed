/** Published tanks and reservoirs on pipes, answered by running a site with them in it. */
import { turbulentFriction } from '../../sim/laws/fittings.ts';
import { run } from '../../sim/simulate.ts';
import { published, publishedBy } from './checks.ts';
import { roughnessFor } from './roughness.ts';
import { flowAtStart, labSite, levelAt, timeToFall, topFeed, vessel, walls } from './site.ts';
import { COMPANION, flowAtEnd, lossOnly, timeToLevel, twoTanks } from './site-parts.ts';
import { FOOT, G, GPM, INCH } from './units.ts';

/** Water as the sources take it where they name no temperature, 15 °C, m²/s. */
const VISCOSITY = 1.139e-6;

/** A pipe whose own friction law gives a source's constant factor at a velocity in the middle of the run. */
function ofFactor(factor: number, bore: number, length: number, velocity: number, k: number) {
  return { diameter: bore, length, roughness: roughnessFor(factor, bore, (velocity * bore) / VISCOSITY), k };
}

/** Time in which a tank falls from one level to another through a pipe that ends in air, s. */
function emptying(area: number, from: number, to: number, outlet: number, pipe: object, celsius = 15): number {
  const site = labSite({
    span: 10000,
    celsius,
    watercourse: [vessel('lower', walls(1e4, outlet - 2, outlet + 2), { level: outlet - 1 })],
    plumbing: {
      profile: walls(area, outlet - 1, 5),
      level: from,
      tee: outlet,
      topFeed: topFeed(outlet, 'lower', pipe),
      bottomFeed: undefined,
    },
  });
  return timeToFall(site, 'riser', to);
}

publishedBy(
  {
    source: `Brasch & Whyman, example 1.9; J.F. Douglas, Fluid Mechanics, example 14.9; their constant friction factor met by our own at the mean velocity (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    [
      'site-pipe Brasch 1.9, tank emptied by a pipe under it, s',
      514.7,
      () => {
        const pipe = ofFactor(8 * 0.00475, 0.0042, 0.52, 1.73, 1);
        return emptying((Math.PI / 4) * 0.28 ** 2, 0.45, 0.25, -0.52, pipe);
      },
    ],
    [
      'site-pipe Douglas 14.9, tank emptied by a short pipe, s',
      7079,
      () => emptying(6, 3.5, 2.25, 0, ofFactor(0.04, 0.02, 1.5, 3.4, 1.9)),
    ],
  ],
);
publishedBy(
  {
    source: `J.F. Douglas, Fluid Mechanics, example 14.12; Lewitt, Hydraulics and Fluid Mechanics, example 7.8, printed to the minute; their constant friction factor met by our own at the mean velocity (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.0025,
  },
  [
    [
      'site-tanks Douglas 14.12, short pipe, s',
      2600,
      () => {
        const pipe = ofFactor(0.04, 0.02, 1.5, 3.1, 1.9);
        return timeToLevel(twoTanks({ areas: [6, 4.5], difference: 3, pipe, span: 4000 }), 2);
      },
    ],
    [
      'site-tanks Lewitt 7.8, long pipe, min',
      216,
      () => {
        const pipe = ofFactor(0.04, 0.25 * FOOT, 1000 * FOOT, 0.375, 1);
        const areas = [400 * FOOT ** 2, 225 * FOOT ** 2] as const;
        return timeToLevel(twoTanks({ areas, difference: 7.22 * FOOT, pipe, span: 20000 }), 1.66 * FOOT) / 60;
      },
    ],
  ],
);
published({
  id: 'site-tanks Massey 7.6, two pipes, fall in 15 min, m',
  source: `Massey & Ward-Smith, Mechanics of Fluids, example 7.6; its constant friction factor met by our own at the mean velocity (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.002,
  expected: 0.359,
  got: () => {
    const pipe = ofFactor(0.028, 0.05, 75, 0.71, 1.5);
    const areas = [(Math.PI / 4) * 9, (Math.PI / 4) * 4] as const;
    const { record } = run(twoTanks({ areas, difference: 1.8, pipe, span: 900, twice: true }));
    return levelAt(record, 'riser', 0) - levelAt(record, 'riser', 900);
  },
});

/** An orifice under water as a loss: head = (Q/(cd a))²/2g under the source's g. */
const underWater = (cd: number, area: number, gravity: number) => lossOnly(G / gravity / cd ** 2, area);
published({
  id: 'site-tanks Schaschke 6.6, orifice between them, s',
  source: `Schaschke, Worked Examples, example 6.6 (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.001,
  expected: 44.96,
  got: () => {
    const pipe = underWater(0.62, 0.01, 9.81);
    return timeToLevel(twoTanks({ areas: [8, 4], difference: 0.3, pipe, span: 100 }), 0.1);
  },
});
published({
  id: 'site-tanks Lal 3.11, orifice between them, min',
  source: `J. Lal, Hydraulics, example 3.11, printed to two digits (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.01,
  expected: 4.5,
  got: () => {
    const pipe = underWater(0.6, 4 * INCH ** 2, 32.2 * FOOT);
    const areas = [72 * FOOT ** 2, 24 * FOOT ** 2] as const;
    return timeToLevel(twoTanks({ areas, difference: 9 * FOOT, pipe, span: 400 }), 4 * FOOT) / 60;
  },
});

publishedBy(
  {
    source:
      'Measured: tank drained through a smooth sloping tube, University of Waterloo student laboratory, public repository (S. Robens-Paradise, tank-drainage); entrance 0.5 and bore roughness 1.5 µm assumed, scatter some 10 %',
    kind: 'published value',
    tolerance: 0.115,
  },
  (
    [
      [0.2, 199],
      [0.3, 214],
      [0.4, 266],
      [0.6, 288],
    ] as const
  ).map(([length, time]) => {
    const pipe = { diameter: 0.00794, length, roughness: 1.5e-6, k: 1, fittings: { entrance: 1 } };
    const got = (): number => emptying(0.32 * 0.26, 0.1, 0.02, -length / 150, pipe, 20);
    return [`site-tube measured, ${length} m, s`, time, got] as const;
  }),
);

published({
  id: 'site-gravity Cengel 8-8, between reservoirs, m³/s',
  source: `Cengel & Cimbala, Fluid Mechanics, example 8-8, 31.8 m over 4 m (${COMPANION})`,
  memory: false,
  kind: 'published value',
  tolerance: 0.002,
  expected: 0.006,
  got: () => {
    const pipe = { diameter: 0.05, length: 89, roughness: 2.6e-4, k: 0.5 + 2 * 0.3 + 0.2 + 1.06 };
    const site = twoTanks({ areas: [1e4, 1e4], difference: 27.8, pipe, span: 1 });
    return flowAtStart({ ...site, water: { temperature: 10 } }, 'top feed');
  },
});

/** A reservoir as the vault, the pump in it standing without loss; out of it the main, and the top feed from its end. */
function throughStandingPump(main: object, feed: object, drop: number, celsius: number): number {
  const site = labSite({
    span: 60,
    celsius,
    pump: { standingLoss: 0, minimum: -8.4 },
    vault: { profile: walls(1e6, -9, 0) },
    watercourse: [vessel('below', walls(1e6, -20, -10), { level: -19 })],
    plumbing: {
      main,
      profile: walls(0.01, -20, 0),
      level: -5.5,
      tee: -5 - drop,
      topFeed: topFeed(-5 - drop, 'below', feed),
      bottomFeed: undefined,
    },
  });
  return flowAtEnd(site, 'main');
}

published({
  id: 'site-gravity Crane 7-19, 3 in and 2 in pipe, gpm',
  source:
    'Crane TP-410 (2009), example 7-19, printed answer as quoted in the worked problems of the fluids library; miter bend 60 and gate 8 f_T, contraction 0.5 (1 − β²), bores in the ratio 0.67',
  memory: false,
  kind: 'published value',
  tolerance: 0.01,
  expected: 137,
  got: () => {
    const bore = 3.068 * INCH;
    const roughness = 0.0018 * INCH;
    const wide = { diameter: bore, length: 10 * FOOT, roughness, k: 0.5 + 68 * turbulentFriction(bore) };
    const narrow = { diameter: 0.67 * bore, length: 20 * FOOT, roughness, k: 1 + 0.5 * (1 - 0.67 ** 2) };
    return throughStandingPump(wide, narrow, 11.5 * FOOT, 16.3) / GPM;
  },
});

/**
 * What siphons back from a pool through a drowned top outlet, up over the tee and down the main to the vault, m³/s: no
 * check valve, and no loss but in the top feed.
 */
function siphon(feed: object, difference: number, summit: number): number {
  const site = labSite({
    span: 600,
    pump: { standingLoss: 0, suction: -9, minimum: -8.9 },
    vault: { profile: walls(1e6, -10, 0) },
    watercourse: [vessel('pool', walls(1e6, -6, 20), { level: difference - 5 })],
    plumbing: {
      main: { diameter: 2, length: 0, checkValve: { kind: 'none' } },
      profile: walls(0.5, -9, 20),
      level: -4.5,
      tee: difference - 5 + summit,
      topFeed: topFeed(difference - 8, 'pool', feed),
      bottomFeed: undefined,
    },
  });
  return -flowAtEnd(site, 'main');
}
publishedBy(
  {
    source: `R.S. Paradise, Problems in Hydraulics, example 6.2; Choudhary & Prakash, Fluid Mechanics, example 7.18; the constant friction factor of the second, 0.08, as a loss of its own (${COMPANION})`,
    kind: 'published value',
    tolerance: 0.001,
  },
  [
    [
      'site-siphon Paradise 6.2, gal(UK)/min',
      1974,
      () => {
        const pipe = ofFactor(0.04, 14 * INCH, 3200 * FOOT, 1.5, 1.5);
        return (siphon(pipe, 42 * FOOT, 1) / FOOT ** 3) * 6.24 * 60;
      },
    ],
    [
      'site-siphon Choudhary 7.18, L/s',
      4.65,
      () => 1000 * siphon(lossOnly((0.08 * 700) / 0.1, (Math.PI / 4) * 0.01), 10, 1.4),
    ],
  ],
);
