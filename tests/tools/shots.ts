/**
 * `npm run shots`: pictures of the built page in web/pictures/, at the widths of a phone, a tablet and a desk, in light
 * and dark. With a site's name, of that site: `npm run shots -- storm`.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
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
  await page.locator('tb-strip path.line').first().waitFor();
  await page.evaluate(() => document.fonts.ready);
}

async function shoot(page: Page, [width, tallest]: readonly [number, number], scheme: 'light' | 'dark'): Promise<void> {
  await page.setViewportSize({ width, height: 900 });
  await page.emulateMedia({ colorScheme: scheme });
  const whole = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: Math.min(whole, tallest) });
  await page.screenshot({ path: join(pictures, `page-${width}-${scheme}.png`) });
}

mkdirSync(pictures, { recursive: true });
const server = await preview({
  configFile: join(root, 'web/vite.config.ts'),
  logLevel: 'silent',
  preview: { port: 4274 },
});
const browser = await chromium.launch({ executablePath: chromiumPath() });
try {
  const page = await browser.newPage();
  await settled(page, `${server.resolvedUrls?.local[0] ?? ''}#${process.argv[2] ?? 'courtyard'}`);
  for (const size of SIZES) for (const scheme of ['light', 'dark'] as const) await shoot(page, size, scheme);
} finally {
  await browser.close();
  await server.close();
}
