import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from '@playwright/test';
import { test as base, expect } from '@playwright/test';
import { commandAnswers, siteNames } from './sites.ts';

/** Serves the built page, as of one build or of a later one. */
interface Host {
  readonly address: string;
  /** From now on the page is another build's. */
  renew(): void;
  /** From now on there is no network. */
  down(): Promise<void>;
}

/** A file as another build has it: one with another title, and so of another version. */
function later(path: string, bytes: Buffer, build: number): Buffer | string {
  if (/^\/(index\.html)?$/.test(path)) return bytes.toString().replace('<title>tumblebay<', `<title>build ${build}<`);
  if (path === '/offline.js') return bytes.toString().replace(/(["`])[0-9a-f]{16}\1/, `"build ${build}"`);
  return bytes;
}

const test = base.extend<{ host: Host }>({
  host: async ({ baseURL }, use) => {
    let build = 1;
    const server: Server = createServer(async (request, response) => {
      const from = await fetch(new URL(`.${request.url}`, baseURL));
      const bytes = Buffer.from(await from.arrayBuffer());
      const body = build === 1 ? bytes : later(request.url ?? '', bytes, build);
      response.writeHead(from.status, { 'content-type': from.headers.get('content-type') ?? 'text/plain' }).end(body);
    });
    await new Promise<void>((resolve) => server.listen(0, 'localhost', resolve));
    const down = async (): Promise<void> => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    };
    const renew = (): void => {
      build += 1;
    };
    const { port } = server.address() as AddressInfo;
    await use({ address: `http://localhost:${port}/`, renew, down });
    if (server.listening) await down();
  },
});

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const mark = (page: Page) => page.getByRole('textbox', { name: 'fill mark' });
const says = (page: Page) => page.getByRole('region', { name: 'The whole answer' }).locator('.says');
const other = siteNames.find((name) => name !== 'courtyard')!;

async function setMark(page: Page, to: string): Promise<void> {
  await mark(page).fill(to);
  await mark(page).press('Enter');
}

/** The page has been kept, and what it asks for is served from there. */
const isKept = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');

test('after one visit the page opens without a network, answers what is changed, and shows another site', async ({
  page,
  context,
  host,
}) => {
  await page.goto(`${host.address}#courtyard`);
  await isKept(page);
  await host.down();
  await context.setOffline(true);
  await page.reload();
  await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  await setMark(page, '-60 mm');
  await expect(says(page)).not.toHaveText(commandAnswers('courtyard').checks[0]!.says);
  await page.workers()[0]!.evaluate(() => self.close());
  await page.locator('details.site > summary').click();
  await page
    .getByRole('group', { name: 'Sites' })
    .getByRole('button', { name: commandAnswers(other).title, exact: true })
    .click();
  await expect(says(page)).toHaveText(commandAnswers(other).checks[0]!.says);
  await page.close();
  const next = await context.newPage();
  await next.goto(host.address);
  await expect(says(next)).toHaveText(commandAnswers(other).checks[0]!.says);
});

test('a new version waits until it is asked for, saves first, and is then the one that opens', async ({
  page,
  host,
}) => {
  await page.goto(`${host.address}#courtyard`);
  await isKept(page);
  host.renew();
  await page.reload();
  await expect(page.getByText('A new version of this page is here.')).toBeVisible();
  await expect(page).toHaveTitle('tumblebay');
  await page.reload();
  await expect(page).toHaveTitle('tumblebay');
  await expect(page.getByText('A new version of this page is here.')).toBeVisible();
  await setMark(page, '-95 mm');
  await page.getByRole('button', { name: 'use the new version' }).click();
  await expect(page).toHaveTitle('build 2');
  await expect(mark(page)).toHaveValue('−95 mm');
  await expect(page.getByText('A new version of this page is here.')).toBeHidden();
});

test('everything that is kept for use without a network is there, and the page can be installed', async ({
  page,
  host,
}) => {
  await page.goto(`${host.address}#courtyard`);
  await isKept(page);
  const kept = await page.evaluate(async () => {
    const [name] = await caches.keys();
    return (await (await caches.open(name!)).keys()).map(({ url }) => new URL(url).pathname);
  });
  for (const needed of [
    /^\/index\.html$/,
    /worker-.*\.js$/,
    /index-.*\.css$/,
    /400-italic.*\.woff2$/,
    /manifest/,
    /mark-512\.png$/,
  ])
    expect(
      kept.filter((each) => needed.test(each)),
      String(needed),
    ).not.toEqual([]);
  const manifest = await (await page.request.get(`${host.address}manifest.webmanifest`)).json();
  expect(manifest).toMatchObject({ name: 'tumblebay', start_url: './', display: 'standalone' });
  for (const { src, sizes } of manifest.icons) {
    const size = await page.evaluate(async (src) => {
      const picture = new Image();
      picture.src = src;
      await picture.decode();
      return `${picture.naturalWidth}x${picture.naturalHeight}`;
    }, src);
    expect(size).toBe(sizes);
  }
});
