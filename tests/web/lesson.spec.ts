import type { Page } from '@playwright/test';
import { STEPS } from '../../web/lesson/steps.ts';
import { ask } from '../tools/views/hand.ts';
import { field, redo, settled, undo } from './dialsHand.ts';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';
import { readPdf } from './pdfText.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const lesson = (page: Page) => page.getByRole('region', { name: 'Lesson on channeling' });
const press = (page: Page, words: string) => lesson(page).getByRole('button', { name: words, exact: true });
const opening = (page: Page) => page.getByRole('button', { name: /^a lesson on channeling/ });
const step = (page: Page, i: number) => expect(lesson(page)).toContainText(`step ${i + 1} of ${STEPS.length}`);
const share = async (page: Page): Promise<number> =>
  Number(/([\d.]+)\s%(\sof what comes up)?( still)? slip round/.exec((await lesson(page).textContent())!)?.[1]);

/** The filter's question is asked, and the lesson on it begun. */
async function begin(page: Page): Promise<void> {
  await ask(page, 'What does the water do inside the filter?');
  await opening(page).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Teaching filter');
  await settled(page);
}

async function typed(page: Page, name: string, value: string): Promise<void> {
  await field(page, name).fill(value);
  await field(page, name).press('Enter');
  await settled(page);
}

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

test('by keyboard alone, from a cold start through every step to the print and back to the site before', async ({
  page,
}) => {
  await page.goto('./');
  await expect(page.getByRole('region', { name: 'The answer' })).toContainText(/Holds|Tight|Fails/);
  const before = await page.getByRole('heading', { level: 1 }).textContent();
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
  await step(page, STEPS.length - 1);
  await tabTo(page, 'print the lesson');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('article')).toHaveCount(2);
  await expect(page.getByRole('button', { name: 'back to the page' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('article')).toHaveCount(0);
  expect(await focused(page)).toBe('print the lesson');
  await tabTo(page, 'leave the lesson');
  await page.keyboard.press('Enter');
  await expect(lesson(page)).toHaveCount(0);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(before!);
  await expect(opening(page)).toBeFocused();
});

test('each step is one edit of the site, and undo and redo show the step that the site stands on', async ({ page }) => {
  await page.goto('./');
  await begin(page);
  const clean = await share(page);
  await press(page, 'next step').click();
  await press(page, 'next step').click();
  await step(page, 2);
  await expect.poll(() => share(page)).toBeGreaterThan(5 * clean);
  await undo(page).click();
  await step(page, 1);
  await expect(lesson(page)).toContainText('The top feed is shut');
  await redo(page).click();
  await step(page, 2);
  await undo(page).click();
  await undo(page).click();
  await step(page, 0);
  await expect(undo(page)).toBeDisabled();
  await expect.poll(() => share(page)).toBe(clean);
});

test('a dial of one’s own silences the step, not its figures; ‘this step again’ and undo bring it back', async ({
  page,
}) => {
  await page.goto('./');
  await begin(page);
  for (let i = 0; i < 3; i++) await press(page, 'next step').click();
  await step(page, 3);
  await settled(page);
  const clogged = await share(page);
  await expect(press(page, 'this step again')).toHaveAttribute('aria-disabled', 'true');
  await typed(page, 'gap round the mats', '7 mm');
  await expect(lesson(page)).toContainText('has been changed since this step was set');
  await expect(lesson(page)).not.toContainText('the same gap as in the first step');
  await expect(lesson(page)).not.toContainText(STEPS[3]!.asks);
  await expect(lesson(page)).toContainText(
    /As it stands, [\d.]+\s% of what comes up slip round, the media cost [\d.]+\smm of head, and in the pores the water stays \d/,
  );
  expect(await share(page)).toBeGreaterThan(clogged);
  await press(page, 'this step again').click();
  await settled(page);
  await expect(lesson(page)).toContainText('the same gap as in the first step');
  expect(await share(page)).toBe(clogged);
  await undo(page).click();
  await expect(lesson(page)).toContainText('has been changed');
  await undo(page).click();
  await expect(lesson(page)).toContainText('the same gap as in the first step');
});

test('the lesson stands over a reload, and comes back after another question', async ({ page }) => {
  await page.goto('./');
  await begin(page);
  await page.reload();
  await step(page, 0);
  for (let i = 0; i < 6; i++) await press(page, 'next step').click();
  await step(page, 6);
  await settled(page);
  await page.reload();
  await step(page, 6);
  await expect(lesson(page)).toContainText('The mat is rinsed');
  await ask(page, 'Does the pond hold what runs back when the pump stops?');
  await expect(lesson(page)).toHaveCount(0);
  await ask(page, 'What does the water do inside the filter?');
  await step(page, 6);
  expect(await focused(page)).toBe('What does the water do inside the filter?');
  await press(page, 'leave the lesson').click();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Teaching filter');
  await expect(opening(page)).toBeFocused();
  await settled(page);
  await page.reload();
  await expect(opening(page)).toBeVisible();
  await expect(lesson(page)).toHaveCount(0);
});

test('leaving leads back to one’s own site as it was, or stays on the lesson’s', async ({ page }) => {
  await page.goto('./');
  await ask(page, 'What does the water do inside the filter?');
  await typed(page, 'gap round the mats', '4 mm');
  await expect(page).toHaveURL(/#own=/);
  const own = page.url();
  await begin(page);
  await press(page, 'next step').click();
  await step(page, 1);
  await press(page, 'leave the lesson').click();
  await expect(page).toHaveURL(own);
  await expect(field(page, 'gap round the mats')).toHaveValue('4 mm');
  await expect(opening(page)).toBeFocused();
  // What the lesson alone did to its site is not kept.
  const sites = () => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('tumblebay site ')));
  await expect.poll(sites).toHaveLength(1);
  await begin(page);
  await press(page, 'next step').click();
  await step(page, 1);
  await press(page, 'leave it, stay on this site').click();
  await expect(lesson(page)).toHaveCount(0);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Teaching filter');
  await expect(opening(page)).toBeFocused();
  await expect.poll(sites).toHaveLength(2);
});

