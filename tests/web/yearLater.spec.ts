import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const plots = (page: Page) => page.locator('tb-plots');

async function later(page: Page, site: string): Promise<void> {
  await page.goto(`./#${site}`);
  await plots(page).locator('path.subject').first().waitFor();
  await page.getByRole('button', { name: 'a year later' }).press('Enter');
}

for (const [width, height] of [
  [360, 640],
  [1440, 900],
] as const) {
  test(`a year later is one press and one step, both cases drawn over each other, at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await later(page, 'courtyard');
    await expect(plots(page)).toContainText('A year later (our default): the edge 25 mm lower, where it lies on fill');
    await expect(plots(page)).toContainText(
      'the filter’s box out of level by 10 mm, the screen half blocked, the pump a tenth slower',
    );
    await expect(plots(page)).toContainText(
      /At its highest the pond is \d+ mm below its edge, \d+(\.\d)? mm higher than in the case kept/,
    );
    await expect(plots(page).locator('svg text').filter({ hasText: 'as kept' }).first()).toBeAttached();
    const undo = page.getByRole('button', { name: 'undo' });
    await expect(undo).toHaveAttribute('title', 'a year later');
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/year-${width}.png`, fullPage: true });
    await undo.click();
    await expect(undo).toBeDisabled();
    await expect(plots(page)).not.toContainText('A year later');
    await expect(plots(page)).toContainText('as in the case kept');
    await page.getByRole('button', { name: 'let the case kept go' }).click();
    await expect(page.getByRole('button', { name: 'a year later' })).toBeVisible();
  });
}

test('a sketched site ages as it was built, in inches', async ({ page }) => {
  await later(page, 'backyard');
  await expect(plots(page)).toContainText(/A year later \(our default\): the edge 1 in lower/);
  await expect(plots(page)).toContainText(/At its highest the pond is .* in the case kept/);
});
