import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import {
  answer,
  ask,
  choice,
  comesBackTo,
  dial,
  differs,
  field,
  redo,
  rendered,
  settled,
  spot,
  standsAt,
  undo,
} from './dialsHand.ts';
import { expect, test } from './fixture.ts';
import { siteText } from './sites.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const courtyard = JSON.parse(siteText('courtyard'));
const inches = (page: Page) => page.getByRole('button', { name: 'inches and gallons' });
const about = (page: Page, name: string) =>
  page
    .locator('tb-dial')
    .filter({ has: page.getByRole('slider', { name, exact: true }) })
    .locator('#about');

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

test('the check valve is taken out and put in again by presses', async ({ page }) => {
  await ask(page, 'stop');
  const before = await answer(page).textContent();
  const valve = choice(page, 'check valve');
  await valve.getByRole('button', { name: 'none' }).click();
  await expect(answer(page)).toContainText('Fails: with no check valve');
  await valve.getByRole('button', { name: 'sound' }).focus();
  await page.keyboard.press('Enter');
  await expect(answer(page)).toHaveText(before!);
});

test('a check valve that leaks stands so, and is put back as the file had it', async ({ page }) => {
  const { main } = courtyard.plumbing;
  const leaking = { ...main, checkValve: { leak: '1 cm2' } };
  await ask(page, 'stop', { ...courtyard, plumbing: { ...courtyard.plumbing, main: leaking } });
  const valve = choice(page, 'check valve');
  await expect(valve.getByRole('button', { name: 'leaks' })).toHaveAttribute('aria-pressed', 'true');
  await expect(answer(page)).toContainText('with its leaking check valve');
  const before = await settled(page);
  await valve.getByRole('button', { name: 'sound' }).click();
  await expect(answer(page)).toContainText('with the check valve sound');
  await valve.getByRole('button', { name: 'leaks' }).click();
  await comesBackTo(page, before);
});

test('a step of a dial is a millimeter in the unit that was typed, and is undone and done again', async ({ page }) => {
  await ask(page, 'stop');
  const mark = field(page, 'fill mark');
  await expect(mark).toHaveValue('−110 mm');
  await page.getByRole('button', { name: 'fill mark: one step more' }).click();
  await expect(mark).toHaveValue('−109 mm');
  await undo(page).click();
  await expect(mark).toHaveValue('−110 mm');
  await page.keyboard.press('Control+Shift+z');
  await expect(mark).toHaveValue('−109 mm');
  await page.keyboard.press('Control+z');
  await expect(mark).toHaveValue('−110 mm');
  await redo(page).click();
  await expect(mark).toHaveValue('−109 mm');
});

test('in inches the dials read as a tape does, and step by eighths', async ({ page }) => {
  await ask(page, 'stop');
  await expect(field(page, 'liner edge')).toHaveValue('0 mm');
  await inches(page).click();
  await expect(field(page, 'fill mark')).toHaveValue('−4⅜ in');
  await expect(field(page, 'liner edge')).toHaveValue('0 in');
  await expect(field(page, 'broad stone')).toHaveValue('2 ft ⅜ in');
  await expect(field(page, 'upper pool’s surface')).toHaveValue('71 ft²');
  await expect(field(page, 'hose, by a bucket test')).toHaveValue('3.7 gpm');
  await expect(about(page, 'fill mark')).toHaveText(/fails above −2[¼⅛⅜] in/);
  await dial(page, 'fill mark').focus();
  await page.keyboard.press('ArrowRight');
  await expect(field(page, 'fill mark')).toHaveValue('−4¼ in');
  await undo(page).click();
  await expect(field(page, 'fill mark')).toHaveValue('−4⅜ in');
  await page.getByRole('button', { name: 'millimeters and liters' }).click();
  await expect(field(page, 'fill mark')).toHaveValue('−110 mm');
});

test('a value typed in another unit keeps it, also when a hand moves it on', async ({ page }) => {
  await ask(page, 'stop');
  await type(page, 'fill mark', '-5 1/2 in');
  await expect(field(page, 'fill mark')).toHaveValue('−5 1/2 in');
  await dial(page, 'fill mark').focus();
  await page.keyboard.press('ArrowRight');
  await expect(field(page, 'fill mark')).toHaveValue('−5⅜ in');
  await type(page, 'pond’s length', `12'6"`);
  await expect(field(page, 'pond’s length')).toHaveValue(`12'6"`);
  await type(page, 'broad stone', '615 mm');
  await inches(page).click();
  await expect(field(page, 'broad stone')).toHaveValue('615 mm');
});

test('a bare figure takes the unit the dial shows, and the same figure again changes nothing', async ({ page }) => {
  await ask(page, 'stop');
  await type(page, 'liner edge', '12');
  await expect(field(page, 'liner edge')).toHaveValue('12 mm');
  await type(page, 'fill mark', '-110');
  await expect(field(page, 'fill mark')).toHaveValue('−110 mm');
  await undo(page).click();
  await expect(field(page, 'liner edge')).toHaveValue('0 mm');
});

const NONSENSE = [
  ['abc', 'is no figure'],
  ['-4 kg', 'is not a'],
  ['1e99', 'is beyond any site'],
  ['', 'Nothing is typed here'],
  ['4 3/', 'is not finished'],
  ['4 3/ in', 'is not finished'],
] as const;

