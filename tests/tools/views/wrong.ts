/** Texts that can't be taken, each beside its field: too deep, of another unit, typed by half. */
import type { Page } from '@playwright/test';
import { ask, beginAnew, first, type, unfold, type View } from './hand.ts';

const alerts = (page: Page, many: number): Promise<void> =>
  page
    .getByRole('alert')
    .nth(many - 1)
    .waitFor();

const HALF = '3 1/';

export const wrongViews: readonly View[] = [
  {
    name: 'wrong-mine',
    show: async (page) => {
      await beginAnew(page);
      await type(page, 'How deep is the water at its deepest?', '400 m');
      await type(page, 'How wide is it at the water line?', '11 gpm');
      await type(page, 'How far above the water is the lowest edge of the liner?', HALF);
      await alerts(page, 3);
    },
  },
  {
    name: 'wrong-fill',
    show: async (page) => {
      await ask(page, 'When will it be full?');
      await type(page, 'water then, below the edge', '400 m');
      await type(page, 'bucket of hose', '11 gpm');
      await type(page, 'fill mark, below the edge', HALF);
      await type(page, 'hose opened at', '25:00');
      await alerts(page, 4);
    },
    leave: (page) => ask(page, first),
  },
  {
    name: 'wrong-ruler',
    show: async (page) => {
      await unfold(page, 'what a ruler shows');
      await type(page, 'The water over ‘broad stone’: reading', '400 m');
      await type(page, 'The water over ‘corner stone’: reading', HALF);
      await type(page, 'The top feed into a bucket: seconds', '11 gpm');
      await alerts(page, 3);
    },
  },
  {
    name: 'wrong-setting',
    show: async (page) => {
      await unfold(page, 'set the valves');
      await page.getByRole('region', { name: 'How the valves are set' }).waitFor();
      await type(page, 'share of the water through the bottom feed', '400 m');
      await type(page, 'water over the stone', HALF);
      await type(page, 'rod reading on the benchmark', '11 gpm');
      await alerts(page, 3);
    },
  },
  {
    name: 'wrong-sheet',
    show: async (page) => {
      await page.locator('details.site > summary').click();
      await page.getByRole('button', { name: 'setting-out sheet and owner’s card' }).click();
      await page.getByRole('textbox', { name: 'its height over the edge' }).fill('11 gpm');
      await page.getByRole('textbox', { name: 'the rod reads on it' }).fill(HALF);
    },
  },
];
