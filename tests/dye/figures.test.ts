/** The figures of a dye test beside closed forms and an integration by another method; published ones stand with the rest. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dyeFigures, type Figures } from '../../sim/dye/figures.ts';
import { makePassage, passedBy, passingAt } from '../../sim/dye/passage.ts';

/** N tanks alone, a cubic meter at a liter a second: T = 1000 s. */
const tanksAlone = (n: number): Figures =>
  dyeFigures({ plenum: 0, pore: 1, gap: 0, free: 0 }, { bottom: 1e-3, media: 1e-3, gap: 0, top: 0 }, n);

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));

describe('N equal tanks in series', () => {
  /** What has passed N tanks of 1 by a time: 1 − Σ_{k<N} t^k e^(−t)/k!, by Poisson's sum. */
  const passed = (n: number, t: number): number =>
    1 - Array.from({ length: n }, (_, k) => (t ** k * Math.exp(-t)) / factorial(k)).reduce((a, b) => a + b, 0);

  /** The time by which a share has passed them, over their mean stay; by halving. */
  function stayOf(n: number, part: number): number {
    let [low, high] = [0, 8 * n];
    for (let i = 0; i < 60; i++) {
      const mid = (low + high) / 2;
      if (passed(n, mid) < part) low = mid;
      else high = mid;
    }
    return high / n;
  }

  test.each([1, 2, 8, 20])('%i have a Morrill index t90/t10 and a baffling factor t10/T by Poisson’s sums', (n) => {
    const { morrill, baffling } = tanksAlone(n);
    expect(morrill / (stayOf(n, 0.9) / stayOf(n, 0.1)) - 1).toBeCloseTo(0, 10);
    expect(baffling / stayOf(n, 0.1) - 1).toBeCloseTo(0, 10);
  });

  test('one alone has them in closed form: ln 10/ln(10/9) and ln(10/9)', () => {
    const { morrill, baffling } = tanksAlone(1);
    expect(morrill).toBeCloseTo(Math.LN10 / Math.log(10 / 9), 9);
    expect(baffling).toBeCloseTo(Math.log(10 / 9), 12);
  });

  test('have E = (t/τ)^(N−1) e^(−t/τ) / (τ (N−1)!) (Levenspiel, Chemical Reaction Engineering, 3rd ed., ch. 14)', () => {
    for (const n of [2, 3, 8, 20]) {
      const passage = makePassage({ mixed: [], series: { tanks: n, stay: n }, delay: 0 });
      for (const t of [0.1, 1, n / 2, n, 2 * n, 4 * n]) {
        const form = (t ** (n - 1) * Math.exp(-t)) / factorial(n - 1);
        expect(Math.abs(passingAt(passage, t) - form)).toBeLessThan(1e-12 * form + 1e-15);
      }
    }
  });
});

describe('tanks that differ', () => {
  const unequal = (rates: readonly number[], t: number): number =>
    1 -
    rates.reduce(
      (sum, a, i) => sum + Math.exp(-a * t) * rates.reduce((p, b, j) => (i === j ? p : (p * b) / (b - a)), 1),
      0,
    );

  test('pass by partial fractions where these do not cancel', () => {
    const rates = [1, 2.5, 0.3];
    const passage = makePassage({ mixed: rates.map((rate) => 1 / rate), series: undefined, delay: 0 });
    for (const t of [0.2, 1, 3, 8, 30]) expect(Math.abs(passedBy(passage, t) - unequal(rates, t))).toBeLessThan(1e-13);
  });

  test('and nearly equal ones as equal ones, where partial fractions are noise', () => {
    const nearly = makePassage({ mixed: [1, 1 + 1e-9, 1 - 1e-9], series: undefined, delay: 0 });
    const equal = makePassage({ mixed: [], series: { tanks: 3, stay: 3 }, delay: 0 });
    for (const t of [0.5, 2, 5, 12]) expect(Math.abs(passedBy(nearly, t) - passedBy(equal, t))).toBeLessThan(1e-9);
  });

  test('a stay of less than a thousandth counts as a delay and moves F by less than a millionth', () => {
    for (const short of [0.99e-3, 1e-4, 1e-7, 0]) {
      const passage = makePassage({ mixed: [1 - short, short], series: undefined, delay: 0 });
      for (const t of [0.1, 0.7, 2, 5]) {
        const form = short === 0 ? 1 - Math.exp(-t) : unequal([1 / (1 - short), 1 / short], t);
        expect(Math.abs(passedBy(passage, t) - form)).toBeLessThan(1e-6);
      }
    }
  });
});

describe('a short circuit and a dead volume (Levenspiel, ch. 12)', () => {
  test('a mixed tank with bypassing: F = 1 − α e^(−α t/τ), α through it and 1 − α at once', () => {
    const figures = dyeFigures(
      { plenum: 0, pore: 1, gap: 0, free: 0 },
      { bottom: 1e-3, media: 0.7e-3, gap: 0.3e-3, top: 0 },
      1,
    );
    figures.E.t.forEach((t, k) => {
      expect(Math.abs(figures.F[k] - (1 - 0.7 * Math.exp((-0.7 * t) / 1000)))).toBeLessThan(1e-12);
    });
    expect(figures.mean).toBeCloseTo(1000, 9);
    // Second moment of the part through the tank: α · 2 (τ/α)².
    expect(figures.variance).toBeCloseTo((2 / 0.7 - 1) * 1e6, 3);
    // What comes at once stands in the first cell of its curve, whole.
    expect(figures.E.round[0] * figures.E.t[1]).toBeCloseTo(0.3, 12);
  });

  test('a dead volume shortens the mean and nothing else: E = e^(−t/τ)/τ of what moves', () => {
    const { E, mean, t50 } = dyeFigures(
      { plenum: 0.6, pore: 0, gap: 0, free: 0 },
      { bottom: 1e-3, media: 1e-3, gap: 0, top: 0 },
      8,
    );
    E.t.forEach((t, k) => {
      expect(Math.abs(E.through[k] - Math.exp(-t / 600) / 600)).toBeLessThan(1e-15);
    });
    expect(mean).toBeCloseTo(600, 9);
    expect(t50).toBeCloseTo(600 * Math.LN2, 6);
  });

  test('plug flow round the media comes as a whole after its stay, behind the plenum’s mixing', () => {
    const { E, times } = dyeFigures(
      { plenum: 0.2, pore: 0.3, gap: 0.02, free: 0 },
      { bottom: 1e-3, media: 0.8e-3, gap: 0.2e-3, top: 0 },
      8,
    );
    E.t.forEach((t, k) => {
      const late = t - (times.gap ?? 0);
      expect(Math.abs(E.round[k] - (late < 0 ? 0 : (0.2 * Math.exp(-late / 200)) / 200))).toBeLessThan(1e-15);
    });
  });
});

