import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { commandAnswers, siteNames, siteText } from './sites.ts';

const says = (page: Page): Locator => page.getByRole('region', { name: 'The answer' }).locator('.says');
const pondLine = (page: Page): Locator =>
  page.getByRole('region', { name: 'Levels' }).locator('tb-strip').first().locator('path.line');
const other = siteNames.find((name) => name !== 'courtyard')!;

/** What the page shows of a run that must change with the site. */
async function shown(page: Page): Promise<{ answer: string | null; line: string | null }> {
  await expect(says(page)).toBeVisible();
  await expect(pondLine(page)).toBeVisible();
  return { answer: await says(page).textContent(), line: await pondLine(page).getAttribute('d') };
}

test('opens with the courtyard and its answer, unasked', async ({ page }) => {
  await page.goto('./');
  await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
});

test('another site changes the answer and the drawn levels', async ({ page }) => {
  await page.goto('./');
  const before = await shown(page);
  await page.getByRole('combobox', { name: 'site' }).selectOption(other);
  await expect(says(page)).toHaveText(commandAnswers(other).checks[0]!.says);
  const after = await shown(page);
  expect(after.answer).not.toBe(before.answer);
  expect(after.line).not.toBe(before.line);
});

test('a site is chosen by keyboard alone', async ({ page }) => {
  await page.goto('./');
  await shown(page);
  await page.keyboard.press('Tab');
  await expect(page.getByRole('combobox', { name: 'site' })).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('heading', { level: 2 })).not.toHaveText(commandAnswers('courtyard').title);
  await expect(says(page)).toBeVisible();
});

test('a site in the address is the one shown after a reload', async ({ page }) => {
  await page.goto('./');
  await shown(page);
  await page.getByRole('combobox', { name: 'site' }).selectOption(other);
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(commandAnswers(other).title);
  await page.reload();
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(commandAnswers(other).title);
});

test('units turn at one press, in the sentences and on the axes', async ({ page }) => {
  await page.goto('./#courtyard');
  await page.getByRole('button', { name: 'mm, L' }).click();
  await expect(says(page)).toContainText(' mm');
  await page.getByRole('button', { name: 'in, gal' }).click();
  await expect(says(page)).toContainText(' in');
  await expect(says(page)).not.toContainText(' mm');
  await expect(page.locator('tb-strip .values').first()).toContainText(/ (in|ft)/);
  await expect(page.locator('tb-ledger')).toContainText(' gal');
});

test('pressing an event opens its minutes, and the whole run comes back', async ({ page }) => {
  await page.goto('./#courtyard');
  const whole = await shown(page);
  await page.getByRole('region', { name: 'Events' }).getByRole('button', { name: 'pump off' }).first().click();
  await expect(pondLine(page)).not.toHaveAttribute('d', whole.line!);
  await expect(page.getByRole('slider', { name: 'moment' })).toBeInViewport();
  await expect(page.getByRole('button', { name: 'twenty minutes' })).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'the whole run' }).click();
  await expect(pondLine(page)).toHaveAttribute('d', whole.line!);
});

test('the playhead moves by arrow keys and tells the level at its moment', async ({ page }) => {
  await page.goto('./#courtyard');
  await shown(page);
  const slider = page.getByRole('slider', { name: 'moment' });
  const start = await slider.getAttribute('aria-valuetext');
  await slider.focus();
  for (let press = 0; press < 20; press++) await page.keyboard.press('ArrowRight');
  await expect(slider).not.toHaveAttribute('aria-valuetext', start!);
  await expect(page.locator('tb-strip .now').first()).toContainText('its edge');
});

test('a broken file is told with the place of every problem, and a sound one is run', async ({ page }) => {
  await page.goto('./');
  await shown(page);
  const file = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  const field = page.locator('input[type=file]');
  await field.setInputFiles(file('torn.json', '{ "title": "Torn",'));
  await expect(page.getByRole('region', { name: 'Problems of the file' })).toContainText('line 1:');

  const site = JSON.parse(siteText('courtyard'));
  await field.setInputFiles(file('odd.json', JSON.stringify({ ...site, span: '24 gpm', colour: 'green' })));
  const problems = page.getByRole('region', { name: 'Problems of the file' });
  await expect(problems).toContainText('span');
  await expect(problems).toContainText('colour');
  await expect(says(page)).toBeHidden();

  await field.setInputFiles(file('mine.json', JSON.stringify({ ...site, title: 'My own courtyard' })));
  await expect(page.getByRole('heading', { level: 2 })).toHaveText('My own courtyard');
});

test('the cautions stand on the page', async ({ page }) => {
  await page.goto('./');
  const foot = page.getByRole('contentinfo');
  await expect(foot).toContainText('Local codes and licensed practice come first; a simulation is no survey.');
  await expect(foot).toContainText('Children drown in little water');
  await expect(foot).toContainText('ground-fault protection');
});
