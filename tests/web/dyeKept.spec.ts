/** Dye poured into the present case and the one kept: on the page, and side by side on a projector. */
import type { Page } from '@playwright/test';
import { looks } from '../../web/state/look.ts';
import { lookIn } from '../tools/views.ts';
import { expect, test } from './fixture.ts';
import { hindering } from './hindering.ts';

/** The question about the filter, the courtyard kept as it is, and its gap opened to 15 mm. */
async function twoGaps(page: Page): Promise<void> {
  await page.goto('./#courtyard');
  await expect(page.locator('tb-section').first()).toBeVisible();
  const others = page.getByRole('button', { name: 'other questions' });
  if (await others.isVisible()) await others.click();
  await page.getByRole('button', { name: 'What does the water do inside the filter?' }).last().click();
  await expect(page.locator('tb-filter')).toBeVisible();
  await page.getByRole('button', { name: 'keep this case beside' }).click();
  const gap = page.getByRole('textbox', { name: 'gap round the mats', exact: true });
  await gap.fill('15 mm');
  await gap.press('Enter');
}

const dyeOf = (page: Page) => page.getByRole('region', { name: 'Dye', exact: true });
const rowOf = async (page: Page, name: string): Promise<string[]> =>
  dyeOf(page)
    .getByRole('row', { name: new RegExp(`^${name}`) })
    .getByRole('cell')
    .allInnerTexts();

test('both curves stand on the page by their names, with a table of both; a kept case that goes takes its curve along', async ({
  page,
}) => {
  await twoGaps(page);
  await page.getByRole('button', { name: 'pour dye' }).click();
  const curve = dyeOf(page).getByRole('img', { name: /^Dye at the lip\. Now: .* As kept: / });
  await expect(curve).toBeVisible();
  for (const name of ['now', 'as kept']) await expect(curve.getByText(name, { exact: true })).toBeVisible();
  const [kept, now] = (await rowOf(page, 'goes round')).map((text) => Number.parseFloat(text));
  expect(kept).toBeLessThan(2);
  expect(now).toBeGreaterThan(10);
  // The gap set back to that of the case kept, both are one.
  await page.getByRole('button', { name: /^undo/ }).click();
  await expect
    .poll(async () => {
      const [there, here] = await rowOf(page, 'half');
      return there === here;
    })
    .toBe(true);
  await page.getByRole('button', { name: 'let the case kept go' }).click();
  await expect(dyeOf(page).getByRole('table')).toHaveCount(0);
  await expect(dyeOf(page).getByRole('img', { name: /^Dye at the lip: / })).toBeVisible();
});

test('a case kept after the pour gets its dye too', async ({ page }) => {
  await page.goto('./#courtyard');
  await page.getByRole('button', { name: 'What does the water do inside the filter?' }).last().click();
  await page.getByRole('button', { name: 'pour dye' }).click();
  await expect(dyeOf(page).getByRole('img', { name: /^Dye at the lip: / })).toBeVisible();
  await page.getByRole('button', { name: 'keep this case beside' }).click();
  await expect(dyeOf(page).getByRole('table')).toBeVisible();
});

