import type { Page } from '@playwright/test';
import { STEPS } from '../../web/lesson/steps.ts';
import { settled } from './dialsHand.ts';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';
import { readPdf } from './pdfText.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const lesson = (page: Page) => page.getByRole('region', { name: 'Lesson on channeling' });
const share = async (page: Page): Promise<number> =>
  Number(/([\d.]+) %? ?(of what comes up )?(still )?slip round/.exec((await lesson(page).textContent())!)?.[1]);

async function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return at?.textContent?.trim() ?? '';
  });
}

async function tabTo(page: Page, words: string | RegExp): Promise<void> {
  const isThere = (text: string): boolean => (typeof words === 'string' ? text === words : words.test(text));
  for (let press = 0; !isThere(await focused(page)); press++) {
    expect(press, `Tab leads to ${words}`).toBeLessThan(60);
    await page.keyboard.press('Tab');
  }
}

test('by keyboard alone, from a cold start through every step to the print and back', async ({ page }) => {
  await page.goto('./');
  await expect(page.getByRole('region', { name: 'The answer' })).toContainText(/Holds|Tight|Fails/);
  await tabTo(page, 'What does the water do inside the filter?');
  await page.keyboard.press('Enter');
  await tabTo(page, /^a lesson on channeling/);
  await page.keyboard.press('Enter');
  await expect(lesson(page).getByRole('heading', { name: STEPS[0]!.title })).toBeFocused();
  await tabTo(page, 'next step');
  for (const { title } of STEPS.slice(1)) {
    await page.keyboard.press('Enter');
    await expect(lesson(page).getByRole('heading', { name: title })).toBeVisible();
    expect(await focused(page)).toBe('next step');
  }
  await page.keyboard.press('Enter');
  await expect(lesson(page)).toContainText(`step ${STEPS.length} of ${STEPS.length}`);
  await tabTo(page, 'print the lesson');
  await page.keyboard.press('Enter');
  const handout = page.getByRole('article', { name: 'The lesson on channeling' });
  await expect(handout.getByRole('row')).toHaveCount(STEPS.length + 1);
  await expect(page.getByRole('button', { name: 'back to the page' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(handout).toHaveCount(0);
  expect(await focused(page)).toBe('print the lesson');
  await tabTo(page, 'leave the lesson');
  await page.keyboard.press('Enter');
  await expect(lesson(page)).toHaveCount(0);
});

test('each step is one edit of the site, and the figures are those of the site as it stands', async ({ page }) => {
  await page.goto('./');
  await page.getByRole('button', { name: 'What does the water do inside the filter?' }).click();
  await page.getByRole('button', { name: /^a lesson on channeling/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Teaching filter');
  await settled(page);
  const clean = await share(page);
  await lesson(page).getByRole('button', { name: 'next step' }).click();
  await lesson(page).getByRole('button', { name: 'next step' }).click();
  await settled(page);
  await expect.poll(() => share(page)).toBeGreaterThan(5 * clean);
  await page.getByRole('button', { name: /^undo/ }).click();
  await page.getByRole('button', { name: /^undo/ }).click();
  await settled(page);
  await expect(page.getByRole('button', { name: /^undo/ })).toBeDisabled();
});

test('the lesson is printed with the figures of all steps on either paper', async ({ page }) => {
  await page.goto('./');
  await page.getByRole('button', { name: 'What does the water do inside the filter?' }).click();
  await page.getByRole('button', { name: /^a lesson on channeling/ }).click();
  await settled(page);
  await lesson(page).getByRole('button', { name: 'print the lesson' }).click();
  await expect(page.getByRole('article').getByRole('row')).toHaveCount(STEPS.length + 1);
  const { text: plain, pages } = await readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(pages).toBeLessThanOrEqual(2);
  for (const { title } of STEPS) expect(plain).toContain(title);
  expect(plain).toContain('Switch off the pump and its power');
  expect(plain).not.toContain('back to the page');
});

for (const screen of screens.filter(({ look }) => look === 'paper'))
  test(`hinders nobody at ${screen.width} px, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await page.goto('./');
    const press = page.getByRole('button', { name: 'What does the water do inside the filter?' });
    if (!(await press.isVisible())) await page.getByRole('button', { name: 'other questions' }).first().click();
    await press.click();
    await page.getByRole('button', { name: /^a lesson on channeling/ }).click();
    await settled(page);
    await hindersNobody(page, 'tb-lesson');
    await lesson(page).getByRole('button', { name: 'print the lesson' }).click();
    await expect(page.getByRole('article').getByRole('row')).toHaveCount(STEPS.length + 1);
    await hindersNobody(page, 'tb-handout');
  });
