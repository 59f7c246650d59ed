/** The table of advance widths against the page's own font in a browser. */
import { labelTexts, measureText } from '../../web/section/labels/index.ts';
import { expect, test } from './fixture.ts';
import { demoSites, subjectAt } from './labelsScene.ts';

const lines = demoSites().flatMap((site) =>
  (['metric', 'us'] as const).flatMap((display) =>
    labelTexts(subjectAt(site, 0, display)).flatMap(({ lines }) => [...lines]),
  ),
);

test('no label is set wider than its width by the table, nor 6 % narrower', async ({ page }) => {
  await page.goto('./');
  const set = await page.evaluate(async (lines) => {
    await Promise.all(['13px', 'italic 13px'].map((font) => document.fonts.load(`${font} "STIX Two Text"`)));
    const context = document.createElement('canvas').getContext('2d')!;
    return lines.map(({ text, style }) => {
      context.font = style === 'name' ? 'italic 13px "STIX Two Text"' : '12.5px "STIX Two Text"';
      return context.measureText(text).width;
    });
  }, lines);
  expect(set.length).toBeGreaterThan(150);
  for (const [i, { text, style }] of lines.entries()) {
    const table = measureText(text, style);
    expect(set[i], text).toBeLessThanOrEqual(table + 0.5);
    expect(set[i], text).toBeGreaterThan(0.94 * table - 0.5);
  }
});
