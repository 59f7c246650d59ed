import { expect, test } from 'vitest';
import { density, dynamicViscosity, kinematicViscosity } from '../../sim/laws/water.ts';

test('water is heaviest at 4 °C', () => {
  for (const t of [0, 2, 3.5, 4.5, 8, 30]) expect(density(t)).toBeLessThan(density(3.98));
});

test('water thins as it warms', () => {
  for (let t = 0; t < 40; t += 1) {
    expect(dynamicViscosity(t + 1)).toBeLessThan(dynamicViscosity(t));
    expect(kinematicViscosity(t + 1)).toBeLessThan(kinematicViscosity(t));
  }
});
