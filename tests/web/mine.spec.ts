import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { looks } from '../../web/state/look.ts';
import { lookIn } from '../tools/views.ts';
import { answer, settled, undo } from './dialsHand.ts';
import { expect, test } from './fixture.ts';
import { hindering } from './hindering.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const UNITS = { us: 'inches and gallons', metric: 'millimeters and liters' } as const;
const mine = (page: Page): Locator => page.getByRole('region', { name: 'Make it mine' });
const assumed = (page: Page): Locator => mine(page).getByRole('region', { name: 'What is assumed' });
const field = (page: Page, name: string): Locator => mine(page).getByRole('textbox', { name, exact: true });
const group = (page: Page, name: string): Locator => mine(page).getByRole('group', { name, exact: true });
const told = (page: Page): Locator => mine(page).getByRole('alert');

const LENGTH = 'How long is the pond at the water line?';
const WIDTH = 'How wide is it at the water line?';
const DEPTH = 'How deep is the water at its deepest?';
const EDGE = 'How far above the water is the lowest edge of the liner?';
const PUMP = 'What do the pump’s box or curve say: most flow, most head?';
const VALVE = 'Is there a check valve?';
const STREAM = 'How long is the stream, if there is one?';

/** From a cold start to a pond of one's own with invented figures. */
async function begin(page: Page, display: keyof typeof UNITS, press = (at: Locator) => at.click()): Promise<void> {
  await page.goto('./');
  await press(page.getByRole('button', { name: UNITS[display] }));
  await press(page.getByRole('button', { name: 'make it mine' }));
  await expect(field(page, LENGTH)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'A pond of my own' })).toBeVisible();
  await expect(assumed(page)).toBeVisible();
}

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

/** The file as it would be saved. */
async function saved(page: Page): Promise<{ sketch: Record<string, unknown> }> {
  const download = page.waitForEvent('download');
  await page.getByText('save the file').evaluate((press: HTMLElement) => press.click());
  return JSON.parse(readFileSync(await (await download).path(), 'utf8'));
}

const MINE = {
  length: '14 ft 6 in',
  width: '9 ft',
  depth: '28 in',
  edge: '3 1/2 in',
  pump: { flow: '4200 gph', head: '21 ft' },
  pipe: { checkValve: 'yes' },
};

test('a stranger’s pond by mouse: the drawing and the answer follow from the first number on, what is typed leaves the list', async ({
  page,
}) => {
  await begin(page, 'us');
  const before = await settled(page);
  await expect(mine(page).getByText('An example’s: type your own.')).toHaveCount(4);
  await type(page, LENGTH, '14 ft 6 in');
  await expect.poll(async () => (await settled(page)).section).not.toBe(before.section);
  await type(page, WIDTH, '9');
  await expect(field(page, WIDTH)).toHaveValue('9 ft');
  await type(page, DEPTH, '28');
  await expect(field(page, EDGE)).toHaveValue('3 in');
  const edge = assumed(page).getByRole('button', { name: 'the height of the pond’s edge above the water' });
  await expect(edge).toBeVisible();
  await type(page, EDGE, '3½');
  await expect(edge).toHaveCount(0);
  await type(page, EDGE, '');
  await expect(field(page, EDGE)).toHaveValue('3 in');
  await expect(edge).toHaveCount(1);
  await type(page, EDGE, '3 1/2');
  await type(page, 'most flow', '4200');
  await type(page, 'most head', '21');
  await group(page, VALVE).getByRole('button', { name: 'yes' }).click();
  await expect(group(page, VALVE).getByRole('button', { name: 'yes' })).toHaveAttribute('aria-pressed', 'true');
  await settled(page);
  await expect(answer(page)).toContainText(/Holds|Tight|Fails/);
  await expect(mine(page).getByText('An example’s: type your own.')).toHaveCount(0);
  expect((await saved(page)).sketch).toEqual(MINE);
});

test('what moves the answer most is said first, and a press leads to its field', async ({ page }) => {
  await begin(page, 'us');
  await settled(page);
  const next = mine(page).getByRole('button', { name: /^Measure next: / });
  const name = (await next.textContent())!.replace('Measure next: ', '');
  await expect(assumed(page).getByRole('listitem').first()).toContainText(name);
  await expect(assumed(page).getByRole('listitem').first()).toContainText('rests on it most');
  await expect(assumed(page).getByRole('listitem').first()).toContainText(/our default|common practice/);
  await assumed(page).getByRole('button', { name, exact: true }).click();
  await expect(mine(page).locator('.row:focus-within')).toContainText('rests on it most');
  await assumed(page)
    .getByText(/^\d+ more$/)
    .click();
  await assumed(page).getByRole('button', { name: 'the width of the intake', exact: true }).click();
  await expect(field(page, 'How wide is the intake?')).toBeFocused();
});

