import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { commandAnswers, siteNames, siteText } from './sites.ts';

const answer = (page: Page): Locator => page.getByRole('region', { name: 'The answer' });
const says = (page: Page): Locator => page.getByRole('region', { name: 'The whole answer' }).locator('.says');
const now = (page: Page): Locator => page.getByRole('group', { name: 'The moment drawn' }).locator('.now');
const other = siteNames.find((name) => name !== 'courtyard')!;

async function choose(page: Page, name: string): Promise<void> {
  await page.locator('details.site > summary').click();
  await page.getByRole('group', { name: 'Sites' }).getByRole('button', { name, exact: true }).click();
}

test('opens with the courtyard and its answer, unasked', async ({ page }) => {
  await page.goto('./');
  await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  await expect(answer(page)).toContainText(/Holds: with the check valve sound .* with it failed/);
});

test('opens one minute before the pump stops and plays once through the rise', async ({ page }) => {
  await page.goto('./#courtyard');
  await expect(now(page)).toContainText('the pump lifts');
  await expect(now(page)).toContainText('after the stop');
  await expect(now(page)).toContainText('12:12', { timeout: 15_000 });
});

test.describe('under reduced motion', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('the site stands at its highest level at once', async ({ page }) => {
    await page.goto('./#courtyard');
    await expect(now(page)).toContainText('after the stop');
    const first = await now(page).textContent();
    await page.waitForTimeout(300);
    expect(await now(page).textContent()).toBe(first);
  });
});

test('stops the pump again at a press', async ({ page }) => {
  await page.goto('./#courtyard');
  await expect(now(page)).toContainText('12:12', { timeout: 15_000 });
  await page.getByRole('button', { name: 'stop the pump' }).click();
  await expect(now(page)).toContainText('the pump lifts');
});

test('shows the trial of a site whose own run has no stop, and the run at a press', async ({ page }) => {
  const site = JSON.parse(siteText('courtyard'));
  const mine = JSON.stringify({ ...site, title: 'Never stopped', actions: [] });
  await page.goto('./');
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(mine) });
  await expect(now(page)).toContainText('trial ‘drain-back’');
  await page.getByRole('button', { name: 'back to the run' }).click();
  await expect(now(page)).not.toContainText('trial');
});

test('another site changes the answer and the drawing', async ({ page }) => {
  await page.goto('./');
  await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  const before = await page.locator('tb-section').evaluate((each) => each.shadowRoot!.textContent);
  await choose(page, commandAnswers(other).title);
  await expect(says(page)).toHaveText(commandAnswers(other).checks[0]!.says);
  expect(await page.locator('tb-section').evaluate((each) => each.shadowRoot!.textContent)).not.toBe(before);
});

test('a site is chosen by keyboard alone', async ({ page }) => {
  await page.goto('./');
  await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  // The sheet of this site comes before the other sites.
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText(commandAnswers('courtyard').title);
});

test('an address that names no site, or cannot be read, opens with the courtyard', async ({ page }) => {
  for (const hash of ['nosuch', '%E0%A4%A', 'constructor']) {
    await page.goto('about:blank');
    await page.goto(`./#${hash}`);
    await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  }
});

test('a site in the address is the one shown after a reload', async ({ page }) => {
  await page.goto('./');
  await choose(page, commandAnswers(other).title);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(commandAnswers(other).title);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(commandAnswers(other).title);
});

test('units turn at one press, in the sentences and the ledger', async ({ page }) => {
  await page.goto('./#courtyard');
  await expect(answer(page)).toContainText(' mm');
  await page.getByRole('button', { name: 'inches and gallons' }).click();
  await expect(answer(page)).toContainText(' in');
  await expect(answer(page)).not.toContainText(' mm');
  await expect(page.locator('tb-ledger')).toContainText(' gal');
});

test('each question is answered, and asked of the same site', async ({ page }) => {
  await page.goto('./#courtyard');
  await page.getByRole('button', { name: 'When will it be full?' }).click();
  await expect(answer(page)).toContainText(/Shut the hose at \d\d:\d\d/);
  await page.getByRole('button', { name: 'What does the water do inside the filter?' }).click();
  await expect(answer(page)).toContainText('slips round the mats');
  await expect(page.getByRole('slider', { name: 'bottom feed’s valve' })).toBeVisible();
});

test('a look that was chosen is kept', async ({ page }) => {
  await page.goto('./');
  await page.locator('details.site > summary').click();
  await page.getByRole('button', { name: 'slate' }).click();
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-look', 'slate');
});

test('a check’s moment is moved to, in the run or in its trial', async ({ page }) => {
  await page.goto('./#courtyard');
  await page.getByRole('region', { name: 'The whole answer' }).locator('summary').click();
  await page
    .getByRole('region', { name: 'The whole answer' })
    .getByRole('button', { name: /^look at its trial/ })
    .click();
  await expect(now(page)).toContainText('trial ‘drain-back’');
});

test('a broken file is told with the place of every problem, and a sound one is run', async ({ page }) => {
  await page.goto('./');
  await expect(answer(page)).toBeVisible();
  const file = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  const field = page.locator('input[type=file]');
  await field.setInputFiles(file('torn.json', '{ "title": "Torn",'));
  await expect(page.getByText('‘torn.json’ is cut short')).toContainText('line 1:');
  await field.setInputFiles(file('plan.json', '{ "layers": [] }'));
  await expect(page.getByText('‘plan.json’ has no pond and no pump in it')).toContainText('Nothing was opened.');
  await expect(answer(page)).toBeVisible();

  const site = JSON.parse(siteText('courtyard'));
  await field.setInputFiles(file('odd.json', JSON.stringify({ ...site, span: '24 gpm', colour: 'green' })));
  const problems = page.getByRole('region', { name: 'Problems of the file' });
  await expect(problems).toContainText('span');
  await expect(problems).toContainText('colour');
  await expect(answer(page)).toBeHidden();

  await field.setInputFiles(file('mine.json', JSON.stringify({ ...site, title: 'My own courtyard' })));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('My own courtyard');
});

test('the cautions stand on the page', async ({ page }) => {
  await page.goto('./');
  const foot = page.getByRole('contentinfo');
  await expect(foot).toContainText('Local codes and licensed practice come first; a simulation is no survey.');
  await expect(foot).toContainText('Children drown in little water');
  await expect(foot).toContainText('ground-fault protection');
});