for (const name of ['fill mark', 'liner edge', 'broad stone', 'upper pool’s surface', 'top feed’s valve']) {
  test(`${name}: what cannot be is said beside the field, and the last good answer stays up, marked as old`, async ({
    page,
  }) => {
    await ask(page, 'stop');
    const before = await settled(page);
    for (const [text, says] of NONSENSE) {
      await type(page, name, text);
      await expect(about(page, name)).toContainText(says);
      await expect(about(page, name)).toContainText('Type it like');
      await expect(about(page, name)).toHaveRole('alert');
      expect(await field(page, name).inputValue()).toContain(text);
      await expect(field(page, name)).toHaveAttribute('aria-invalid', 'true');
      await expect(answer(page)).toContainText('older than what you typed');
      expect(differs({ ...(await rendered(page)), answer: before.answer }, before)).toEqual([]);
      await expect(answer(page).locator('.headline')).toBeVisible();
    }
    for (const _ of NONSENSE) await undo(page).click();
    await expect(answer(page)).not.toContainText('older than what you typed');
    await comesBackTo(page, before);
  });
}

test('a level that contradicts another is said where it was turned, in the units of the page', async ({ page }) => {
  await ask(page, 'stop');
  await type(page, 'liner edge', '-150');
  await expect(about(page, 'liner edge')).toHaveText(
    'With this, the pond’s fill mark would have to be below the lowest point of the pond’s rim (−150 mm).',
  );
  await type(page, 'liner edge', '0');
  await expect(about(page, 'liner edge')).toHaveText(/fails below/);
  await expect(answer(page)).not.toContainText('older than what you typed');
});

test('dragged past its end a dial stands at the end, and says that the ruler ends there', async ({ page }) => {
  await ask(page, 'stop');
  const ruler = dial(page, 'liner edge');
  await page.mouse.move(...(await spot(ruler, 0.5)));
  await page.mouse.down();
  const [x, y] = await spot(ruler, 1);
  await page.mouse.move(x + 60, y);
  await expect(about(page, 'liner edge')).toHaveText(/the ruler ends here/);
  const end = Number(await ruler.getAttribute('aria-valuemax'));
  await expect.poll(() => standsAt(ruler)).toBe(end);
  await expect(answer(page)).toContainText('Holds');
  await page.mouse.up();
  await expect(about(page, 'liner edge')).not.toHaveText(/the ruler ends here/);
  await type(page, 'liner edge', '250');
  await expect(field(page, 'liner edge')).toHaveValue('250 mm');
  await expect.poll(() => standsAt(ruler)).toBeCloseTo(0.25, 6);
});

test('where the answer turns is told beside a dial, and where nothing turns, that', async ({ page }) => {
  await ask(page, 'stop');
  await expect(about(page, 'fill mark')).toHaveText(/fails above −\d+ mm/);
  await expect(about(page, 'liner edge')).toHaveText(/fails below −\d+ mm/);
  for (const name of ['broad stone', 'upper pool’s surface', 'top feed’s valve', 'hose, by a bucket test'])
    await expect(about(page, name)).toHaveText(/no turn in this range/);
});

test('a site without hose and autofill is given them and is itself again, key for key', async ({ page }) => {
  const bare = JSON.parse(siteText('low-edge'));
  expect(bare.supply).toBeUndefined();
  await ask(page, 'stop', bare);
  const saved = async (): Promise<unknown> => {
    const download = page.waitForEvent('download');
    await page.getByText('save the file').evaluate((press: HTMLElement) => press.click());
    return JSON.parse(readFileSync(await (await download).path(), 'utf8'));
  };
  const text = async (): Promise<string> => JSON.stringify(await saved());
  const whole = JSON.stringify(bare);

  await expect(choice(page, 'autofill')).toContainText(
    'one put in gives 5 L/min until it shuts at the fill mark, −70 mm',
  );
  await expect(choice(page, 'hose at the start')).toContainText('one put in gives 15 L/min');
  await choice(page, 'autofill').getByRole('button', { name: 'at a level' }).click();
  await expect(field(page, 'autofill shuts at')).toHaveValue('−70 mm');
  await expect(field(page, 'autofill gives')).toHaveValue('5 L/min');
  const withFloat = await text();
  await choice(page, 'hose at the start').getByRole('button', { name: 'open' }).click();
  await expect(field(page, 'hose, by a bucket test')).toHaveValue('15 L/min');
  const withBoth = await text();

  await undo(page).click();
  expect(await text()).toBe(withFloat);
  await undo(page).click();
  expect(await text()).toBe(whole);
  await redo(page).click();
  await redo(page).click();
  expect(await text()).toBe(withBoth);
  await choice(page, 'hose at the start').getByRole('button', { name: 'none' }).click();
  await choice(page, 'autofill').getByRole('button', { name: 'none' }).click();
  await expect(field(page, 'autofill gives')).toHaveCount(0);
  expect(await text()).toBe(whole);
});

test('a dial that is moved draws no other dial again', async ({ page }) => {
  await ask(page, 'stop');
  await expect(about(page, 'hose, by a bucket test')).toHaveText(/no turn in this range/);
  const drawn = await page.locator('tb-dials').evaluate(async (host) => {
    const dials = [...host.shadowRoot!.querySelectorAll('tb-dial')];
    const nameOf = (each: Element): string => each.shadowRoot!.querySelector('label')!.textContent!;
    const seen = new Set<string>();
    for (const each of dials) {
      new MutationObserver(() => seen.add(nameOf(each))).observe(each.shadowRoot!, {
        attributes: true,
        characterData: true,
        childList: true,
        subtree: true,
      });
    }
    const slider = dials.find((each) => nameOf(each) === 'fill mark')!.shadowRoot!.querySelector('[role=slider]')!;
    for (let press = 0; press < 8; press++) {
      slider.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
      await new Promise(requestAnimationFrame);
    }
    return [...seen];
  });
  expect(drawn).toEqual(['fill mark']);
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
