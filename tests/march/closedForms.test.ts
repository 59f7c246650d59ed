import { describe, expect, test } from 'vitest';
import { GRAVITY } from '../../sim/laws/constants.ts';
import { APART, marched, smallSite, stone, upright, uprightPool } from '../network/smallSite.ts';

/**
 * The assembled model against solutions in closed form, at moments all along the way. A step may err by 3e-5 m³, or by
 * 0.1 mm over a basin's floor where that is less; every level has to stay within twice a step's error, and come at
 * least ten times nearer where a hundredth of the error is allowed (a method of order 4 with an estimate of order 3
 * gains 30).
 */
const STEP_ERROR = 3e-5;
/** What rounding and the bisection below leave, m³. */
const ROUNDING = 1e-10;
const DISCHARGE = (2 / 3) ** 1.5 * Math.sqrt(GRAVITY);

interface Known {
  readonly name: string;
  readonly basin: string;
  readonly area: number;
  readonly site: ReturnType<typeof smallSite>;
  readonly level: (t: number) => number;
  readonly times: readonly number[];
}

const minutes = (...list: number[]): number[] => list.map((m) => 60 * m);

const crestPool: Known = {
  name: 'a pool that empties through a crest: h = (h₀^−½ + C w t/(2A))^−2',
  basin: 'tank',
  area: 2,
  site: smallSite({
    watercourse: [uprightPool('tank', 2, 0.5, 1.1, { stones: [stone('edge stone', 0.6, 0.8, { cd: 0.9 })] })],
  }),
  level: (t) => 0.8 + (0.3 ** -0.5 + (0.9 * DISCHARGE * 0.6 * t) / (2 * 2)) ** -2,
  times: minutes(0.05, 0.2, 1, 3, 10, 30, 60),
};

const seepingPool: Known = {
  name: 'a pool that seeps away under its stone, a linear reservoir: e^(−k t/A)',
  basin: 'tank',
  area: 1.5,
  site: smallSite({
    watercourse: [
      uprightPool('tank', 1.5, 0.5, 1, { stones: [stone('edge stone', 0.6, 1.2, { seep: { k: 3e-3, foot: 0.6 } })] }),
    ],
  }),
  level: (t) => 0.6 + 0.4 * Math.exp((-3e-3 * t) / 1.5),
  times: minutes(1, 5, 10, 20, 40, 60),
};

/** Torricelli down to a millimeter over the hole, from where the outflow is linear in the head. */
function leaking(t: number): number {
  const [hole, area, a, h0] = [0.6, 2, 1e-3, 0.5];
  const slowing = (a * Math.sqrt(2 * GRAVITY)) / (2 * area);
  const late = (Math.sqrt(h0) - Math.sqrt(0.001)) / slowing;
  if (t <= late) return hole + (Math.sqrt(h0) - slowing * t) ** 2;
  return hole + 0.001 * Math.exp((-a * Math.sqrt((2 * GRAVITY) / 0.001) * (t - late)) / area);
}

const leakingPool: Known = {
  name: 'a pool that runs out of a hole, Torricelli: √h = √h₀ − a √(2g) t/(2A)',
  basin: 'tank',
  area: 2,
  site: smallSite({
    watercourse: [
      uprightPool('tank', 2, 0.5, 1.1, {
        stones: [stone('edge stone', 0.6, 1.2)],
        leak: { elevation: 0.6, area: 1e-3 },
      }),
    ],
  }),
  level: leaking,
  times: minutes(1, 5, 8, 10.2, 10.6, 15, 60),
};

const bed = { length: 6, width: 0.5, slope: 0.03, manning: 0.12 };

