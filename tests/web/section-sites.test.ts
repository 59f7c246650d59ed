/** Every site can be drawn: the demo sites and twenty random ones, from a bath tub to a hall, at every width. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partsOf } from '../../web/section/parts.ts';
import { site } from '../network/randomSite.ts';
import { faultsOfSite } from './sectionFaults.ts';
import { drawn, scenarioOf } from './sectionPaths.ts';
import { siteNames, siteText } from './sites.ts';

const widths = [360, 390, 800, 984];

describe('no part stands outside the sheet and every path is made of numbers', () => {
  test.each(siteNames)('%s', { timeout: 60_000 }, (name) => {
    const scenario = scenarioOf(siteText(name));
    for (const width of widths) expect(faultsOfSite(scenario, width)).toEqual([]);
  });

  test('twenty random sites', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(site, fc.constantFrom(...widths), (scenario, width) => {
        expect(faultsOfSite(scenario, width)).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });
});

test.each(siteNames)('every part of %s that can be pressed has a place and a name of its own', (name) => {
  const { scene, scale } = drawn(scenarioOf(siteText(name)), 984);
  const parts = partsOf(scene, scale);
  expect(new Set(parts.map(({ place }) => place)).size).toBe(parts.length);
  expect(parts.every((part) => part.name !== '')).toBe(true);
  const stones = scene.scenario.watercourse.flatMap((r) => (r.kind === 'pool' ? r.stones : []));
  for (const stone of stones) expect(parts.some((part) => part.name === stone.name)).toBe(true);
});
