/**
 * Stiff problems of the literature with reference solutions: the Test Set for IVP Solvers, release 2.4 (Mazzia &
 * Magherini, University of Bari; figures as carried by the R package deTestSet), and STIFF DETEST (Enright & Pryce
 * 1987, ACM TOMS 13, 1–27).
 */
import { Integrator } from '../../sim/solver/integrate.ts';
import type { StiffSystem } from '../../sim/solver/system.ts';
import { systemOf } from '../cases.ts';

export interface Published {
  readonly name: string;
  readonly source: string;
  readonly system: StiffSystem;
  readonly start: readonly number[];
  readonly end: number;
  readonly expected: readonly number[];
  /** Relative error allowed, and the absolute tolerances that reach it. */
  readonly relative: number;
  readonly tolerance: readonly number[];
}

/** Robertson's three reactions: y₁ + y₂ + y₃ is conserved, and a y₂ that goes negative blows up. */
export const robertson: StiffSystem = systemOf({
  size: 3,
  rates: (_, [y1, y2, y3]) => {
    const first = 0.04 * y1;
    const second = 3e7 * y2 * y2;
    const third = 1e4 * y2 * y3;
    return [third - first, first - third - second, second];
  },
  jacobian: (_, [, y2, y3]) => [
    [-0.04, 1e4 * y3, 1e4 * y2],
    [0.04, -1e4 * y3 - 6e7 * y2, -1e4 * y2],
    [0, 6e7 * y2, 0],
  ],
});

const hires: StiffSystem = systemOf({
  size: 8,
  rates: (_, [y1, y2, y3, y4, y5, y6, y7, y8]) => {
    const meet = 280 * y6 * y8;
    return [
      -1.71 * y1 + 0.43 * y2 + 8.32 * y3 + 0.0007,
      1.71 * y1 - 8.75 * y2,
      -10.03 * y3 + 0.43 * y4 + 0.035 * y5,
      8.32 * y2 + 1.71 * y3 - 1.12 * y4,
      -1.745 * y5 + 0.43 * y6 + 0.43 * y7,
      -meet + 0.69 * y4 + 1.71 * y5 - 0.43 * y6 + 0.69 * y7,
      meet - 1.81 * y7,
      -meet + 1.81 * y7,
    ];
  },
  jacobian: (_, [, , , , , y6, , y8]) => [
    [-1.71, 0.43, 8.32, 0, 0, 0, 0, 0],
    [1.71, -8.75, 0, 0, 0, 0, 0, 0],
    [0, 0, -10.03, 0.43, 0.035, 0, 0, 0],
    [0, 8.32, 1.71, -1.12, 0, 0, 0, 0],
    [0, 0, 0, 0, -1.745, 0.43, 0.43, 0],
    [0, 0, 0, 0.69, 1.71, -280 * y8 - 0.43, 0.69, -280 * y6],
    [0, 0, 0, 0, 0, 280 * y8, -1.81, 280 * y6],
    [0, 0, 0, 0, 0, -280 * y8, 1.81, -280 * y6],
  ],
});

const oregonator: StiffSystem = systemOf({
  size: 3,
  rates: (_, [y1, y2, y3]) => [
    77.27 * (y2 + y1 * (1 - 8.375e-6 * y1 - y2)),
    (y3 - (1 + y1) * y2) / 77.27,
    0.161 * (y1 - y3),
  ],
  jacobian: (_, [y1, y2]) => [
    [77.27 * (1 - 2 * 8.375e-6 * y1 - y2), 77.27 * (1 - y1), 0],
    [-y2 / 77.27, -(1 + y1) / 77.27, 1 / 77.27],
    [0.161, 0, -0.161],
  ],
});

const vanDerPol: StiffSystem = systemOf({
  size: 2,
  rates: (_, [y1, y2]) => [y2, ((1 - y1 * y1) * y2 - y1) * 1e6],
  jacobian: (_, [y1, y2]) => [
    [0, 1],
    [(-2 * y1 * y2 - 1) * 1e6, (1 - y1 * y1) * 1e6],
  ],
});

const TEST_SET = 'Test Set for IVP Solvers, release 2.4';

export const problems: readonly Published[] = [
  {
    name: 'Robertson to 40',
    source: 'STIFF DETEST, problem D2, unscaled',
    system: robertson,
    start: [1, 0, 0],
    end: 40,
    expected: [0.715827068719394, 9.185534764557337e-6, 0.2841637457458413],
    relative: 1e-8,
    tolerance: [1e-9, 1e-13, 1e-9],
  },
  {
    name: 'Robertson to 1e11',
    source: TEST_SET,
    system: robertson,
    start: [1, 0, 0],
    end: 1e11,
    expected: [0.2083340149701255e-7, 0.8333360770334713e-13, 0.999999979166505],
    relative: 1e-6,
    tolerance: [1e-12, 1e-16, 1e-12],
  },
  {
    name: 'HIRES',
    source: TEST_SET,
    system: hires,
    start: [1, 0, 0, 0, 0, 0, 0, 0.0057],
    end: 321.8122,
    expected: [
      0.7371312573325668e-3, 0.1442485726316185e-3, 0.5888729740967575e-4, 0.1175651343283149e-2, 0.2386356198831331e-2,
      0.6238968252742796e-2, 0.2849998395185769e-2, 0.2850001604814231e-2,
    ],
    relative: 1e-8,
    tolerance: new Array<number>(8).fill(1e-11),
  },
  {
    name: 'Oregonator',
    source: TEST_SET,
    system: oregonator,
    start: [1, 2, 3],
    end: 360,
    expected: [1.000814870318523, 1228.178521549917, 132.0554942846706],
    relative: 1e-8,
    tolerance: [1e-7, 1e-7, 1e-7],
  },
  {
    name: 'van der Pol, 1e-6',
    source: TEST_SET,
    system: vanDerPol,
    start: [2, 0],
    end: 2,
    expected: [1.706167732170469, -0.8928097010248125],
    relative: 1e-8,
    tolerance: [1e-9, 1e-3],
  },
];

/** Solves a problem from a first step of 1 μs, which the fastest of them needs. */
export function solveProblem({ system, start, end, tolerance }: Published, factor = 1): Integrator {
  const integrator = new Integrator(system, 0, Float64Array.from(start), {
    tolerance: Float64Array.from(tolerance, (each) => factor * each),
  });
  integrator.restart(1e-6);
  integrator.advance(end, [], () => {});
  return integrator;
}