const stream: Known = {
  name: 'a stream that runs dry, Manning: y = (y₀^−⅔ + ⅔ √S t/(n L))^−3/2',
  basin: 'run',
  area: 3,
  site: smallSite({ watercourse: [{ name: 'run', kind: 'stream', ...bed, foot: 0.1, level: 0.2 }] }),
  level: (t) => 0.1 + (0.1 ** (-2 / 3) + ((2 / 3) * Math.sqrt(bed.slope) * t) / (bed.manning * bed.length)) ** -1.5,
  times: minutes(0.1, 0.5, 2, 10, 60),
};

const apart = (pond: object, more: object) => smallSite({ ...APART, pond, ...more });

const filling: Known = {
  name: 'a pond that its float valve fills: full flow up to its low level, then exponentially to its set level',
  basin: 'pond',
  area: 10,
  site: apart(
    { ...upright(10, -1, -0.65), fillMark: -0.2 },
    { supply: { autofill: { flow: 2e-4, low: -0.62, set: -0.6 } }, span: '3 h' },
  ),
  level: (t) => {
    const full = (10 * 0.03) / 2e-4;
    return t < full ? -0.65 + (2e-4 * t) / 10 : -0.6 - 0.02 * Math.exp((-2e-4 * (t - full)) / (10 * 0.02));
  },
  times: minutes(10, 24, 30, 60, 180),
};

const evaporating: Known = {
  name: 'a pond with upright walls under the sun: straight down, then exponentially in its last millimeter',
  basin: 'pond',
  area: 10,
  site: apart(
    { ...upright(10, -1, -0.99), fillMark: -0.2, plantCover: 0.25 },
    { weather: { evaporation: '8 mm/d' }, span: '3 d' },
  ),
  level: (t) => {
    const rate = (0.75 * 0.008) / 86400;
    const left = 0.01 - rate * t;
    return -1 + (left > 0.001 ? left : 0.001 * Math.exp((left - 0.001) / 0.001));
  },
  times: minutes(60, 720, 1440, 2100, 2400, 4320),
};

const shaped = [
  [-1, 4],
  [-0.5, 6],
  [-0.5, 9],
  [0.1, 12],
] as const;

/** Volume under a level of the shaped pond: its plan integrated by hand below and above the shelf, less the gravel. */
function held(z: number): number {
  const below = (top: number): number => 4 * (top + 1) + 2 * (top + 1) ** 2;
  const above = Math.max(0, z + 0.5);
  const gravel = below(Math.min(Math.max(z, -0.9), -0.7)) - below(-0.9);
  return below(Math.min(z, -0.5)) + 9 * above + 2.5 * above ** 2 - 0.4 * gravel;
}

const hosed: Known = {
  name: 'a pond with sloping banks, a shelf and gravel that a hose fills: what it holds is V₀ + q t',
  basin: 'pond',
  area: 6,
  site: apart(
    {
      profile: shaped,
      displaced: [{ from: -0.9, to: -0.7, fraction: 0.4 }],
      level: -0.95,
      fillMark: -0.1,
      rim: {
        crest: [
          [0, 0],
          [1, 0],
        ],
      },
    },
    { supply: { hose: { flow: 1e-3, on: true } } },
  ),
  level: (t) => {
    let [low, high] = [-1, 0];
    while (high - low > 1e-12) {
      const mid = (low + high) / 2;
      if (held(mid) < held(-0.95) + 1e-3 * t) low = mid;
      else high = mid;
    }
    return low;
  },
  times: minutes(5, 20, 40, 60),
};

describe('the march follows', () => {
  test.each([crestPool, seepingPool, leakingPool, stream, filling, evaporating, hosed])('$name', (known) => {
    const worst = (tolerance: number): number => {
      const { levelAt } = marched(known.site, tolerance);
      return Math.max(...known.times.map((t) => Math.abs(levelAt(known.basin, t) - known.level(t)) * known.area));
    };
    const allowed = Math.min(STEP_ERROR, 1e-4 * known.area);
    const usual = worst(1);
    expect(usual).toBeLessThan(2 * allowed);
    expect(worst(0.01)).toBeLessThan(Math.max(usual / 10, ROUNDING));
  });
});
