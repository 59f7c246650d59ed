/** Our slopes of pump curves, units and sparse solutions beside those of general-purpose libraries. */
import { points as controlPoints } from '@yr/monotone-cubic-spline';
import Qty from 'js-quantities';
import { Matrix, solve } from 'ml-matrix';
import { findBalance } from '../../sim/balance.ts';
import { monotoneSlopes } from '../../sim/laws/pump.ts';
import { assemble } from '../../sim/network/assemble.ts';
import { pondInBalance } from '../../sim/network/start.ts';
import { DIMENSIONS, type DimensionName, parseQuantity } from '../../sim/quantity/index.ts';
import { SparseMatrix } from '../../sim/solver/sparse.ts';
import { makeLinearization } from '../../sim/solver/system.ts';
import { chain } from '../bench/sites.ts';
import { publishedBy } from './checks.ts';
import { once } from './site-parts.ts';

type Points = readonly (readonly [number, number])[];

/** Slopes at the points, read off the library's control points: a handle lies along the tangent of its point. */
function librarySlopes(points: Points): number[] {
  const [start, first, ...rest] = controlPoints(points);
  const [x1, y1, ...end] = first;
  const handles = [end, ...rest];
  return [(y1 - start[1]) / (x1 - start[0]), ...handles.map(([hx, hy, x, y]) => (y - hy) / (x - hx))];
}

/** Head (m) by flow (L/s) of pumps with a flat start, a bend and a cliff: where slopes must be limited and where not. */
const curves: readonly Points[] = [
  [
    [0, 6],
    [1, 5.8],
    [2, 5.2],
    [3, 4.1],
    [4, 2.4],
    [4.6, 0],
  ],
  [
    [0, 9],
    [1.5, 8.95],
    [2, 8.9],
    [5, 4],
    [5.2, 0.5],
  ],
  [
    [0, 4],
    [0.5, 3.9],
    [3, 3.8],
    [3.1, 1],
    [6, 0.5],
  ],
];
publishedBy(
  {
    source: '@yr/monotone-cubic-spline 1.0.3, points(): Fritsch & Carlson (1980) by the same recipe',
    kind: 'library regression',
    tolerance: 1e-9,
  },
  curves.flatMap((points, i) => {
    const slopes = monotoneSlopes(
      points.map(([x]) => x),
      points.map(([, y]) => y),
    );
    return librarySlopes(points).map(
      (slope, k) => [`library slope ${k + 1} of pump curve ${i + 1}`, slope, () => slopes[k]] as const,
    );
  }),
);

/** Our names of units where the library's differ. */
const THEIRS: Readonly<Record<string, string>> = {
  L: 'liter',
  mL: 'ml',
  gal: 'gallon',
  'L/s': 'liter/s',
  'L/min': 'liter/min',
  'L/h': 'liter/h',
  gpm: 'gallon/min',
  gph: 'gallon/h',
  d: 'day',
  degC: 'tempC',
  degF: 'tempF',
  kgf: 'kg*gee',
  'mm/d': 'mm/day',
  'in/d': 'in/day',
  'mg/L': 'mg/liter',
  'g/d': 'g/day',
};
const theirs = (unit: string): string => THEIRS[unit] ?? unit;
const COMPARED = [
  'length',
  'area',
  'volume',
  'flow',
  'time',
  'temperature',
  'pressure',
  'power',
  'force',
  'depthRate',
  'concentration',
  'massRate',
  'speed',
] as const satisfies readonly DimensionName[];
const ours = (text: string, dimension: DimensionName): number => {
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? parsed.value : Number.NaN;
};
publishedBy(
  {
    source: 'js-quantities 1.8.0, Qty(12.5, unit).to(SI unit), its factors to six digits or more',
    kind: 'library regression',
    tolerance: 1e-6,
  },
  COMPARED.flatMap((dimension) => {
    const { si, units } = DIMENSIONS[dimension];
    return Object.keys(units).map((unit) => {
      const expected = Qty(12.5, theirs(unit)).to(theirs(si)).scalar;
      return [`library unit ${unit} in ${si}`, expected, () => ours(`12.5 ${unit}`, dimension)] as const;
    });
  }),
);

/** A step of a running chain of pools: (I/10 s − J) x = b, b rising from basin to basin. */
const step = once(() => {
  const scenario = chain(8);
  const { network, volumes } = findBalance(scenario, assemble(scenario), pondInBalance(scenario));
  const { size, jacobianPattern } = network;
  const at = makeLinearization(network);
  network.linearize(0, volumes, at);
  const right = Float64Array.from({ length: size }, (_, i) => 1e-3 * (1 + i / 7));
  const dense = Matrix.eye(size, size, 0.1);
  at.jacobian.forEach((value, k) => {
    const [row, column] = [jacobianPattern.rows[k], jacobianPattern.columns[k]];
    dense.set(row, column, dense.get(row, column) - value);
  });
  const sparse = new SparseMatrix(size, jacobianPattern);
  sparse.factor(0.1, at.jacobian);
  const x = Float64Array.from(right);
  sparse.solve(x);
  return { names: network.parts.basins.map(({ name }) => name), x, expected: solve(dense, Matrix.columnVector(right)) };
});
publishedBy(
  {
    source: 'ml-matrix 6.15.1, solve() of the dense matrix by LU with pivots',
    kind: 'library regression',
    tolerance: 1e-9,
  },
  step().names.map((name, i) => [`library solution in ${name}`, step().expected.get(i, 0), () => step().x[i]] as const),
);
