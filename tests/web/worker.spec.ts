import { test as base } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { commandAnswers, siteNames } from './sites.ts';

const other = siteNames.find((name) => name !== 'courtyard')!;

test('a worker that ends between questions is replaced at the next one', async ({ page }) => {
  await page.goto('./#courtyard');
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(commandAnswers('courtyard').title);
  await page.workers()[0]!.evaluate(() => self.close());
  await page.getByRole('combobox', { name: 'site' }).selectOption(other);
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(commandAnswers(other).title);
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
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(commandAnswers('courtyard').title);
  expect(started).toBe(2);
});

base('a worker that cannot be loaded is told as a fault, and the page lives on', async ({ page }) => {
  await page.route('**/worker-*.js', (route) => route.abort());
  await page.goto('./#courtyard');
  await expect(page.getByRole('region', { name: 'A fault' })).toContainText('stopped 2 times');
  await page.unroute('**/worker-*.js');
  await page.getByRole('combobox', { name: 'site' }).selectOption(other);
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(commandAnswers(other).title);
});
