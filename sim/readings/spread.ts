import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Scenario } from '../scenario/scenario.ts';
import { NINETY } from './prior.ts';
import type { Banded, Fit } from './readBack.ts';
import { siteAt, unknownsOf } from './unknowns.ts';

/**
 * Figures of a site that was read back (a pump stop's rise, a fall of water), each with its band of 90 %.
 *
 * The unknowns are taken together as the readings left them, pump and crests hanging on one another: half the change of
 * a figure along each column of the covariance's Cholesky factor, added as squares (JCGM 100:2008, 5.2.2, with the
 * differences of its 5.1.3 note 2). Costs two answers an unknown.
 * @param s the site that was read, as it was before
 * @param figures of a site; undefined where one can't be had
 */
export function bandAfter(
  s: Scenario,
  fit: Pick<Fit, 'fitted' | 'posterior'>,
  figures: (site: Scenario) => readonly (number | undefined)[],
): (Banded | undefined)[] {
  const places = fit.fitted.map(({ place }) => place);
  const all = unknownsOf(s);
  const unknowns = places.flatMap((place) => all.filter((each) => each.place === place));
  const { u, covariance } = fit.posterior;
  const factor = new CholeskyDecomposition(new Matrix(covariance.map((row) => [...row]))).lowerTriangularMatrix;
  const own = figures(siteAt(s, unknowns, u));
  const sums = own.map(() => 0);
  for (let k = 0; k < u.length; k++) {
    const column = factor.getColumn(k);
    const [low, high] = [-1, 1].map((sign) =>
      figures(
        siteAt(
          s,
          unknowns,
          u.map((each, i) => each + sign * column[i]),
        ),
      ),
    );
    own.forEach((at, i) => {
      const [a, b] = [low[i] ?? at, high[i] ?? at];
      if (a !== undefined && b !== undefined) sums[i] += ((b - a) / 2) ** 2;
    });
  }
  return own.map((value, i) => {
    const half = NINETY * Math.sqrt(sums[i]);
    return value === undefined ? undefined : { value, band: [value - half, value + half] };
  });
}