test('steps by presses, by a quarter inch, are undone one by one', async ({ page }) => {
  await begin(page, 'us');
  const more = mine(page).getByRole('button', { name: 'liner edge: one step more' });
  await more.click();
  await expect(field(page, EDGE)).toHaveValue('3¼ in');
  await more.click();
  await expect(field(page, EDGE)).toHaveValue('3½ in');
  await undo(page).click();
  await expect(field(page, EDGE)).toHaveValue('3¼ in');
  await undo(page).click();
  await expect(field(page, EDGE)).toHaveValue('3 in');
});

test('an answer that comes while somebody types leaves the field to the hand', async ({ page }) => {
  await begin(page, 'metric');
  await settled(page);
  const inInches = (): Promise<void> =>
    page.getByRole('button', { name: UNITS.us }).evaluate((press: HTMLElement) => press.click());
  const width = field(page, WIDTH);
  await width.focus();
  await page.keyboard.press('ControlOrMeta+a');
  await inInches();
  await expect(width).toHaveValue(/ft/);
  await page.keyboard.type('9');
  await expect(width).toHaveValue('9');
  await page.getByRole('button', { name: UNITS.metric }).evaluate((press: HTMLElement) => press.click());
  await expect(field(page, LENGTH)).toHaveValue(/m$/);
  await page.keyboard.type(' ft');
  await page.keyboard.press('Enter');
  await expect(width).toHaveValue('9 ft');
  await width.focus();
  await page.keyboard.press('End');
  await page.keyboard.type('x');
  await page.keyboard.press('Backspace');
  await width.blur();
  await expect(width).toHaveValue('9 ft');
});

test('by keyboard alone, from blank to an answer', async ({ page }) => {
  await page.goto('./');
  await expect(answer(page)).toContainText(/Holds|Tight|Fails/);
  const focused = (): Promise<string> =>
    page.evaluate(() => {
      let here = document.activeElement;
      while (here?.shadowRoot?.activeElement) here = here.shadowRoot.activeElement;
      return here?.textContent ?? '';
    });
  for (let press = 0; (await focused()) !== 'make it mine'; press++) {
    expect(press).toBeLessThan(20);
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await expect(mine(page).getByRole('heading', { name: 'Make it mine' })).toBeFocused();
  await expect(field(page, LENGTH)).toBeVisible();
  for (let press = 0; press < 4 && !(await field(page, LENGTH).evaluate((it) => it.matches(':focus'))); press++)
    await page.keyboard.press('Tab');
  const say = async (text: string): Promise<void> => {
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  };
  await say(`14'6"`);
  await say('9 ft');
  await say('28 in');
  // Outline, shelf and rock are left as they are assumed: Enter goes on.
  await expect(group(page, 'What outline has it?').getByRole('button', { name: 'not known' })).toBeFocused();
  for (let press = 0; press < 5; press++) await page.keyboard.press('Enter');
  await expect(field(page, EDGE)).toBeFocused();
  await say('3 1/2 in');
  await expect(field(page, 'most flow')).toBeFocused();
  await say('4200 gph');
  await say('21 ft');
  await settled(page);
  await expect(answer(page)).toContainText(/Holds|Tight|Fails/);
  const { sketch } = await saved(page);
  expect(sketch).toEqual({ ...MINE, length: `14'6"`, pipe: undefined });
});

test.describe('on a phone in one hand', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true });

  test('a stranger’s pond by touch, every press of 44 px', async ({ page }) => {
    await begin(page, 'metric', (at) => at.tap());
    const say = async (name: string, text: string): Promise<void> => {
      await field(page, name).tap();
      await field(page, name).fill(text);
    };
    await say(LENGTH, '4.4 m');
    await say(WIDTH, '2,75');
    await field(page, DEPTH).tap();
    await expect(told(page)).toContainText('The comma in ‘2,75’ can be read two ways');
    await say(WIDTH, '2.75');
    await say(DEPTH, '710');
    await group(page, VALVE).getByRole('button', { name: 'no', exact: true }).tap();
    await expect(field(page, DEPTH)).toHaveValue('710 mm');
    await expect(told(page)).toHaveCount(0);
    await mine(page).getByRole('button', { name: 'liner edge: one step more' }).tap();
    await expect(field(page, EDGE)).toHaveValue('80 mm');
    await settled(page);
    await expect(answer(page)).toContainText('with no check valve');
    const small = await mine(page).evaluate((region) => {
      const presses = [...region.querySelectorAll('button, input, summary')].filter(
        (each) => each.getClientRects().length,
      );
      return presses
        .map((each) => [each.textContent?.trim() || each.getAttribute('id'), each.getBoundingClientRect()] as const)
        .filter(([, { width, height }]) => height < 43.9 || width < 43.9)
        .map(([name, { width, height }]) => `${name}: ${width} × ${height}`);
    });
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });
});

