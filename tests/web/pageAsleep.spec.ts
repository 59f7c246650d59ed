import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';

const playhead = (page: Page) => page.locator('tb-plots').getByRole('slider', { name: 'moment' });
const moment = async (page: Page): Promise<number> => Number(await playhead(page).getAttribute('aria-valuenow'));
const HOUR = 3600;

test('time that is let run goes on where it was after a day in the dark', async ({ page }) => {
  await page.clock.install();
  await page.goto('./#courtyard');
  await page.locator('tb-plots path.subject').first().waitFor();
  await page.locator('tb-plots .flag').filter({ hasText: 'pump off' }).click();
  await expect.poll(() => moment(page)).toBe(6 * HOUR);
  await page.locator('tb-plots').getByRole('button', { name: 'let it run' }).click();
  await expect.poll(() => moment(page)).toBeGreaterThan(6 * HOUR + 1);
  const before = await moment(page);
  await page.clock.pauseAt(new Date(Date.now() + 60_000));
  await page.clock.fastForward('24:00:00');
  // A second of the screen is half a minute of the opened thirteen.
  expect((await moment(page)) - before).toBeLessThan(90);
  await page.clock.resume();
  await expect.poll(() => moment(page)).toBeGreaterThan(before + 2);
  expect(await moment(page)).toBeLessThan(before + 12 * 60);
});

test('the stop that is played goes on where it was after a day in the dark', async ({ page }) => {
  await page.clock.install();
  await page.goto('./#courtyard');
  await page.locator('tb-plots path.subject').first().waitFor();
  await expect.poll(() => moment(page)).toBeGreaterThan(6 * HOUR - 58);
  const before = await moment(page);
  await page.clock.pauseAt(new Date(Date.now() + 60_000));
  await page.clock.fastForward('24:00:00');
  // Of its eight seconds on the screen, which begin slowly, two more would be three minutes of the run.
  expect((await moment(page)) - before).toBeLessThan(180);
  await page.clock.resume();
  await expect.poll(() => moment(page)).toBeGreaterThan(6 * HOUR + 11 * 60);
});

/** What the page says to its workers is held while `holding`, as on a phone that slept. */
declare global {
  interface Window {
    holding: boolean;
    held: (() => void)[];
  }
}

test('figures older than what is set say so until the answer is there', async ({ page }) => {
  await page.addInitScript(() => {
    window.holding = false;
    window.held = [];
    const say = Worker.prototype.postMessage as (this: Worker, ...args: unknown[]) => void;
    Worker.prototype.postMessage = function (this: Worker, ...args: unknown[]) {
      if (window.holding) window.held.push(() => say.apply(this, args));
      else say.apply(this, args);
    };
  });
  await page.goto('./#courtyard');
  await page.getByRole('region', { name: 'The whole answer' }).locator('.says').waitFor({ state: 'attached' });
  await page.evaluate(() => {
    window.holding = true;
  });
  const mark = page.getByRole('textbox', { name: 'fill mark' });
  await mark.fill('-95 mm');
  await mark.press('Enter');
  const now = page.getByRole('group', { name: 'The moment drawn' }).locator('.now');
  await expect(now).toContainText('Older than what is set');
  await page.evaluate(() => {
    window.holding = false;
    for (const free of window.held) free();
  });
  await expect(now).not.toContainText('Older than what is set');
});
