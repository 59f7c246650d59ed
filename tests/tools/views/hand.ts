/** What a hand does to the page, whichever view it is after. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';

export interface View {
  readonly name: string;
  /** From the page as it opens with the courtyard. */
  readonly show: (page: Page) => Promise<void>;
  /** Back to where it was; missing where nothing leads back but opening the page again. */
  readonly leave?: (page: Page) => Promise<void>;
}

export const scenario = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../../scenarios/${name}.json`, import.meta.url)), 'utf8');

export async function openFile(page: Page, name: string, text: string): Promise<void> {
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('input[type=file]').setInputFiles(file);
}

/** A hand rests, ms, before the answer in full is asked for. */
const REST = 200;

/** What is only quickly answered is written paler until it is answered in full. */
export async function isWhole(page: Page): Promise<void> {
  const paler = page.locator('tb-whole-answer.pending');
  await paler.waitFor({ state: 'detached' });
  await page.waitForTimeout(REST);
  await paler.waitFor({ state: 'detached' });
}

/** The question the page opens with. */
export const first = 'Does the pond hold what runs back when the pump stops?';

/** Presses a question, also where a narrow page shows only the one asked. */
export async function ask(page: Page, words: string): Promise<void> {
  const question = page.getByRole('button', { name: words });
  const others = page.getByRole('button', { name: 'other questions' });
  if (!(await question.isVisible()) && (await others.isVisible())) await others.click();
  await question.click();
}

/** Writes into a field as a person does, and goes on. */
export async function type(page: Page, name: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

/** Presses a line that unfolds something below the dials. */
export const unfold = (page: Page, words: string): Promise<void> =>
  page.locator('.folds > details > summary', { hasText: words }).click();

/** A site more, known by four figures, with its numbers beside the drawing. */
export async function beginAnew(page: Page): Promise<void> {
  await page.locator('details.site > summary').click();
  await page.getByRole('button', { name: 'begin a new site' }).click();
  await page.getByRole('heading', { level: 1, name: 'My site' }).waitFor();
  await page.getByRole('button', { name: 'make it mine' }).click();
  await page.getByRole('heading', { name: 'Make it mine' }).waitFor();
  await isWhole(page);
}
