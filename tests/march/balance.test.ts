import { describe, expect, test } from 'vitest';
import { balance } from '../../sim/balance.ts';
import { GRAVITY } from '../../sim/laws/constants.ts';
import { kinematicViscosity } from '../../sim/laws/water.ts';
import { FEED, LIP, MAIN, marched, runningSite, smallSite, upright } from '../network/smallSite.ts';

/** The running balance against curves crossed by bisection, with every formula written out again here. */
const DISCHARGE = (2 / 3) ** 1.5 * Math.sqrt(GRAVITY);
/** Newton stops at 1e-8 of a step's error; pipe friction is read off a table good to 1e-6. */
const RELATIVE = 3e-6;

function bisect(low: number, high: number, rising: (x: number) => number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 200; i++) {
    const mid = (a + b) / 2;
    if (rising(mid) < 0) a = mid;
    else b = mid;
  }
  return (a + b) / 2;
}

/** Colebrook's friction factor, by repeating his own equation (1939). */
function colebrook(reynolds: number, relativeRoughness: number): number {
  let root = 8;
  for (let i = 0; i < 60; i++) root = -2 * Math.log10((2.51 * root) / reynolds + relativeRoughness / 3.7);
  return root ** -2;
}

interface Pipe {
  readonly diameter: number;
  readonly length: number;
  readonly roughness: number;
  readonly k: number;
}

/** Darcy and Weisbach: (f L/D + k) V²/2g. */
function loss(pipe: Pipe, flow: number): number {
  const velocity = flow / ((Math.PI / 4) * pipe.diameter ** 2);
  const f = colebrook((velocity * pipe.diameter) / kinematicViscosity(15), pipe.roughness / pipe.diameter);
  return ((f * pipe.length) / pipe.diameter + pipe.k) * (velocity ** 2 / (2 * GRAVITY));
}

/** Villemonte (1947) over a level crest, both levels above it. */
function drowned(width: number, cd: number, up: number, down: number): number {
  return cd * DISCHARGE * width * up ** 1.5 * (1 - (Math.max(0, down) / up) ** 1.5) ** 0.385;
}

/** 10^(2.945 − 3.84): the ball valve wide open. */
const OPEN_VALVE = 10 ** (2.945 - 3.84);

/** Flow at which what the pump gives is what the site asks, m³/s. */
function crossing(lift: (flow: number) => number): number {
  return bisect(1e-5, 0.006, (flow) => {
    // How low the vault is drawn before the intake gives this flow: its head is 60 mm.
    const vault = -0.26 + bisect(0, 0.06, (down) => flow - drowned(0.3, 1, 0.06, down));
    return lift(flow) - vault + loss(MAIN, flow) - 5 * (1 - (flow / 0.006) ** 2);
  });
}

describe('the running balance lies where the curves cross', () => {
  test('with a bottom feed under water: the pool’s level over its stone is what the feed works against', () => {
    const found = balance(runningSite());
    const valved = { ...FEED, k: FEED.k + OPEN_VALVE };
    const over = (flow: number): number => (flow / (0.9 * DISCHARGE * 0.8)) ** (2 / 3);
    const flow = crossing((q) => LIP + over(q) + loss(valved, q));
    expect(Math.abs(found.flows.main / flow - 1)).toBeLessThan(RELATIVE);
    expect(Math.abs(found.flows.weir / flow - 1)).toBeLessThan(RELATIVE);
    expect(Math.abs(found.levels.spring - LIP - over(flow))).toBeLessThan(1e-7);
    expect(Math.abs(found.levels.riser - found.levels.spring - loss(valved, flow))).toBeLessThan(1e-5);
    expect(Math.abs(found.duty.head / (5 * (1 - (flow / 0.006) ** 2)) - 1)).toBeLessThan(RELATIVE);
    expect(found.split).toBeCloseTo(1, 12);
  });

  test('with a top feed into the open air: its outlet is what it works against', () => {
    const site = runningSite({ plumbing: { main: MAIN, tee: 0.8, topFeed: { ...FEED, outlet: 1.9 } } });
    const found = balance(site);
    const flow = crossing((q) => 1.9 + loss({ ...FEED, k: FEED.k + OPEN_VALVE }, q));
    expect(Math.abs(found.flows['top feed'] / flow - 1)).toBeLessThan(RELATIVE);
    expect(found.split).toBe(0);
  });

  test('of a manifold of two like feeds into one pool, under water: a half goes up each', () => {
    const like = { ...FEED, valve: 0.7 };
    const site = runningSite({
      plumbing: {
        main: MAIN,
        tee: 0.8,
        bottomFeed: { ...like, inlet: 0.8 },
        topFeed: { ...like, outlet: 0.8, to: 'spring' },
      },
    });
    expect(balance(site).split).toBeCloseTo(0.5, 9);
  });
});

test('a run that starts in its balance stays there: nothing but the pond’s own water moves', () => {
  const { levelAt } = marched(runningSite({ span: '6 h' }));
  for (const basin of ['pond', 'vault', 'riser', 'spring'])
    expect(Math.abs(levelAt(basin, 6 * 3600) - levelAt(basin, 0))).toBeLessThan(1e-6);
});

test('two basins joined over a drowned crest come level, by the way Villemonte’s flow takes them', () => {
  const tub = { profile: [[-1.2, 2] as const, [0.2, 2] as const] };
  const site = smallSite({
    pond: { ...upright(2, -1, -0.2) },
    vault: { ...tub, level: -0.4 },
    intake: { width: 0.05, elevation: -0.5 },
    plumbing: { main: MAIN, tee: 0.5, level: -0.2, bottomFeed: { ...FEED, inlet: 0.5, valve: 0 } },
  });
  const { levelAt } = marched(site);
  // The difference d of the levels falls by 2 Q/A; Runge and Kutta's fourth order step of 50 ms.
  const slope = (d: number): number => -drowned(0.05, 1, 0.2 + d / 2, 0.2 - d / 2);
  let d = 0.2;
  const step = 0.05;
  for (let i = 1; i <= 400; i++) {
    const k1 = slope(d);
    const k2 = slope(d + (step / 2) * k1);
    const k3 = slope(d + (step / 2) * k2);
    const k4 = slope(d + step * k3);
    d += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    if (i % 100 === 0) {
      expect(Math.abs(levelAt('pond', i * step) - (-0.3 + d / 2))).toBeLessThan(3e-5);
      expect(Math.abs(levelAt('vault', i * step) - (-0.3 - d / 2))).toBeLessThan(3e-5);
    }
  }
  expect(d).toBeGreaterThan(0.005);
  expect(Math.abs(levelAt('pond', 3600) - levelAt('vault', 3600))).toBeLessThan(1e-6);
  expect(Math.abs(levelAt('pond', 3600) + 0.3)).toBeLessThan(1e-9);
});
