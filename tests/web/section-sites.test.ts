/** Every site can be drawn: the demo sites and twenty random ones, from a bath tub to a hall, at every width. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Mark } from '../../web/section/marks.ts';
import { partsOf } from '../../web/section/parts.ts';
import { momentAt } from '../../web/state/moment.ts';
import { site } from '../network/randomSite.ts';
import { type Drawn, drawn, marksOf, pointsOf, scenarioOf } from './sectionPaths.ts';
import { siteNames, siteText } from './sites.ts';

const widths = [360, 390, 800, 984];

/** px by which a stroke or a stone's rough edge may pass the sheet. */
const SLACK = 3;

function faultsOf(by: Drawn, marks: readonly Mark[]): string[] {
  const { width, height } = by.scale;
  const out = (x: number, y: number): boolean => x < -SLACK || x > width + SLACK || y < -SLACK || y > height + SLACK;
  return marks.flatMap((mark) => {
    if (mark.kind === 'text') return out(mark.x, mark.y) ? [`words outside: ${mark.text}`] : [];
    if (/NaN|Infinity|undefined/.test(mark.d)) return [`no number in ${mark.look}: ${mark.d.slice(0, 80)}`];
    if (mark.clip) return [];
    const point = pointsOf(mark.d).find(([x, y]) => out(x, y));
    return point ? [`${mark.look} outside at ${point}`] : [];
  });
}

function faultsOfSite(scenario: Scenario, width: number): string[] {
  const by = drawn(scenario, width);
  const moments = [0, 0.3, 0.5, 1].map((share) => momentAt(by.series, share * scenario.span));
  const flowing = moments.map(by.at);
  const clips = [...by.ground.clips, ...flowing.flatMap(({ clips }) => clips)];
  const clipFaults = clips.filter(({ d }) => /NaN|Infinity/.test(d)).map(({ id }) => `no number in the clip ${id}`);
  const parts = partsOf(by.scene, by.scale).map((p): Mark => ({ kind: 'path', d: p.d, look: `part ${p.place}` }));
  return [...clipFaults, ...faultsOf(by, parts), ...flowing.flatMap((f) => faultsOf(by, marksOf(by, f)))];
}

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
