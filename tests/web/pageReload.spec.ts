import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const mark = (page: Page) => page.getByRole('textbox', { name: 'fill mark' });
const moment = async (page: Page): Promise<string | null> =>
  page.locator('tb-plots').getByRole('slider', { name: 'moment' }).getAttribute('aria-valuenow');
const KEY = 'tumblebay page';
const isKept = (page: Page, words: string): Promise<boolean> =>
  page.evaluate(([key, words]) => sessionStorage.getItem(key!)?.includes(words!) ?? false, [KEY, words]);

test('a reload keeps the site, its edits, the question, the units and the moment', async ({ page }) => {
  await page.goto('./#courtyard');
  await mark(page).fill('-95 mm');
  await mark(page).press('Enter');
  await page.locator('tb-plots .flag').filter({ hasText: 'pump on' }).click();
  await expect.poll(() => moment(page)).toBe(String(7 * 3600));
  await page.getByRole('button', { name: 'inches and gallons' }).click();
  await page.getByRole('button', { name: 'What does the water do inside the filter?' }).click();
  const stood = await moment(page);
  await expect.poll(() => isKept(page, '"about":"filter"')).toBe(true);

  await page.reload();
  await expect(page.getByRole('button', { name: 'What does the water do inside the filter?' })).toHaveAttribute(
    'aria-current',
    'true',
  );
  await expect.poll(() => moment(page)).toBe(stood);
  await page.getByRole('button', { name: 'Does the pond hold what runs back when the pump stops?' }).click();
  await expect(page.getByRole('button', { name: 'inches and gallons' })).toHaveAttribute('aria-pressed', 'true');
  const edited = await mark(page).inputValue();
  await page.getByRole('button', { name: 'undo' }).click();
  await expect(mark(page)).not.toHaveValue(edited);
});

test('a file that was opened is there again after a reload', async ({ page }) => {
  await page.goto('./#courtyard');
  const text = await readFile(new URL('../../scenarios/courtyard.json', import.meta.url), 'utf8');
  const mine = text.replace('Courtyard spring', 'My own courtyard');
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(mine) });
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('My own courtyard');
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('My own courtyard');
});

test('another address opens its own site', async ({ page }) => {
  await page.goto('./#storm');
  await expect.poll(() => isKept(page, '"address":"#storm"')).toBe(true);
  await page.goto('about:blank');
  await page.goto('./#courtyard');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Courtyard spring');
});

test('a browser that keeps nothing is told of', async ({ page }) => {
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.goto('./#courtyard');
  await expect(page.getByText('This browser keeps no more')).toBeVisible();
});

test('what was kept and cannot be read is told of, and can be saved', async ({ page }) => {
  await page.addInitScript((key) => sessionStorage.setItem(key, '{"version":1,"name":"cour'), KEY);
  await page.goto('./#courtyard');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Courtyard spring');
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save what it had kept' }).click();
  expect(await readFile(await (await waiting).path(), 'utf8')).toBe('{"version":1,"name":"cour');
  await expect(page.getByText('could not be read')).toBeHidden();
});
