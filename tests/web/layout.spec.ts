import { expect, test } from './fixture.ts';

for (const width of [360, 820, 1440]) {
  test.describe(`at ${width} px`, () => {
    test.use({ viewport: { width, height: width === 360 ? 640 : 900 } });

    test('nothing reaches past the page, and the answer stands on the first screen', async ({ page }) => {
      await page.goto('./');
      await expect(page.locator('tb-answer .says').first()).toBeInViewport();
      await expect(page.locator('tb-strip svg').first()).toBeVisible();
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(
        0,
      );
    });

    test('every press is at least 44 px high', async ({ page }) => {
      await page.goto('./');
      await expect(page.locator('tb-strip svg').first()).toBeVisible();
      const presses = page.locator('button, select, summary, input').filter({ visible: true });
      expect(await presses.count()).toBeGreaterThan(5);
      for (const press of await presses.all()) {
        const box = await press.boundingBox();
        expect(box!.height, await press.evaluate((element) => element.outerHTML)).toBeGreaterThanOrEqual(44);
      }
    });
  });
}

/** Relative luminance and contrast, WCAG 2.2, definitions of the same names. */
function contrast(one: string, other: string): number {
  const luminance = (hex: string): number => {
    const [red, green, blue] = [1, 3, 5]
      .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in a ${colorScheme} scheme`, () => {
    test.use({ colorScheme });

    test('text and data lines keep the contrast of WCAG 2.2 AA on paper', async ({ page }) => {
      await page.goto('./');
      const token = (name: string): Promise<string> =>
        page.evaluate((name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim(), name);
      const paper = await token('--paper');
      for (const name of ['--ink', '--ink2', '--water', '--brick']) {
        expect(contrast(await token(name), paper), name).toBeGreaterThanOrEqual(4.5);
      }
    });
  });
}
