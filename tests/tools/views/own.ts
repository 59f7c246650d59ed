/** A pond of one's own from a tape in inches and gallons: typed, filled, read back, set out. */
import type { Page } from '@playwright/test';
import { ask, beginAnew, isWhole, type, unfold, type View } from './hand.ts';

const TAPE = [
  ['How long is the pond at the water line?', '14 ft 6 1/2 in'],
  ['How wide is it at the water line?', '9 ft 3/4 in'],
  ['How deep is the water at its deepest?', '28 3/8 in'],
  ['How far above the water is the lowest edge of the liner?', '3 1/2 in'],
  ['most flow', '4200 gph'],
  ['most head', '21 ft'],
] as const;

/** Its numbers beside the drawing. */
async function measured(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'inches and gallons' }).click();
  await beginAnew(page);
  for (const [name, text] of TAPE) await type(page, name, text);
  await page.getByRole('region', { name: 'What is assumed' }).waitFor();
  await isWhole(page);
}

async function measuredAndClosed(page: Page): Promise<void> {
  await measured(page);
  await page.locator('tb-mine').getByRole('button', { name: 'close' }).click();
}

const setting = (page: Page) => page.getByRole('region', { name: 'How the valves are set' });

/** The rows under what is folded away stand open. */
async function unfoldAll(page: Page, within: string): Promise<void> {
  await page.locator(`${within} details`).evaluateAll((all: HTMLDetailsElement[]) => {
    for (const each of all) each.open = true;
  });
}

export const ownViews: readonly View[] = [
  {
    name: 'mine',
    show: async (page) => {
      await page.getByRole('button', { name: 'make it mine' }).click();
      await page.getByRole('heading', { name: 'Make it mine' }).waitFor();
      await isWhole(page);
    },
  },
  { name: 'mine-us', show: measured },
  {
    name: 'mine-all',
    show: async (page) => {
      await measured(page);
      await unfoldAll(page, 'tb-mine');
    },
  },
  {
    name: 'fill-us',
    show: async (page) => {
      await measuredAndClosed(page);
      await ask(page, 'When will it be full?');
      await page.getByRole('textbox', { name: 'hose opened at' }).waitFor();
      await type(page, 'hose opened at', '2:10 pm');
      await type(page, 'water then, below the edge', '14 1/4');
      await unfoldAll(page, 'tb-fill');
      await isWhole(page);
    },
  },
  {
    name: 'setting-us',
    show: async (page) => {
      await measuredAndClosed(page);
      await unfold(page, 'set the valves');
      await setting(page).waitFor();
      await type(page, 'rod reading on the benchmark', '4 ft 3 1/2 in');
    },
  },
  {
    name: 'read-back',
    show: async (page) => {
      await unfold(page, 'what a ruler shows');
      await type(page, 'The water over ‘broad stone’: reading', '22');
      await type(page, 'The top feed into a bucket: bucket', '10 L');
      await type(page, 'The top feed into a bucket: seconds', '8.5');
      await page.getByRole('table', { name: 'Fitted values' }).waitFor();
      await unfoldAll(page, 'tb-readings');
    },
    leave: (page) => unfold(page, 'what a ruler shows'),
  },
  {
    name: 'sheet-us',
    show: async (page) => {
      await measuredAndClosed(page);
      await page.locator('details.site > summary').click();
      await page.getByRole('button', { name: 'setting-out sheet and owner’s card' }).click();
      await page.getByRole('button', { name: 'print' }).waitFor();
      await type(page, 'the rod reads on it', '4 ft 3 1/2 in');
    },
  },
  {
    name: 'card',
    show: async (page) => {
      await page.locator('details.site > summary').click();
      await page.getByRole('button', { name: 'setting-out sheet and owner’s card' }).click();
      await page.getByRole('button', { name: 'owner’s card', exact: true }).click();
    },
    leave: async (page) => {
      await page.getByRole('button', { name: 'back to the page' }).click();
      await page.locator('details.site > summary').click();
    },
  },
];
