import type { Page } from '@playwright/test';
import { openCourtyard, openFile } from '../tools/views.ts';
import { expect, test } from './fixture.ts';
import { allText } from './pageReads.ts';
import { siteText } from './sites.ts';

interface Site {
  title: string;
  start: string;
  pond: { fillMark?: string; level?: string };
  intake: { blockage?: number };
}

async function openSite(page: Page, title: string, change: (site: Site) => void): Promise<void> {
  const site = JSON.parse(siteText('courtyard')) as Site;
  site.title = title;
  change(site);
  await openCourtyard(page);
  await openFile(page, 'strange.json', JSON.stringify(site));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
  await expect(page.locator('tb-checks .check').first()).toBeVisible();
}

const answer = (page: Page) => page.getByRole('region', { name: 'The answer' });
const cautions = (page: Page) => page.locator('.rest .caution');

/** Whatever a site does, its figures are figures. */
async function expectSense(page: Page): Promise<void> {
  await expect(page.locator('tb-section svg').first()).toBeVisible();
  await expect(page.locator('tb-plots path.subject').first()).toBeAttached();
  expect(await allText(page)).not.toMatch(/NaN|Infinity|undefined|\[object|\bnull\b/);
}

test('a pond filled to its edge floods: the answer fails, says how much is lost, and what mends it', async ({
  page,
}) => {
  await openSite(page, 'Flooding', ({ pond }) => {
    pond.fillMark = '-20 mm';
  });
  await expect(answer(page)).toHaveAttribute('data-verdict', 'fail');
  await expect(answer(page).locator('.headline')).toContainText(
    /Fails: with the check valve sound the pond runs over, \d+\sL lost/,
  );
  await expect(cautions(page).filter({ hasText: /loses water over edges/ })).toBeVisible();
  await page.getByRole('region', { name: 'The whole answer' }).locator('summary').click();
  await expect(page.getByRole('region', { name: 'The whole answer' })).toContainText(/Lower the mark \d+ mm/);
  await expectSense(page);
});

test('an intake under leaves starves the pump: the page says that it draws air', async ({ page }) => {
  await openSite(page, 'Starving', ({ intake }) => {
    intake.blockage = 0.99;
  });
  await expect(cautions(page).filter({ hasText: /draws air/ })).toBeVisible();
  const start = page.locator('tb-checks .check').filter({ has: page.getByText('first start', { exact: true }) });
  await expect(start.locator('.verdict').first()).toHaveText('fails');
  await expect(start).toContainText('the pump draws air');
  await expectSense(page);
});

for (const [title, level, told] of [
  ['Without a drop', 'empty', /There is no water on this site, and none comes in/],
  ['Under its intake', '-0.7 m', /no water reaches the pump/],
] as const) {
  test(`a pond with no water for the pump is drawn and told of: ${title}`, async ({ page }) => {
    await openSite(page, title, (site) => {
      site.start = 'standing';
      site.pond.level = level;
    });
    await expect(answer(page).locator('.headline')).toBeVisible();
    await expect(cautions(page).filter({ hasText: told })).toBeVisible();
    await page.getByRole('button', { name: 'What does the water do inside the filter?' }).click();
    await expect(answer(page)).toContainText(/no water goes up through media|slips round the mats/i);
    await expectSense(page);
  });
}
