/** How the media stand in the drawing: against the running balance, which knows whether they float and how wide their gap is. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balance, readScenario } from '../../sim/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { withValuesAt } from '../../sim/studies/place.ts';
import { bedAt, bedAtRest, openedGap } from '../../web/section/bed.ts';
import { closeUpOf } from '../../web/section/close-up.ts';
import { sceneOf } from '../../web/section/layout.ts';

const file: unknown = JSON.parse(
  readFileSync(new URL('../../scenarios/teaching-filter.json', import.meta.url), 'utf8'),
);

function siteWith(edits: Readonly<Record<string, unknown>>): Scenario {
  const reading = readScenario(JSON.stringify(withValuesAt(file, Object.entries(edits) as never)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

/** What the model makes of the gap: δ = δ₀ + s (Δh/Δh_lift − 1). */
function openedBy(s: Scenario): { read: number; model: number } {
  const { flows, levels, lift } = balance(s);
  const media = s.filter!.media!;
  return {
    read: openedGap(media, s, levels['filter']!, flows['gap']!),
    model: media.liftSlack * Math.max(0, lift! - 1),
  };
}

const PUSHED = {
  'plumbing.bottomFeed.valve': 1,
  'plumbing.topFeed.valve': 0,
  'filter.media.layers[0].deposit': '4 L',
};

describe('the gap that floating media open', () => {
  test('is read from the flow round them as the balance has it', () => {
    for (const deposit of ['3.5 L', '4 L', '5 L', '7 L']) {
      const { read, model } = openedBy(siteWith({ ...PUSHED, 'filter.media.layers[0].deposit': deposit }));
      expect(model).toBeGreaterThan(0);
      expect(Math.abs(read / model - 1)).toBeLessThan(1e-3);
    }
  });

  test('is none while they lie, be they clean or clogged', () => {
    for (const deposit of ['0 L', '2 L', '3.9 L'])
      expect(openedBy(siteWith({ 'filter.media.layers[0].deposit': deposit }))).toEqual({ read: 0, model: 0 });
  });
});

describe('the bed in a close-up', () => {
  const drawnWith = (edits: Readonly<Record<string, unknown>>) => {
    const s = siteWith(edits);
    const scene = sceneOf(s);
    const scale = closeUpOf(scene, 984)!;
    const { flows, levels } = balance(s);
    const media = s.filter!.media!;
    return { bed: bedAt(scene.filter!, media, s, { t: 0, flows, levels }, scale), scale, scene, media };
  };

  test('is off its rack where the media float, and on it where they lie', () => {
    expect(drawnWith({}).bed.lifted).toBe(0);
    const { bed, scale, scene, media } = drawnWith(PUSHED);
    expect(bed.lifted * scale.a).toBeGreaterThan(3);
    expect(bed.gap).toBeGreaterThan(bedAtRest(scene.filter!, media, scale).gap);
  });

  test('has a gap eight times as wide as it is, as long as that leaves the media most of the vessel', () => {
    for (const gap of [1, 2.5, 5]) {
      const { bed, scale } = drawnWith({ 'filter.media.gap': `${gap} mm` });
      expect(bed.gap / (scale.a * gap * 1e-3)).toBeCloseTo(8, 9);
    }
    const widths = [0, 1, 5, 10, 20, 60, 200].map((gap) => drawnWith({ 'filter.media.gap': `${gap} mm` }).bed.gap);
    expect(widths[0]).toBe(0);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
    const { scale, scene } = drawnWith({});
    expect(widths.at(-1)!).toBeLessThan(0.5 * scale.a * scene.filter!.cut.width);
  });
});
