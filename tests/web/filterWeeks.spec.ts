/** The hand in the weeks since a cleaning: by mouse, by keys, by thumb; what it does to the page, and undone at once. */
import type { Locator, Page } from '@playwright/test';
import { looks } from '../../web/state/look.ts';
import { lookIn } from '../tools/views.ts';
import { expect, test } from './fixture.ts';
import { hindering } from './hindering.ts';

const question = 'What does the water do inside the filter?';

async function openWeeks(page: Page): Promise<Locator> {
  await page.goto('./#teaching-filter');
  await expect(page.locator('tb-section').first()).toBeVisible();
  const others = page.getByRole('button', { name: 'other questions' });
  if (await others.isVisible()) await others.click();
  await page.getByRole('button', { name: question }).last().click();
  await page.getByText('how often to clean it').click();
  const hand = page.getByRole('slider', { name: 'weeks since a cleaning' });
  await expect(hand).toHaveAttribute('aria-valuetext', /^just cleaned: \d\.\d % slips round$/);
  return hand;
}

const round = (page: Page): Locator =>
  page
    .getByRole('row', { name: /^goes round them/ })
    .getByRole('cell')
    .last();
const percent = (words: string): number => Number.parseFloat(words.replace(/^.*: /, ''));

/** Where a time stands on the screen, as a share of the course. */
async function placeOf(hand: Locator, part: number): Promise<{ x: number; y: number }> {
  await hand.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await hand.boundingBox())!;
  return { x: x + 40 + part * (width - 52), y: y + height / 2 };
}

test('is dragged: the drawing, the figures and the answer follow while it moves, and one undo takes it back', async ({
  page,
}) => {
  const hand = await openWeeks(page);
  const clean = percent((await hand.getAttribute('aria-valuetext'))!);
  await expect(page.locator('tb-section .silt')).toHaveCount(0);
  const [from, to] = [await placeOf(hand, 0.02), await placeOf(hand, 0.4)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(0.5 * (from.x + to.x), from.y, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  // Still held down: the page shows the week.
  await expect(hand).toHaveAttribute('aria-valuetext', /^1[2-6](\.\d)? weeks uncleaned: 1\d % slips round$/);
  const told = percent((await hand.getAttribute('aria-valuetext'))!);
  expect(told).toBeGreaterThan(2 * clean);
  await expect.poll(async () => Math.abs(percent((await round(page).textContent())!) - told)).toBeLessThanOrEqual(1);
  await expect(page.locator('tb-section .silt')).toHaveCount(2);
  await expect(page.getByRole('row', { name: /^pores of ‘fine mat’ filled/ })).toBeVisible();
  await page.mouse.up();
  await expect(page.getByRole('region', { name: 'The answer' })).toContainText(`${told} %`);
  // How long a cleaning lasts has not changed by it.
  await expect(page.getByRole('region', { name: 'The weeks between cleanings' })).toContainText(
    /Clean the media every 10 weeks/,
  );
  await page.getByRole('button', { name: /^undo/ }).click();
  await expect(hand).toHaveAttribute('aria-valuetext', /^just cleaned/);
  await expect(page.getByRole('button', { name: /^undo/ })).toBeDisabled();
});

test('is moved by keys, to the ends and by steps, held keys being one undo', async ({ page }) => {
  const hand = await openWeeks(page);
  await hand.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
  const step = Number(await hand.getAttribute('aria-valuenow')) / 3;
  expect([0.5, 1]).toContain(step);
  await page.keyboard.press('PageUp');
  await expect(hand).toHaveAttribute('aria-valuenow', (7 * step).toFixed(2));
  await page.keyboard.press('ArrowDown');
  await expect(hand).toHaveAttribute('aria-valuenow', (6 * step).toFixed(2));
  await page.keyboard.press('End');
  await expect(hand).toHaveAttribute('aria-valuenow', (await hand.getAttribute('aria-valuemax'))!);
  await page.keyboard.press('Home');
  await expect(hand).toHaveAttribute('aria-valuetext', /^just cleaned/);
  await page.keyboard.press('ArrowRight');
  await page.getByRole('button', { name: /^undo/ }).click();
  await expect(hand).toHaveAttribute('aria-valuetext', /^just cleaned/);
  await expect(page.getByRole('button', { name: /^undo/ })).toBeDisabled();
});

test('media are as just cleaned by a press, which stands there only where something has settled', async ({ page }) => {
  const hand = await openWeeks(page);
  const press = page.getByRole('button', { name: 'as just cleaned' });
  await expect(press).toHaveCount(0);
  await hand.focus();
  await page.keyboard.press('PageUp');
  await press.click();
  await expect(hand).toHaveAttribute('aria-valuetext', /^just cleaned/);
  await expect(press).toHaveCount(0);
  await expect(page.locator('tb-section .silt')).toHaveCount(0);
});

test('what goes round stands beside that of the case kept', async ({ page }) => {
  const hand = await openWeeks(page);
  await expect(page.getByRole('columnheader', { name: 'as kept' })).toHaveCount(0);
  const before = (await round(page).textContent())!;
  await page.getByRole('button', { name: 'keep this case beside' }).click();
  await hand.focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('PageUp');
  const row = page.getByRole('row', { name: /^goes round them/ });
  await expect(row.getByRole('cell')).toHaveCount(2);
  await expect(row.getByRole('cell').first()).toHaveText(before);
  await expect(row.getByRole('cell').last()).not.toHaveText(before);
  await expect(page.getByRole('row', { name: /^pores of ‘fine mat’ filled 0\.0 %/ })).toBeVisible();
});

test.describe('by thumb', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true });

  test('a tap puts it there; it is large enough, the page scrolls over it, and is not wider than the phone', async ({
    page,
  }) => {
    const hand = await openWeeks(page);
    const box = (await hand.boundingBox())!;
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    expect(await hand.evaluate((each) => getComputedStyle(each).touchAction)).toBe('pan-y');
    const { x, y } = await placeOf(hand, 0.3);
    await page.touchscreen.tap(x, y);
    await expect(hand).toHaveAttribute('aria-valuetext', /^\d+(\.\d)? weeks uncleaned/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await page.getByRole('button', { name: 'as just cleaned' }).tap();
    await expect(hand).toHaveAttribute('aria-valuetext', /^just cleaned/);
  });
});

for (const look of looks)
  test(`has nothing a reader cannot reach, in ${look}`, async ({ page }) => {
    await lookIn(page, look);
    const hand = await openWeeks(page);
    await hand.focus();
    await page.keyboard.press('PageUp');
    await expect(page.getByRole('button', { name: 'as just cleaned' })).toBeVisible();
    expect(await hindering(page)).toEqual([]);
  });
