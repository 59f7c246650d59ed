import type { Page } from '@playwright/test';
import {
  ask,
  choice,
  comesBackTo,
  dial,
  differs,
  type Question,
  type Rendered,
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
/** With all that a dial may turn. */
const autofill = { flow: '5 L/min', set: '-110 mm', low: '-135 mm' };
const supplied = { ...courtyard, supply: { hose: { flow: '0.2 L/min' }, autofill } };
/** A hose turns nothing before it is open. */
const open = { ...courtyard, supply: { hose: { flow: '1 L/min', on: true }, autofill } };
/** Some muck has settled in its filter. */
const teaching = JSON.parse(siteText('teaching-filter'));
teaching.filter.media.layers[0].deposit = '1.5 L';
const SITES: Record<Question, unknown> = { stop: supplied, filter: teaching };
function siteFor(question: Question, name: string): unknown {
  if (question !== 'stop' || name.startsWith('autofill')) return SITES[question];
  return name.startsWith('hose') ? open : courtyard;
}

/** Every ruler of each question, and what must follow the hand while it is down. */
const RULERS: readonly [question: Question, name: string, ...follows: (keyof Rendered)[]][] = [
  ['stop', 'fill mark', 'answer', 'section', 'plots'],
  ['stop', 'liner edge', 'answer', 'section', 'plots'],
  ['stop', 'broad stone', 'answer', 'section', 'plots'],
  ['stop', 'corner stone', 'answer', 'section', 'plots'],
  ['stop', 'upper pool’s surface', 'answer', 'section', 'plots'],
  ['stop', 'pond’s length', 'answer', 'section', 'plots'],
  ['stop', 'pond’s width', 'answer', 'section', 'plots'],
  ['stop', 'top feed’s valve', 'section', 'plots'],
  ['stop', 'bottom feed’s valve', 'section', 'plots'],
  ['stop', 'autofill shuts at', 'section', 'plots'],
  ['stop', 'autofill gives', 'plots'],
  ['stop', 'hose, by a bucket test', 'answer', 'plots'],
  ['filter', 'bottom feed’s valve', 'answer', 'section'],
  ['filter', 'top feed’s valve', 'answer', 'section'],
  ['filter', 'gap round the mats', 'answer', 'section'],
  ['filter', 'muck in the fine mat', 'answer', 'section'],
];

const CHOICES: readonly [question: Question, name: string, word: string, ...follows: (keyof Rendered)[]][] = [
  ['stop', 'check valve', 'none', 'answer', 'plots'],
  ['stop', 'autofill', 'none', 'plots'],
  ['stop', 'hose at the start', 'shut', 'answer', 'plots'],
  ['stop', 'pump at the start', 'off', 'section', 'plots'],
  ['filter', 'pump at the start', 'off', 'plots'],
];

for (const question of ['stop', 'filter'] as const) {
  test(`the table has every dial of the question ‘${question}’`, async ({ page }) => {
    await ask(page, question, SITES[question]);
    const names = await page.locator('tb-dials').evaluate((host) => {
      const all = [...(host.shadowRoot?.querySelectorAll('tb-dial, .choice') ?? [])];
      return all.map((each) => (each.shadowRoot?.querySelector('label') ?? each.querySelector('.name'))?.textContent);
    });
    const table = [...RULERS, ...CHOICES].filter(([of]) => of === question).map(([, name]) => name);
    expect(names.sort()).toEqual(table.sort());
  });
}

async function undoneAndDoneAgain(page: Page, before: Rendered): Promise<void> {
  const after = await settled(page);
  await undo(page).click();
  await comesBackTo(page, before);
  await redo(page).click();
  await comesBackTo(page, after);
  await undo(page).click();
  await comesBackTo(page, before);
}

const KEYS = [
  ['ArrowRight', 'ArrowLeft'],
  ['ArrowUp', 'ArrowDown'],
  ['PageUp', 'PageDown'],
] as const;

for (const [question, name, ...follows] of RULERS) {
  test(`${question}: ${name} is followed while the pointer is down, and by keys`, async ({ page }) => {
    await ask(page, question, siteFor(question, name));
    const ruler = dial(page, name);
    await ruler.scrollIntoViewIfNeeded();
    const before = await settled(page);
    const followed = (): Promise<void> =>
      expect.poll(async () => differs(before, await rendered(page))).toEqual(expect.arrayContaining(follows));

    await page.mouse.move(...(await spot(ruler, 0.5)));
    await page.mouse.down();
    for (const share of [0.4, 0.3, 0.2, 0.12]) await page.mouse.move(...(await spot(ruler, share)));
    await followed();
    await page.mouse.up();
    await undoneAndDoneAgain(page, before);

    await ruler.focus();
    const ends = await Promise.all(['aria-valuemin', 'aria-valuemax'].map((end) => ruler.getAttribute(end)));
    const [low = 0, high = 0] = ends.map(Number);
    for (const [more, less] of KEYS) {
      const start = await standsAt(ruler);
      const up = start < (low + high) / 2;
      await page.keyboard.press(up ? more : less);
      await expect.poll(async () => Math.sign((await standsAt(ruler)) - start)).toBe(up ? 1 : -1);
      const away = await standsAt(ruler);
      await page.keyboard.press(up ? less : more);
      await expect.poll(() => standsAt(ruler)).not.toBe(away);
      await expect.poll(async () => Math.abs((await standsAt(ruler)) - start)).toBeLessThan((high - low) / 50);
    }
    await page.keyboard.press('End');
    await expect.poll(() => standsAt(ruler)).toBeCloseTo(high, 3);
    await page.keyboard.press('Home');
    await expect.poll(() => standsAt(ruler)).toBeCloseTo(low, 3);
    await followed();
    await undo(page).click();
    await comesBackTo(page, before);
  });
}

for (const [question, name, word, ...follows] of CHOICES) {
  test(`${question}: ${name} is ‘${word}’ at a press, by pointer and by both keys`, async ({ page }) => {
    await ask(page, question, siteFor(question, name));
    const press = choice(page, name).getByRole('button', { name: word, exact: true });
    await press.scrollIntoViewIfNeeded();
    const before = await settled(page);
    await press.click();
    await expect.poll(async () => differs(before, await rendered(page))).toEqual(expect.arrayContaining(follows));
    await expect(press).toHaveAttribute('aria-pressed', 'true');
    await undoneAndDoneAgain(page, before);
    for (const key of ['Enter', 'Space']) {
      await press.focus();
      await page.keyboard.press(key);
      await expect.poll(async () => differs(before, await rendered(page))).toEqual(expect.arrayContaining(follows));
      await undo(page).click();
      await comesBackTo(page, before);
    }
  });
}
