import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' }, timezoneId: 'America/New_York' });

const question = 'When will it be full?';

async function openFill(page: Page, site = 'courtyard'): Promise<void> {
  await page.goto(`./#${site}`);
  const others = page.getByRole('button', { name: 'other questions' });
  await expect(page.locator('tb-section').first()).toBeVisible();
  if (await others.isVisible()) await others.click();
  await page.getByRole('button', { name: question }).last().click();
  await expect(page.getByRole('heading', { name: /^Shut the hose/ })).toBeVisible();
}

const answer = (page: Page) => page.getByRole('heading', { level: 2, name: /the hose/i });

/** Types into a field as a person does, and leaves it. */
async function type(page: Page, name: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name, exact: true });
  await field.fill(text);
  await field.press('Tab');
}

test.describe('the fill, by thumb', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true });

  test('goes from a bucket test to the hour and a file that rings', async ({ page }) => {
    await openFill(page);
    await page.getByRole('button', { name: 'inches and gallons' }).tap();
    await type(page, 'bucket of hose', '5 gal');
    await type(page, 'seconds to fill the bucket of hose', '33');
    await expect(page.getByText('The hose gives 9.1 gpm.')).toBeVisible();
    await type(page, 'hose opened at', '2:10 pm');
    await type(page, 'water then, below the edge', '14 1/4');
    await expect(page.getByRole('textbox', { name: 'water then, below the edge' })).toHaveValue('14¼ in');
    await expect(answer(page)).toHaveText(/Shut the hose at\s*\d+:\d\d pm/);
    await expect(
      page.getByText(/^[\d,]+\sgal from 2:10\spm, give or take \d+\smin, moved most by the bucket test\.$/),
    ).toBeVisible();
    await expect(page.getByText(/Only then draw the mark\./)).toBeVisible();
    await expect(page.getByRole('img', { name: /^The pond at .*: water .* below the edge$/ })).toBeVisible();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'ring me: a calendar file' }).tap();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/shut-the-hose\.ics$/);
    await expect(page.getByText(/by the clock of America\/New_York\.$/)).toBeVisible();
  });

  test('is told beside the field what cannot be, and nothing typed is lost', async ({ page }) => {
    await openFill(page);
    const before = await answer(page).textContent();
    await type(page, 'hose opened at', '25:00');
    await expect(page.getByRole('alert')).toContainText('is no time of day');
    await expect(page.getByRole('textbox', { name: 'hose opened at' })).toHaveValue('25:00');
    await type(page, 'hose opened at', '06:00');
    await type(page, 'water then, below the edge', '9 m');
    await expect(page.getByRole('alert')).toContainText('The pond is only 850 mm deep.');
    await type(page, 'seconds to fill the bucket of hose', '0');
    await expect(page.getByRole('alert').first()).toContainText('more than nothing');
    expect(await answer(page).textContent()).toBe(before);
  });
});

test.describe('the fill, by keyboard', () => {
  test('moves along its course, and the drawing with it', async ({ page }) => {
    await openFill(page);
    const course = page.getByRole('slider', { name: 'moment of the fill' });
    await course.focus();
    await page.keyboard.press('Home');
    await expect(course).toHaveAttribute('aria-valuetext', /^06:00, 850 mm below the edge$/);
    await page.keyboard.press('PageDown');
    await expect(course).toHaveAttribute('aria-valuetext', /^06:00/);
    await page.keyboard.press('PageUp');
    await page.keyboard.press('ArrowRight');
    await expect(course).not.toHaveAttribute('aria-valuetext', /^06:00/);
    await expect(page.getByText(/trial ‘filling’/).first()).toBeVisible();
    await page.keyboard.press('End');
    await expect(course).toHaveAttribute('aria-valuetext', /110 mm below the edge$/);
    await type(page, 'hose opened at', '14:10');
    await expect(course).toHaveAttribute('aria-valuetext', /^1[5-9]:\d\d/);
    await course.focus();
    await page.keyboard.press('Home');
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
    await expect(course).toHaveAttribute('aria-valuetext', /^14:3\d/);
    await page.getByRole('button', { name: 'let it fill' }).press('Enter');
    await expect(course).toHaveAttribute('aria-valuetext', /110 mm below the edge$/);
  });

  test('finds the opening for an hour, through a night in which the hose is shut', async ({ page }) => {
    await openFill(page);
    await type(page, 'hose opened at', '12:00');
    await type(page, 'to be full by', '7 am');
    await expect(answer(page)).toHaveText(/^Open the hose at/);
    await page.getByRole('button', { name: 'it will be opened then' }).press('Enter');
    await expect(answer(page)).toHaveText(/^Shut the hose at\s*0(6:59|7:00)/);
    await type(page, 'shut overnight from', '22:00');
    await expect(page.getByRole('textbox', { name: 'opened again at' })).toHaveValue('07:00');
    await expect(answer(page)).not.toHaveText(/0(6:59|7:00)/);
  });

  test('takes several hoses and a truck, and undo takes them back', async ({ page }) => {
    await openFill(page);
    const once = await answer(page).textContent();
    await page.getByRole('button', { name: 'a tank truck' }).press('Enter');
    await expect(page.getByText(/^‘tank truck’: /)).toBeVisible();
    await expect(answer(page)).toHaveText(/^Shut the hoses at/);
    await page.getByRole('button', { name: 'undo' }).press('Enter');
    await expect(answer(page)).toHaveText(once!.trim().replace(/\s+/g, ' '), { useInnerText: false });
  });
});

test('a site without a hose is given one', async ({ page }) => {
  await openFill(page);
  await page.locator('tb-fill').evaluate((fill) =>
    fill.dispatchEvent(
      new CustomEvent('site-edited', {
        detail: { edits: [['supply.hose', undefined]], label: 'no hose' },
        bubbles: true,
        composed: true,
      }),
    ),
  );
  await expect(page.getByRole('heading', { name: /^Give it a hose/ })).toBeVisible();
  await page.getByRole('button', { name: 'give it a hose' }).click();
  await expect(page.getByRole('heading', { name: /^Shut the hose at/ })).toBeVisible();
});

for (const screen of screens) {
  test(`hinders nobody in ${screen.look} at ${screen.width} px, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await openFill(page);
    await hindersNobody(page, 'tb-fill');
  });
}
