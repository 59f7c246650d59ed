import { test as base, type Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { commandAnswers, siteNames } from './sites.ts';

const other = siteNames.find((name) => name !== 'courtyard')!;

async function choose(page: Page, name: string): Promise<void> {
  await page.locator('details.site > summary').click();
  await page.getByRole('group', { name: 'Sites' }).getByRole('button', { name, exact: true }).click();
}

const answered = (page: Page) => page.getByRole('region', { name: 'The whole answer' }).locator('.says');

// What the page has kept for use without a network would be served past the routes of these tests.
test.use({ serviceWorkers: 'block' });

test('a worker that ends between questions is replaced at the next one', async ({ page }) => {
  await page.goto('./#courtyard');
  await expect(answered(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  await page.workers()[0]!.evaluate(() => self.close());
  await choose(page, commandAnswers(other).title);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(commandAnswers(other).title);
});

test('a worker that ends in the middle of a question is replaced, and the question is asked again', async ({
  page,
}) => {
  let started = 0;
  await page.route('**/worker-*.js', async (route) => {
    const response = await route.fetch();
    const mortal = `addEventListener('message', (event) => {
      if (event.data.path?.includes('ask')) { event.stopImmediatePropagation(); self.close(); }
    });`;
    started += 1;
    await route.fulfill({ response, body: (started === 1 ? mortal : '') + (await response.text()) });
  });
  await page.goto('./#courtyard');
  await expect(answered(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  expect(started).toBe(2);
});

base('a worker that cannot be loaded is told as a fault, and the page lives on', async ({ page }) => {
  await page.route('**/worker-*.js', (route) => route.abort());
  await page.goto('./#courtyard');
  await expect(page.getByRole('region', { name: 'A fault' })).toContainText('stopped 2 times');
  await page.unroute('**/worker-*.js');
  await choose(page, commandAnswers(other).title);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(commandAnswers(other).title);
});
