import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixture.ts';

const answer = (page: Page): Locator => page.getByRole('region', { name: 'The answer' });
const dial = (page: Page, name: string): Locator => page.getByRole('slider', { name });
const field = (page: Page, name: string): Locator => page.getByRole('textbox', { name });
const undo = (page: Page): Locator => page.getByRole('button', { name: 'undo' });

const questions = {
  stop: undefined,
  filling: 'When will it be full?',
  filter: 'What does the water do inside the filter?',
};

const dials: [question: keyof typeof questions, name: string][] = [
  ['stop', 'fill mark'],
  ['stop', 'liner edge'],
  ['stop', 'broad stone'],
  ['filling', 'hose, by a bucket test'],
  ['filling', 'water stands now at'],
  ['filter', 'bottom feed’s valve'],
  ['filter', 'top feed’s valve'],
  ['filter', 'gap round the mats'],
];

async function ask(page: Page, question: keyof typeof questions): Promise<void> {
  await page.goto('./#courtyard');
  await expect(page.getByRole('region', { name: 'The whole answer' }).locator('.says')).toBeAttached();
  const words = questions[question];
  if (words) await page.getByRole('button', { name: words }).click();
  // The hose is asked about from a pond that is not full.
  if (question === 'filling') {
    const water = field(page, 'water stands now at');
    await water.fill('-300 mm');
    await water.press('Enter');
    await expect(answer(page)).toContainText('The hose');
  }
}

/** Where on the page a share of a dial's ruler is. */
async function spot(ruler: Locator, share: number): Promise<[number, number]> {
  await ruler.scrollIntoViewIfNeeded();
  const box = (await ruler.boundingBox())!;
  return [box.x + share * box.width, box.y + box.height / 2];
}

for (const [question, name] of dials) {
  test(`${name}: dragged, it changes the answer before the hand lets go; by keys, the same`, async ({ page }) => {
    await ask(page, question);
    const before = await answer(page).textContent();
    await page.mouse.move(...(await spot(dial(page, name), 0.5)));
    await page.mouse.down();
    await page.mouse.move(...(await spot(dial(page, name), 0.42)));
    await page.mouse.move(...(await spot(dial(page, name), 0.2)));
    await expect(answer(page)).not.toHaveText(before!);
    await page.mouse.up();
    await undo(page).click();
    await expect(answer(page)).toHaveText(before!);

    await dial(page, name).focus();
    for (let press = 0; press < 3; press++) await page.keyboard.press('PageDown');
    await expect(answer(page)).not.toHaveText(before!);
  });
}

test('the check valve is taken out and put in again by presses', async ({ page }) => {
  await ask(page, 'stop');
  const before = await answer(page).textContent();
  const valve = page.getByRole('group', { name: 'check valve' });
  await valve.getByRole('button', { name: 'none' }).click();
  await expect(answer(page)).toContainText('Fails: with no check valve');
  await valve.getByRole('button', { name: 'sound' }).focus();
  await page.keyboard.press('Enter');
  await expect(answer(page)).toHaveText(before!);
});

test('a step of a dial is a millimeter in the unit that was typed, and is undone and done again', async ({ page }) => {
  await ask(page, 'stop');
  await expect(field(page, 'fill mark')).toHaveValue('−110 mm');
  await page.getByRole('button', { name: 'fill mark: one step more' }).click();
  await expect(field(page, 'fill mark')).toHaveValue('−109 mm');
  await undo(page).click();
  await expect(field(page, 'fill mark')).toHaveValue('−110 mm');
  await page.keyboard.press('Control+Shift+z');
  await expect(field(page, 'fill mark')).toHaveValue('−109 mm');
  await page.keyboard.press('Control+z');
  await expect(field(page, 'fill mark')).toHaveValue('−110 mm');
  await page.getByRole('button', { name: 'redo' }).click();
  await expect(field(page, 'fill mark')).toHaveValue('−109 mm');
});

test('a value typed in another unit keeps it, also when a hand moves it on', async ({ page }) => {
  await ask(page, 'stop');
  await field(page, 'fill mark').fill('-5 1/2 in');
  await field(page, 'fill mark').press('Enter');
  await expect(field(page, 'fill mark')).toHaveValue('−5 1/2 in');
  await dial(page, 'fill mark').focus();
  await page.keyboard.press('ArrowRight');
  await expect(field(page, 'fill mark')).toHaveValue('−5⅜ in');
});

test('what is wrong is said beside the field, and the last good run stays up, marked as such', async ({ page }) => {
  await ask(page, 'stop');
  const before = await answer(page).locator('.headline').textContent();
  await field(page, 'fill mark').fill('11 gpm');
  await field(page, 'fill mark').press('Enter');
  await expect(page.getByText(/found the unit gpm/).first()).toBeVisible();
  await expect(answer(page)).toContainText('older than what you typed');
  await expect(answer(page).locator('.headline')).toHaveText(before!);
  await undo(page).click();
  await expect(answer(page)).not.toContainText('older than what you typed');
});

test('the place where the answer turns is told beside a dial', async ({ page }) => {
  await ask(page, 'stop');
  await expect(page.locator('tb-dial').filter({ hasText: 'fill mark' })).toContainText(/fails above −\d+ mm/);
  await expect(page.locator('tb-dial').filter({ hasText: 'liner edge' })).toContainText(/fails below −\d+ mm/);
});

test('a part pressed in the drawing opens its inputs, by pointer and by keyboard, and they change the site', async ({
  page,
}) => {
  await ask(page, 'stop');
  const part = page.locator('tb-section [data-place="pond"]');
  await part.focus();
  await page.keyboard.press('Enter');
  const inputs = page.getByRole('region', { name: 'Inputs: pond' });
  await expect(inputs.getByLabel('fill mark', { exact: true })).toHaveValue('-110 mm');
  const before = await answer(page).textContent();
  await inputs.getByLabel('fill mark', { exact: true }).fill('-0.2');
  await inputs.getByLabel('fill mark', { exact: true }).press('Enter');
  await expect(answer(page)).not.toHaveText(before!);
  await inputs.getByRole('button', { name: 'close' }).click();
  await expect(field(page, 'fill mark')).toBeVisible();
  await page.locator('tb-section [data-place="filter"]').click({ position: { x: 12, y: 12 } });
  await expect(page.getByRole('region', { name: 'Inputs: filter' })).toBeVisible();
});
