/** The map of all valve settings, in the question about the filter. */
import { ask, first, isWhole, type View } from './hand.ts';

export const mapViews: readonly View[] = [
  {
    name: 'map',
    show: async (page) => {
      await ask(page, 'What does the water do inside the filter?');
      await page.locator('summary', { hasText: 'see all valve settings' }).click();
      await page.locator('tb-map path.line').first().waitFor();
      await page.locator('tb-map summary', { hasText: 'the same as a table' }).click();
      await isWhole(page);
    },
    leave: async (page) => {
      await page.locator('summary', { hasText: 'see all valve settings' }).click();
      await ask(page, first);
    },
  },
];
