import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

async function open(page: Page, fold: 'what a ruler shows' | 'set the valves', site = 'courtyard'): Promise<void> {
  await page.goto(`./#${site}`);
  await page.locator('summary', { hasText: fold }).click();
}

async function type(page: Page, name: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name, exact: true });
  await field.fill(text);
  await field.press('Tab');
}

const said = (page: Page) => page.getByRole('region', { name: 'What the readings say' });
const setting = (page: Page) => page.getByRole('region', { name: 'How the valves are set' });

test('what a ruler and a bucket show gives the real flow, and goes into the site with one step back', async ({
  page,
}) => {
  await open(page, 'what a ruler shows');
  await type(page, 'The water over ‘broad stone’: reading', '22');
  await expect(page.getByRole('textbox', { name: 'The water over ‘broad stone’: reading' })).toHaveValue('22 mm');
  await type(page, 'The top feed into a bucket: bucket', '10 L');
  await type(page, 'The top feed into a bucket: seconds', '8.5');
  await expect(said(page)).toContainText(/The real flow is \d+ L\/min \(\d+ to \d+ L\/min\)\./);
  await expect(said(page).getByRole('table', { name: 'Fitted values' })).toContainText('the valve of the top feed');
  await said(page).getByText('what they can’t tell').click();
  await expect(said(page)).toContainText(/The readings can’t tell/);
  await said(page).getByRole('button', { name: 'put these into the site' }).click();
  await expect(page.getByText('They stand in the site')).toBeVisible();
  const undo = page.getByRole('button', { name: 'undo' });
  await expect(undo).toHaveAttribute('title', 'what the ruler showed');
  await undo.click();
  await expect(undo).toBeDisabled();
});

test('a reading that cannot be is told beside its field, two that contradict each other together', async ({ page }) => {
  await open(page, 'what a ruler shows');
  await type(page, 'The water over ‘broad stone’: reading', '2 m');
  await expect(page.getByRole('alert').first()).toContainText('run over it: there is room for');
  await type(page, 'The water over ‘broad stone’: reading', 'wet');
  await expect(page.getByRole('alert').first()).toContainText('"wet" can’t be read');
  await type(page, 'The water over ‘broad stone’: reading', '40 mm');
  await type(page, 'The water over ‘corner stone’: reading', '3 mm');
  await expect(said(page).getByRole('alert').first()).toContainText(/contradict|can’t be right/);
});

test('the valves are set by a wish: handles, what the ruler shows, and into the site', async ({ page }) => {
  await open(page, 'set the valves');
  await expect(setting(page)).toContainText('Both valves can be set so.');
  await type(page, 'share of the water through the bottom feed', 'half');
  await type(page, 'water over the stone', '25 mm');
  await expect(setting(page)).toContainText(/‘broad stone’ is 25 mm\./);
  await expect(setting(page)).toContainText(/bottom feed.*from along the pipe/);
  await expect(setting(page).getByRole('listitem').last()).toContainText(
    /Turn the valve of the .* until the water over ‘broad stone’ is 25 mm; wait until it stands\./,
  );
  await setting(page).getByRole('button', { name: 'put these into the site' }).click();
  await expect(page.getByRole('button', { name: 'undo' })).toHaveAttribute('title', 'valves set by the ruler');
  await type(page, 'water over the stone', '3 m');
  await expect(page.getByRole('alert').first()).toContainText('there is room for');
});

test('heights are read by the rod against a benchmark, in feet and inches with fractions', async ({ page }) => {
  await open(page, 'set the valves', 'backyard');
  await type(page, 'rod reading on the benchmark', '4 ft 3 1/2 in');
  await expect(page.getByRole('textbox', { name: 'rod reading on the benchmark' })).toHaveValue('4 ft 3½ in');
  const rods = page.getByRole('table', { name: 'Rod readings' });
  await expect(rods.getByRole('row', { name: /^fill mark/ })).toContainText('4 ft 3½ in');
  await expect(rods.getByRole('row', { name: /^edge/ })).toContainText('4 ft');
});

for (const screen of screens) {
  test(`hinder nobody in ${screen.look} at ${screen.width} px, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await open(page, 'what a ruler shows');
    await type(page, 'The water over ‘broad stone’: reading', '1 in');
    await expect(said(page)).toBeVisible();
    await page.locator('summary', { hasText: 'set the valves' }).click();
    await expect(setting(page)).toContainText('By the ruler');
    await hindersNobody(page, 'tb-readings, tb-setting');
  });
}