test.describe('on a projector', () => {
  test.use({ viewport: { width: 1280, height: 720 } });

  test('one press by keys pours into both; both drawings are dyed and run together, with both curves in sight', async ({
    page,
  }) => {
    await twoGaps(page);
    await page.getByRole('button', { name: 'side by side' }).press('Enter');
    const sides = page.getByRole('dialog', { name: 'Two cases side by side' });
    await sides.getByRole('button', { name: 'pour dye in both' }).press('Enter');
    const part = (side: number, name: string): Promise<number> =>
      sides
        .locator('tb-section')
        .nth(side)
        .locator(`[data-dye="${name}"]`)
        .first()
        .getAttribute('data-part', { timeout: 1000 })
        .catch(() => '0')
        .then(Number);
    for (const side of [0, 1]) await expect.poll(() => part(side, 'media 4')).toBeGreaterThan(0.05);
    await sides.getByRole('button', { name: 'hold the dye' }).press('Enter');
    // Held at one moment after both pours.
    const times = await sides
      .locator('figcaption')
      .evaluateAll((all) => all.map((each) => /is out after (.+)$/.exec(each.textContent?.trim() ?? '')?.[1]));
    expect(times[0]).toBeDefined();
    expect(times[1]).toBe(times[0]);
    // A wide gap brings more of it beside the media.
    expect(await part(1, 'gap')).not.toBe(await part(0, 'gap'));
    const curve = sides.getByRole('img', { name: /^Dye at the lip\. Now: / });
    await expect(curve).toBeVisible();
    const table = sides.getByRole('table', { name: 'The dye in both cases' });
    for (const seen of [curve, table, sides.locator('tb-section').first(), sides.locator('tb-section').last()]) {
      const box = (await seen.boundingBox())!;
      expect(box.y).toBeGreaterThanOrEqual(0);
      expect(box.y + box.height).toBeLessThanOrEqual(720);
      expect(box.x + box.width).toBeLessThanOrEqual(1280);
    }
    expect(await sides.evaluate((dialog) => dialog.scrollHeight - dialog.clientHeight)).toBe(0);
    await sides.getByRole('button', { name: 'let the dye go' }).press('Enter');
    await expect(sides.locator('[data-dye]')).toHaveCount(0);
    await expect(sides.getByRole('table', { name: 'Both cases in figures' })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(sides).toBeHidden();
  });

  for (const look of looks)
    test(`has nothing a reader cannot reach, in ${look}`, async ({ page }) => {
      await lookIn(page, look);
      await twoGaps(page);
      await page.getByRole('button', { name: 'pour dye' }).click();
      await expect(dyeOf(page).getByRole('table')).toBeVisible();
      await page.getByRole('button', { name: 'hold the dye' }).click();
      expect(await hindering(page)).toEqual([]);
      await page.getByRole('button', { name: 'side by side' }).click();
      await expect(page.getByRole('dialog').getByRole('table', { name: 'The dye in both cases' })).toBeVisible();
      expect(await hindering(page)).toEqual([]);
    });
});

test.describe('by thumb', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true });

  test('both stand one under the other, no wider than the phone', async ({ page }) => {
    await twoGaps(page);
    await page.getByRole('button', { name: 'pour dye' }).tap();
    await expect(dyeOf(page).getByRole('table')).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await page.getByRole('button', { name: 'side by side' }).tap();
    const sides = page.getByRole('dialog', { name: 'Two cases side by side' });
    await expect(sides.getByRole('img', { name: /^Dye at the lip\. Now: / })).toBeVisible();
    expect(await sides.evaluate((dialog) => dialog.scrollWidth)).toBeLessThanOrEqual(360);
    await sides.getByRole('button', { name: 'let the dye go' }).tap();
    await expect(sides.getByRole('table', { name: 'Both cases in figures' })).toBeVisible();
    expect(await sides.evaluate((dialog) => dialog.scrollWidth)).toBeLessThanOrEqual(360);
  });
});

test.describe('with motion unwelcome', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('both dyes step', async ({ page }) => {
    await twoGaps(page);
    await page.getByRole('button', { name: 'side by side' }).click();
    const sides = page.getByRole('dialog', { name: 'Two cases side by side' });
    await sides.getByRole('button', { name: 'pour dye in both' }).click();
    await expect(sides.getByRole('img', { name: /^Dye at the lip\. Now: / })).toBeVisible();
    const seen = new Set<string | null>();
    for (let i = 0; i < 12; i++) {
      seen.add(await sides.locator('figcaption').last().textContent());
      await page.waitForTimeout(100);
    }
    expect(seen.size).toBeLessThanOrEqual(2);
  });
});