test('small heads and gaps are told in hundredths of an inch; no figure parts from its unit', async ({ page }) => {
  await page.goto('./');
  await begin(page);
  await page.getByRole('button', { name: 'inches and gallons' }).click();
  for (let i = 0; i < 4; i++) await press(page, 'next step').click();
  await step(page, 4);
  await settled(page);
  const says = (await lesson(page).textContent())!;
  expect(says).toMatch(/0\.2\d\u00a0in at which they float up/);
  expect(says).toMatch(/from 0\.10\u00a0in to 0\.\d\d\u00a0in/);
  expect(says).not.toMatch(/\d\/\d/);
  expect(says).not.toMatch(/\d (in|%|gph|gpm|min|s)\b/);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 360, height: 640 } });

  test('the presses stand over the drawing and both on the first screen, the sentences below', async ({ page }) => {
    await page.goto('./');
    await begin(page);
    await page.evaluate(() => scrollTo(0, 0));
    for (let i = 0; i < 6; i++) {
      const next = (await press(page, 'next step').boundingBox())!;
      const media = (await page.locator('tb-section [data-place="filter"]').first().boundingBox())!;
      const asks = (await lesson(page).locator('.asks').boundingBox())!;
      expect(next.y + next.height).toBeLessThan(300);
      expect(media.y).toBeGreaterThan(next.y + next.height);
      expect(media.y + 0.75 * media.height).toBeLessThan(640);
      expect(asks.y).toBeGreaterThan(media.y + media.height);
      expect(await page.evaluate(() => scrollY)).toBe(0);
      await press(page, 'next step').click();
      await step(page, i + 1);
    }
  });
});

for (const units of ['millimeters and liters', 'inches and gallons'])
  test(`in ${units} the class gets a sheet without figures, the trainer one with all of them`, async ({ page }) => {
    await page.goto('./');
    await begin(page);
    await page.getByRole('button', { name: units }).click();
    await settled(page);
    await press(page, 'print the lesson').click();
    const [forClass, forTrainer] = ['Sheet for the class', 'Sheet for the trainer'].map((name) =>
      page.getByRole('article', { name }),
    );
    await expect(forTrainer!.getByRole('row')).toHaveCount(STEPS.length + 1);
    await expect(forClass!.locator('tb-section svg')).toBeVisible();
    const printed = async () => readPdf(await page.pdf({ preferCSSPageSize: true }));
    const letter = units.startsWith('inches');

    const both = await printed();
    expect(both.pages).toBeLessThanOrEqual(4);
    expect(both.size[0]).toBeCloseTo(letter ? 215.9 : 210, 0);
    for (const { title } of STEPS) expect(both.text).toContain(title);
    expect(both.text).toContain('Switch off the pump and its power');
    expect(both.text).not.toContain('back to the page');

    await page.getByRole('button', { name: 'sheet for the class' }).click();
    await expect(forTrainer!).toHaveCount(0);
    const plain = await printed();
    expect(plain.pages).toBe(2);
    for (const { asks, title } of STEPS) {
      expect(plain.text).toContain(asks);
      expect(plain.text).not.toContain(title);
    }
    expect(plain.text).toContain('gap round the mats');
    expect(plain.text.match(/slips round/g)).toHaveLength(STEPS.length);
    // What is set stands there; no share, flow or time of the answers does.
    expect(plain.text).not.toMatch(/\d\s?%(?! open)|\d\s?(L\/min|gph|gpm|s)\b|of 100 marks/);

    await page.getByRole('button', { name: 'sheet for the trainer' }).click();
    await expect(forClass!).toHaveCount(0);
    await page.getByRole('button', { name: letter ? 'A4' : 'Letter' }).click();
    const trained = await printed();
    expect(trained.pages).toBeLessThanOrEqual(2);
    expect(trained.size[0]).toBeCloseTo(letter ? 210 : 215.9, 0);
    expect(trained.text.match(/\d\s?%/g)!.length).toBeGreaterThan(2 * STEPS.length);
  });

test('on a phone the trainer’s figures stand in stacked rows, each whole', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 640 });
  await page.goto('./');
  await begin(page);
  await press(page, 'print the lesson').click();
  const cells = page.getByRole('article', { name: 'Sheet for the trainer' }).getByRole('cell');
  await expect(cells).toHaveCount(6 * STEPS.length);
  for (const cell of await cells.all()) {
    const box = (await cell.boundingBox())!;
    expect(box.height).toBeLessThan(30);
    expect(box.x + box.width).toBeLessThanOrEqual(360);
  }
});

for (const screen of screens)
  test(`hinders nobody at ${screen.width} px in ${screen.look}, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await page.goto('./');
    await begin(page);
    await hindersNobody(page, 'tb-lesson');
    await press(page, 'print the lesson').click();
    await expect(page.getByRole('article')).toHaveCount(2);
    await hindersNobody(page, 'tb-handout');
  });
