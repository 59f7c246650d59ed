/**
 * `npm run shots`: a picture of every view of the built page in web/pictures/, at the widths of a phone, a tablet and a
 * desk, in every look: page-VIEW-WIDTH-LOOK.png. With names of views, of those alone: `npm run shots -- stop filter`.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import { type Look, looks } from '../../web/state/look.ts';
import { chromiumPath } from './chromium.ts';
import { lookIn, openCourtyard, SIZES, type View, views } from './views.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const pictures = join(root, 'web/pictures');

type Size = (typeof SIZES)[number];

/** What is further down than this is left out, px. */
const TALLEST = 2600;
/** Words find their seats, and time begins to run, ms. */
const SETTLING = 400;

/** A desk's first screen is shown as it stands; everything else as it is scrolled. */
async function shoot(page: Page, { name }: View, [width, height]: Size, look: Look): Promise<void> {
  await page.waitForTimeout(SETTLING);
  const whole = await page.evaluate(() => document.documentElement.scrollHeight);
  const first = width === 1440 && name === 'stop';
  await page.screenshot({
    path: join(pictures, `page-${name}-${width}-${look}.png`),
    fullPage: true,
    clip: { x: 0, y: 0, width, height: first ? height : Math.min(whole, TALLEST) },
  });
}

async function shootAll(browser: Browser, address: string, size: Size, look: Look, shown: readonly View[]) {
  const page = await browser.newPage({ viewport: { width: size[0], height: size[1] } });
  await lookIn(page, look);
  await openCourtyard(page, address);
  for (const view of shown) {
    await view.show(page);
    await shoot(page, view, size, look);
    if (view.leave) await view.leave(page);
    else await openCourtyard(page, address);
  }
  await page.close();
}

const chosen = process.argv.slice(2);
const shown = views.filter(({ name }) => chosen.length === 0 || chosen.includes(name));
mkdirSync(pictures, { recursive: true });
const server = await preview({
  configFile: join(root, 'web/vite.config.ts'),
  logLevel: 'silent',
  preview: { port: 4274 },
});
const browser = await chromium.launch({ executablePath: chromiumPath() });
try {
  const address = `${server.resolvedUrls?.local[0] ?? ''}#courtyard`;
  for (const size of SIZES) await Promise.all(looks.map((look) => shootAll(browser, address, size, look, shown)));
  console.log(`${shown.length * SIZES.length * looks.length} pictures in web/pictures`);
} finally {
  await browser.close();
  await server.close();
}
