/** The map of all valve settings, in the question about the filter. */
import type { Page } from '@playwright/test';
import { ask, first, isWhole, type View } from './hand.ts';

async function leaveMap(page: Page): Promise<void> {
  await page.locator('summary', { hasText: 'see all valve settings' }).click();
  await ask(page, first);
}

export const mapViews: readonly View[] = [
  {
    name: 'map-flow',
    show: async (page) => {
      await ask(page, 'What does the water do inside the filter?');
      await page.locator('summary', { hasText: 'see all valve settings' }).click();
      await page.getByRole('button', { name: 'pump speed and share' }).click();
      await page.locator('tb-map path.line').first().waitFor();
      await isWhole(page);
    },
    leave: async (page) => {
      await page.getByRole('button', { name: 'both valves' }).click();
      await leaveMap(page);
    },
  },
  {
    name: 'map',
    show: async (page) => {
      await ask(page, 'What does the water do inside the filter?');
      await page.locator('summary', { hasText: 'see all valve settings' }).click();
      await page.locator('tb-map path.line').first().waitFor();
      await page.locator('tb-map summary', { hasText: 'the same as a table' }).click();
      await isWhole(page);
    },
    leave: leaveMap,
  },
];