/** The way through by classical Runge–Kutta on its tanks: another method altogether. */
function marched(stays: readonly number[], end: number): number {
  const steps = 8_000;
  const h = end / steps;
  const slope = (y: readonly number[]): number[] =>
    y.map((own, i) => (i === 0 ? 0 : y[i - 1] / stays[i - 1]) - (i < stays.length ? own / stays[i] : 0));
  let y = [1, ...stays.map(() => 0)];
  for (let k = 0; k < steps; k++) {
    const add = (d: readonly number[], f: number): number[] => y.map((own, i) => own + f * d[i]);
    const k1 = slope(y);
    const k2 = slope(add(k1, h / 2));
    const k3 = slope(add(k2, h / 2));
    const k4 = slope(add(k3, h));
    y = y.map((own, i) => own + (h / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]));
  }
  return y[stays.length];
}

describe('the whole filter', () => {
  test('passes dye through as its tanks do when they are integrated step by step', () => {
    const stays = [88, ...Array.from({ length: 8 }, () => 122 / 8), 77];
    const passage = makePassage({ mixed: [88, 77], series: { tanks: 8, stay: 122 }, delay: 0 });
    for (const t of [100, 250, 600]) expect(Math.abs(passedBy(passage, t) - marched(stays, t))).toBeLessThan(1e-11);
  });

  test('is diluted by a top feed in its free water only', () => {
    const volumes = { plenum: 0.1, pore: 0.2, gap: 0, free: 0.3 };
    const flows = { bottom: 2e-3, media: 2e-3, gap: 0 };
    expect(dyeFigures(volumes, { ...flows, top: 1e-3 }, 8).T).toBeCloseTo(150 + 100, 9);
    expect(dyeFigures(volumes, { ...flows, top: 0 }, 8).T).toBeCloseTo(150 + 150, 9);
  });

  const part = fc.constantFrom(0, 1e-9, 1e-5, 0.01, 0.1, 0.3);
  test('of any volumes and flows has finite figures in their order, a rising F, and T for its mean', () => {
    fc.assert(
      fc.property(
        fc.record({ plenum: part, pore: fc.constantFrom(1e-6, 0.01, 0.3), gap: part, free: part }),
        fc.constantFrom(1e-5, 1e-3, 0.02),
        fc.constantFrom(0, 1e-9, 0.01, 0.3, 0.999),
        fc.constantFrom(0, 1e-3),
        fc.constantFrom(1, 2, 8, 100, 1000),
        (volumes, bottom, share, top, tanks) => {
          const flows = { bottom, media: bottom * (1 - share), gap: bottom * share, top };
          const { mean, T, variance, t10, t50, t90, F, E, recovered } = dyeFigures(volumes, flows, tanks);
          expect(Math.abs(mean / T - 1)).toBeLessThan(1e-12);
          expect(variance).toBeGreaterThanOrEqual(0);
          expect(t10).toBeLessThanOrEqual(t50);
          expect(t50).toBeLessThanOrEqual(t90);
          expect(Number.isFinite(t90 + variance)).toBe(true);
          expect(E.t[360]).toBeGreaterThanOrEqual(2.999999 * mean);
          expect(Math.min(...E.through, ...E.round)).toBeGreaterThanOrEqual(0);
          expect(Math.min(...F.subarray(1).map((share, k) => share - F[k]))).toBeGreaterThanOrEqual(-1e-13);
          expect(recovered).toBeCloseTo(F[360], 12);
          expect(recovered).toBeLessThanOrEqual(1 + 1e-12);
        },
      ),
      { numRuns: 200, seed: 20310601 },
    );
  });
});

describe('the class of a t10/T', () => {
  /** US EPA (2003), LT1ESWTR Disinfection Profiling and Benchmarking: 0.1, 0.3, 0.5, 0.7, 1.0. */
  test.each([
    [0.05, 'unbaffled', 'poor', 0.3],
    [0.1, 'unbaffled', 'poor', 0.3],
    [0.31, 'poor', 'unbaffled', 0.3],
    [0.45, 'poor', 'average', 0.5],
    [0.5, 'average', 'poor', 0.5],
    [0.69, 'average', 'superior', 0.7],
    [0.75, 'superior', 'average', 0.7],
    [0.95, 'superior', 'perfect', 1],
    [1, 'perfect', 'superior', 1],
  ])('%f is %s beside %s', async (share, own, other, from) => {
    const { bafflingOf } = await import('../../sim/dye/baffling.ts');
    expect(bafflingOf(share)).toEqual({ class: own, neighbor: { class: other, from } });
  });
});
