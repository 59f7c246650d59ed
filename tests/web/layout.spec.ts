import { expect, test } from './fixture.ts';

for (const width of [360, 820, 1440]) {
  test.describe(`at ${width} px`, () => {
    test.use({ viewport: { width, height: width === 360 ? 640 : 900 } });

    test('nothing reaches past the page; answer, drawing and ‘stop the pump’ stand on the first screen', async ({
      page,
    }) => {
      await page.goto('./');
      await expect(page.locator('tb-answer .headline')).toBeInViewport({ ratio: 1 });
      await expect(page.locator('tb-section svg').first()).toBeInViewport();
      await expect(page.getByRole('button', { name: 'stop the pump' })).toBeInViewport({ ratio: 1 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(
        0,
      );
    });

    test('every press is at least 44 px high', async ({ page }) => {
      await page.goto('./');
      await expect(page.locator('tb-dial').first()).toBeVisible();
      await page.getByRole('button', { name: 'stop the pump' }).waitFor();
      const presses = page.locator('button, select, summary, input').filter({ visible: true });
      expect(await presses.count()).toBeGreaterThan(5);
      for (const press of await presses.all()) {
        const box = await press.boundingBox();
        expect(box!.height, await press.evaluate((element) => element.outerHTML)).toBeGreaterThanOrEqual(44);
      }
    });
  });
}

test.describe('at 200 % zoom of a desk', () => {
  test.use({ viewport: { width: 720, height: 450 } });

  test('nothing reaches past the page, and the answer is seen', async ({ page }) => {
    await page.goto('./');
    await expect(page.locator('tb-answer .headline')).toBeInViewport();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
  });
});

test.describe('in colors of the reader’s own', () => {
  test.use({ contextOptions: { forcedColors: 'active' } });

  test('ink and paper are the system’s', async ({ page }) => {
    await page.goto('./');
    await expect(page.locator('tb-answer .headline')).toBeVisible();
    const ink = await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--ink').trim());
    expect(ink.toLowerCase()).toBe('canvastext');
  });
});

/** Relative luminance and contrast, WCAG 2.2, definitions of the same names. */
function contrast(one: string, other: string): number {
  const luminance = (given: string): number => {
    const hex = given.length === 4 ? given.replace(/[0-9a-f]/gi, '$&$&') : given;
    const [red, green, blue] = [1, 3, 5]
      .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

for (const [look, least] of [
  ['paper', 4.5],
  ['slate', 4.5],
  ['stark', 7],
] as const) {
  test(`text and data lines of ${look} keep the contrast of WCAG 2.2 on paper, ${least} at the least`, async ({
    page,
  }) => {
    await page.addInitScript((kept) => localStorage.setItem('tumblebay look', kept), look);
    await page.goto('./');
    await expect(page.locator('html')).toHaveAttribute('data-look', look);
    const token = (name: string): Promise<string> =>
      page.evaluate((name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim(), name);
    const paper = await token('--paper');
    for (const name of ['--ink', '--ink2', '--water', '--brick']) {
      expect(contrast(await token(name), paper), name).toBeGreaterThanOrEqual(least);
    }
  });
}

for (const [colorScheme, look] of [
  ['light', 'paper'],
  ['dark', 'slate'],
] as const) {
  test.describe(`in a ${colorScheme} scheme`, () => {
    test.use({ colorScheme });

    test(`the page opens in ${look}`, async ({ page }) => {
      await page.goto('./');
      await expect(page.locator('html')).toHaveAttribute('data-look', look);
    });
  });
}
