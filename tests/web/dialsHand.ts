import type { Locator, Page } from '@playwright/test';
import { expect } from './fixture.ts';
import { siteText } from './sites.ts';

export const answer = (page: Page): Locator => page.getByRole('region', { name: 'The answer' });
export const dial = (page: Page, name: string): Locator => page.getByRole('slider', { name, exact: true });
export const field = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true });
export const choice = (page: Page, name: string): Locator => page.getByRole('group', { name, exact: true });
export const undo = (page: Page): Locator => page.getByRole('button', { name: 'undo' });
export const redo = (page: Page): Locator => page.getByRole('button', { name: 'redo' });

const QUESTIONS = {
  stop: undefined,
  filter: 'What does the water do inside the filter?',
};
export type Question = keyof typeof QUESTIONS;

/** Opens a file as somebody's own, and asks. */
export async function ask(page: Page, question: Question, site: unknown = JSON.parse(siteText('courtyard'))) {
  await page.goto('./');
  const buffer = Buffer.from(JSON.stringify(site));
  await page.locator('input[type=file]').setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer });
  await expect(page).toHaveURL(/#own=/);
  const words = QUESTIONS[question];
  if (words) await page.getByRole('button', { name: words }).click();
  await settled(page);
  await expect(page.locator('tb-dials tb-dial').first()).toBeVisible();
  const more = page.locator('tb-dials details.more');
  if ((await more.count()) > 0) await more.locator('summary').click();
}

export interface Rendered {
  readonly answer: string;
  readonly section: string;
  readonly plots: string;
}

/** What is drawn and said: the headline, all marks of the section, all marks of the plots. */
export async function rendered(page: Page): Promise<Rendered> {
  const marks = (tag: string): Promise<string> =>
    page.locator(tag).evaluate((host) => {
      // The marks that run with the water stand elsewhere at every look.
      const drawn = [...(host.shadowRoot?.querySelectorAll('path, line, rect, circle, text') ?? [])].filter(
        (mark) => !mark.closest('.hundred'),
      );
      const said = (mark: Element): string =>
        ['d', 'x', 'y', 'x1', 'y1', 'x2', 'y2', 'width', 'height', 'transform']
          .map((name) => mark.getAttribute(name) ?? '')
          .join(' ');
      return drawn.map((mark) => `${said(mark)}${mark.tagName === 'text' ? mark.textContent : ''}`).join('\n');
    });
  return {
    answer: (await answer(page).locator('.headline, .more').allTextContents()).join(' '),
    section: await marks('tb-section'),
    plots: await marks('tb-plots'),
  };
}

export const differs = (a: Rendered, b: Rendered): (keyof Rendered)[] =>
  (['answer', 'section', 'plots'] as const).filter((key) => a[key] !== b[key]);

/** Waits until the answer in full stands and nothing is drawn any more. */
export async function settled(page: Page): Promise<Rendered> {
  // A site from a sketch is answered at both ends of some twenty bands: on a busy machine that takes its time.
  await expect(page.locator('.run > .rest:not(.pending)')).toBeAttached({ timeout: 60_000 });
  let before = await rendered(page);
  for (let look = 0; look < 40; look++) {
    await page.waitForTimeout(200);
    const now = await rendered(page);
    const pending = await page.locator('.run > .rest.pending').count();
    if (pending === 0 && differs(before, now).length === 0) return now;
    before = now;
  }
  throw new Error('the page does not come to rest');
}

/** Waits until what is drawn and said is what it was. */
export async function comesBackTo(page: Page, before: Rendered): Promise<void> {
  await expect.poll(async () => differs(before, await rendered(page))).toEqual([]);
  await settled(page);
}

/** Where on the page a share of a dial's ruler is. */
export async function spot(ruler: Locator, share: number): Promise<[number, number]> {
  await ruler.scrollIntoViewIfNeeded();
  const box = (await ruler.boundingBox())!;
  return [box.x + share * box.width, box.y + box.height / 2];
}

export const standsAt = async (ruler: Locator): Promise<number> => Number(await ruler.getAttribute('aria-valuenow'));
