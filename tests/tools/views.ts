/** Every view the page has, once: what the pictures show and what is checked for accessibility. */
import type { Page } from '@playwright/test';
import type { Look } from '../../web/state/look.ts';
import { isWhole, type View } from './views/hand.ts';
import { keptViews } from './views/kept.ts';
import { mapViews } from './views/map.ts';
import { ownViews } from './views/own.ts';
import { siteViews } from './views/site.ts';
import { wrongViews } from './views/wrong.ts';

export { openFile, type View } from './views/hand.ts';

/** By what they are about: each room is gone through in a test of its own, from a browser that has kept nothing. */
export const rooms: Readonly<Record<string, readonly View[]>> = {
  'a site': siteViews,
  'a site of one’s own': ownViews,
  'wrong texts': wrongViews,
  'all settings': mapViews,
  'what is kept': keptViews,
};

/** The windows of a phone, a tablet and a desk, px. */
export const SIZES = [
  [360, 640],
  [820, 900],
  [1440, 900],
] as const;

export const views: readonly View[] = Object.values(rooms).flat();

/** Every page opened from now on stands in a look. */
export async function lookIn(page: Page, look: Look): Promise<void> {
  await page.addInitScript((kept) => {
    if (location.protocol !== 'about:') localStorage.setItem('tumblebay look', kept);
  }, look);
}

/** A page is whole once its answer in full, its plots and its fonts are there. */
export async function openCourtyard(page: Page, address = './#courtyard'): Promise<void> {
  // From an address that differs in its hash alone nothing is loaded anew.
  await page.goto('about:blank');
  await page.goto(address);
  await page.locator('tb-plots path.subject').first().waitFor();
  await page.locator('tb-checks .check').first().waitFor();
  await isWhole(page);
  await page.evaluate(() => document.fonts.ready);
}