test('the other system at one press: what was typed stays as typed, the rest is told in its units', async ({
  page,
}) => {
  await begin(page, 'us');
  await type(page, LENGTH, '14 ft 6 in');
  await page.getByRole('button', { name: UNITS.metric }).click();
  await expect(field(page, EDGE)).toHaveValue('76 mm');
  await expect(field(page, LENGTH)).toHaveValue('14 ft 6 in');
  await expect(field(page, WIDTH)).toHaveValue('2.44 m');
  await expect(field(page, 'bucket')).toHaveValue('10 L');
  await expect(field(page, 'most flow')).toHaveValue('11356 L/h');
  // Pipe alone is sold by the inch everywhere.
  await expect(assumed(page)).not.toContainText(/\d (in to|ft|gpm|gph)\b/);
  await page.getByRole('button', { name: UNITS.us }).click();
  await expect(field(page, EDGE)).toHaveValue('3 in');
});

test('what cannot be is said beside the field; what was typed and the last good answer stay', async ({ page }) => {
  await begin(page, 'us');
  const before = await settled(page);
  const nonsense: readonly (readonly [name: string, text: string, says: RegExp])[] = [
    [DEPTH, '0', /^Zero can’t be built\. The pond’s depth makes sense from 10 in to 12 ft; the nearest is 10 in\.$/],
    [DEPTH, '-2 ft', /^Less than zero can’t be built/],
    [DEPTH, '400 m', /the nearest is 12 ft\.$/],
    [DEPTH, '500 gal', /^‘500 gal’ is not a length\. Type it like 30 in/],
    [DEPTH, '3 1/', /^The fraction in ‘3 1\/’ is not finished/],
    [EDGE, '3 1/ in', /^The fraction in ‘3 1\/ in’ is not finished/],
    ['most flow', '', /^Nobody can guess the pump: most flow/],
    ['most head', '2 ft', /^A head of 2 ft: it takes more than the 2 ft 10 in the water is lifted/],
    [
      STREAM,
      '60 ft',
      /between the filter’s lip and the top of the stream: it takes 8 in for the stone: a lip at least/,
    ],
  ];
  for (const [name, text, says] of nonsense) {
    await type(page, name, text);
    await expect(told(page)).toHaveText(says);
    expect(await field(page, name).inputValue()).toContain(text);
    await expect(answer(page)).toContainText('older than what you typed');
    await expect(field(page, LENGTH)).toHaveValue('11 ft');
    await undo(page).click();
    await expect(told(page)).toHaveCount(0);
    await expect(answer(page)).not.toContainText('older than what you typed');
  }
  await expect.poll(async () => (await settled(page)).answer).toBe(before.answer);
});

test('two things wrong are said each in its place, and are mended in either order', async ({ page }) => {
  await begin(page, 'us');
  await type(page, DEPTH, 'deep');
  await type(page, EDGE, '9 lb');
  await expect(told(page)).toHaveCount(2);
  await expect(field(page, DEPTH)).toHaveAttribute('aria-invalid', 'true');
  await expect(field(page, EDGE)).toHaveAttribute('aria-invalid', 'true');
  await type(page, DEPTH, '2 ft');
  await expect(told(page)).toHaveCount(1);
  await type(page, EDGE, '');
  await expect(told(page)).toHaveCount(0);
  await expect(field(page, EDGE)).toHaveValue('3 in');
});

test('the pump by its curve, point by point, and by its box again', async ({ page }) => {
  await begin(page, 'us');
  await group(page, PUMP).getByRole('button', { name: 'by its curve' }).click();
  await expect(field(page, 'point 2: head')).toHaveValue('10.5 ft');
  await type(page, 'point 2: head', '11 ft');
  await settled(page);
  expect((await saved(page)).sketch['pump']).toEqual([
    ['0 gph', '14 ft'],
    ['1500 gph', '11 ft'],
    ['3000 gph', '0 ft'],
  ]);
  await group(page, PUMP).getByRole('button', { name: 'by its box' }).click();
  await expect(field(page, 'most flow')).toHaveValue('3000 gph');
});

test('a site with a sketch goes on with its own, and one without stays as it is', async ({ page }) => {
  await page.goto('./#backyard');
  await page.getByRole('button', { name: 'make it mine' }).click();
  await expect(field(page, LENGTH)).toHaveValue('14 ft 6 in');
  await expect(page.getByRole('heading', { name: 'Backyard by the tape' })).toBeVisible();
  await mine(page).getByRole('button', { name: 'close' }).click();
  await expect(mine(page)).toHaveCount(0);
  await expect(page.getByRole('region', { name: 'What decides it' })).toBeVisible();
});

for (const look of looks) {
  test(`in ${look} it hinders nobody, as far as a checker sees, also what is assumed in lighter ink`, async ({
    page,
  }) => {
    await lookIn(page, look);
    await begin(page, 'us');
    await type(page, DEPTH, '3 1/');
    await expect(told(page)).toHaveCount(1);
    expect(await hindering(page)).toEqual([]);
  });
}
