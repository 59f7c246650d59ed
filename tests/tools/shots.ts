/**
 * `npm run shots`: pictures of the built page in web/pictures/, at the widths of a phone, a tablet and a desk, in every
 * look. With a site's name, of that site: `npm run shots -- storm`.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import { type Look, looks } from '../../web/state/look.ts';
import { chromiumPath } from './chromium.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const pictures = join(root, 'web/pictures');
/** Width and greatest height, px: a phone's and a tablet's page as it is scrolled, a desk's as it stands there. */
const SIZES = [
  [360, 2400],
  [820, 2400],
  [1440, 900],
] as const;

/** The page is whole once its plots are drawn and its fonts are there. */
async function settled(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.locator('tb-plots path.subject').first().waitFor();
  await page.evaluate(() => document.fonts.ready);
}

/** A page of its own for each picture: what is resized or repainted under a look would not be what a visitor sees. */
async function shoot(
  browser: Browser,
  address: string,
  [width, tallest]: readonly [number, number],
  look: Look,
): Promise<void> {
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  await page.addInitScript((chosen) => localStorage.setItem('tumblebay look', chosen), look);
  await settled(page, address);
  const whole = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: Math.min(whole, tallest) });
  await page.waitForTimeout(500);
  await page.screenshot({ path: join(pictures, `page-${width}-${look}.png`) });
  await page.close();
}

mkdirSync(pictures, { recursive: true });
const server = await preview({
  configFile: join(root, 'web/vite.config.ts'),
  logLevel: 'silent',
  preview: { port: 4274 },
});
const browser = await chromium.launch({ executablePath: chromiumPath() });
try {
  const address = `${server.resolvedUrls?.local[0] ?? ''}#${process.argv[2] ?? 'courtyard'}`;
  for (const size of SIZES) for (const look of looks) await shoot(browser, address, size, look);
} finally {
  await browser.close();
  await server.close();
}
