import { expect, test } from 'vitest';
import { fittingsLoss, turbulentFriction } from '../../sim/laws/fittings.ts';
import { colebrook } from '../../sim/laws/friction.ts';
import { relativeError } from './differences.ts';

test('fully turbulent friction is where Colebrook goes at high Reynolds number', () => {
  const out = new Float64Array(2);
  for (const bore of [0.02, 0.05, 0.1]) {
    colebrook(1e12, 4.57e-5 / bore, out);
    expect(relativeError(turbulentFriction(bore), out[0])).toBeLessThan(1e-6);
  }
});

test('fittings add, each by its count', () => {
  const ft = turbulentFriction(0.0525);
  const k = fittingsLoss({ elbow90: 3, elbow45: 2, ballValve: 1, checkSwing: 1, entrance: 1, exit: 1 }, 0.0525);
  expect(k).toBeCloseTo((90 + 32 + 3 + 100) * ft + 1.5, 13);
  expect(fittingsLoss({}, 0.0525)).toBe(0);
});
