/** Published residence times, mixing and baffling against the dye test. */
import { bafflingOf } from '../../sim/dye/baffling.ts';
import { dyeFigures, type Figures } from '../../sim/dye/figures.ts';
import { makePassage, passedBy, passingAt } from '../../sim/dye/passage.ts';
import { published, publishedBy } from './checks.ts';

/** N equal tanks alone, a cubic meter at a liter a second: T = 1000 s. */
const tanksAlone = (n: number): Figures =>
  dyeFigures({ plenum: 0, pore: 1, gap: 0, free: 0 }, { bottom: 1e-3, media: 1e-3, gap: 0, top: 0 }, n);

/** Tables are rounded to three decimals. */
const ROUNDED = 5.1e-4;

// A stay in N tanks over its mean is χ² of 2N degrees of freedom over 2N.
const chiSquared = [
  [1, 0.211, 1.386, 4.605],
  [2, 1.064, 3.357, 7.779],
  [4, 3.49, 7.344, 13.362],
  [5, 4.865, 9.342, 15.987],
  [8, 9.312, 15.338, 23.542],
  [10, 12.443, 19.337, 28.412],
] as const;
for (const [n, ...tenths] of chiSquared) {
  (['t10', 't50', 't90'] as const).forEach((name, i) => {
    published({
      id: `dye χ² of ${2 * n}, ${name} of ${n === 1 ? 'one tank' : `${n} tanks`}`,
      source: 'Abramowitz & Stegun (1964), table 26.8: lower tenth, median and upper tenth of χ²',
      memory: true,
      kind: 'published value',
      tolerance: ROUNDED / tenths[i],
      expected: tenths[i],
      got: () => (tanksAlone(n)[name] / 1000) * 2 * n,
    });
  });
}

// What leaves before its mean stay: 1 − Σ_{k<N} N^k e^(−N)/k!.
const early = [
  [1, 0.632],
  [2, 0.594],
  [3, 0.577],
  [5, 0.56],
  [10, 0.542],
] as const;
for (const [n, share] of early) {
  published({
    id: `dye out before its mean stay, ${n === 1 ? 'one tank' : `${n} tanks`}`,
    source:
      'MacMullin & Weber (1935), Trans. AIChE 31, short-circuiting of tanks in series, by tables of Poisson’s sums',
    memory: true,
    kind: 'published value',
    tolerance: ROUNDED / share,
    expected: share,
    got: () => passedBy(makePassage({ mixed: [], series: { tanks: n, stay: n }, delay: 0 }), n),
  });
}

publishedBy(
  {
    source: 'Metcalf & Eddy, Wastewater Engineering: Morrill index of a complete-mix reactor, ‘about 22’',
    kind: 'published value',
    tolerance: 0.01,
    memory: true,
  },
  [['dye Morrill index of one mixed tank', 22, () => tanksAlone(1).morrill]],
);

/** The least t10/T at which a class counts, to 1e-12. */
function leastOf(name: string): number {
  let [low, high] = [0, 1.5];
  const order = ['unbaffled', 'poor', 'average', 'superior', 'perfect'];
  for (let i = 0; i < 50; i++) {
    const mid = (low + high) / 2;
    if (order.indexOf(bafflingOf(mid).class) >= order.indexOf(name)) high = mid;
    else low = mid;
  }
  return high;
}
const EPA = 'US EPA (2003), LT1ESWTR Disinfection Profiling and Benchmarking: baffling factors';
publishedBy(
  // A figure that misses its class by rounding alone, 1e-9, is let into it.
  { source: EPA, kind: 'published value', tolerance: 1e-8 },
  (
    [
      ['poor', 0.3],
      ['average', 0.5],
      ['superior', 0.7],
      ['perfect', 1],
    ] as const
  ).map(([name, from]) => [`dye baffling class ${name} begins`, from, () => leastOf(name)] as const),
);
publishedBy({ source: `${EPA}, ‘mixed flow’ to one figure`, kind: 'published value', tolerance: 0.06 }, [
  ['dye t10/T of one mixed tank', 0.1, () => tanksAlone(1).baffling],
]);

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
publishedBy(
  {
    source: 'Levenspiel, Chemical Reaction Engineering, 3rd ed., ch. 14: σ²/t̄² = 1/N',
    kind: 'derived',
    tolerance: 1e-12,
  },
  [1, 2, 5, 8, 40].map((n) => {
    const got = (): number => tanksAlone(n).variance / tanksAlone(n).mean ** 2;
    return [`dye spread of ${n === 1 ? 'one tank' : `${n} tanks`}`, 1 / n, got] as const;
  }),
);
publishedBy(
  {
    source: 'Levenspiel, ch. 14: E is highest at (N−1)/N by N (N−1)^(N−1) e^(1−N)/(N−1)!',
    kind: 'derived',
    tolerance: 1e-12,
  },
  [2, 3, 8, 20].map((n) => {
    const passage = makePassage({ mixed: [], series: { tanks: n, stay: n }, delay: 0 });
    const peak = (n * (n - 1) ** (n - 1) * Math.exp(1 - n)) / factorial(n - 1);
    return [`dye at its densest out of ${n} tanks`, peak, () => passingAt(passage, n - 1) * n] as const;
  }),
);

/** Three tenths go round one mixed tank at once. */
const bypassed = (): Figures =>
  dyeFigures({ plenum: 0, pore: 1, gap: 0, free: 0 }, { bottom: 1e-3, media: 0.7e-3, gap: 0.3e-3, top: 0 }, 1);
publishedBy(
  { source: 'Levenspiel, ch. 12: a mixed tank with bypassing, F = 1 − α e^(−α t/τ)', kind: 'derived', tolerance: 1e-9 },
  [
    ['dye round a mixed tank, half out', (-1000 / 0.7) * Math.log(0.5 / 0.7), () => bypassed().t50],
    ['dye round a mixed tank, nine tenths out', (-1000 / 0.7) * Math.log(0.1 / 0.7), () => bypassed().t90],
    ['dye round a mixed tank, variance', (2 / 0.7 - 1) * 1e6, () => bypassed().variance],
  ],
);
publishedBy(
  { source: 'Levenspiel, ch. 12: a dead volume leaves E = e^(−t/τ)/τ of what moves', kind: 'derived', tolerance: 1e-9 },
  [
    [
      'dye in a mixed plenum, half out',
      600 * Math.LN2,
      () => dyeFigures({ plenum: 0.6, pore: 0, gap: 0, free: 0 }, { bottom: 1e-3, media: 1e-3, gap: 0, top: 0 }, 8).t50,
    ],
  ],
);
