/** What is told of the keeping of sites, and a site that is shared. */
import type { Page } from '@playwright/test';
import { isWhole, openFile, scenario, type, type View } from './hand.ts';

const SITE = 'tumblebay site ';

const heard = (name: string, words: string, show: (page: Page) => Promise<void>, press?: string): View => {
  const told = (page: Page) => page.getByRole('status').filter({ hasText: words });
  return {
    name: `told-${name}`,
    show: async (page) => {
      await show(page);
      await told(page).waitFor();
      await isWhole(page);
    },
    ...(press !== undefined && { leave: (page: Page) => told(page).getByRole('button', { name: press }).click() }),
  };
};

/** An address that is put in by hand, or followed from a message. */
const follow = (page: Page, hash: string): Promise<void> =>
  page.evaluate((to) => {
    location.hash = to;
  }, hash);

/** A text as another tab, or a version of the page, leaves it in the browser; null: it takes it away. */
const leaveThere = (page: Page, key: string, text: string | null): Promise<void> =>
  page.evaluate(
    ([at, left]) => {
      if (left === null) localStorage.removeItem(at);
      else localStorage.setItem(at, left);
      dispatchEvent(new StorageEvent('storage', { key: at, newValue: left }));
    },
    [key, text] as const,
  );

/** An edit, by which the demo becomes a site kept here; its key and its text. */
async function keptSite(page: Page): Promise<{ key: string; text: string }> {
  await type(page, 'fill mark', '-95 mm');
  const id = await page.waitForFunction(() => /^#own=(.+)/.exec(location.hash)?.[1]);
  const key = SITE + (await id.jsonValue());
  return { key, text: await page.evaluate((at) => localStorage.getItem(at) ?? '', key) };
}

/** From now on the browser takes no site more. */
const fillUp = (page: Page): Promise<void> =>
  page.evaluate((site) => {
    const { setItem } = Storage.prototype;
    Storage.prototype.setItem = function (key: string, text: string): void {
      if (key.startsWith(site)) throw new DOMException('full', 'QuotaExceededError');
      setItem.call(this, key, text);
    };
  }, SITE);

export const keptViews: readonly View[] = [
  {
    name: 'share',
    show: async (page) => {
      await page.getByRole('button', { name: 'share' }).click();
      await page.getByRole('textbox', { name: 'the link' }).waitFor();
    },
    leave: (page) => page.getByRole('region', { name: 'Share' }).getByRole('button', { name: 'close' }).click(),
  },
  heard('cut', 'The link is not whole', (page) => follow(page, '#s=1.d.abc.cut')),
  heard('newer', 'made by a newer version', (page) => follow(page, '#s=2.d.abc.new')),
  heard('gone', 'is not kept in this browser', (page) => follow(page, '#own=nobody')),
  heard('file', 'Nothing was opened', (page) => openFile(page, 'photo.json', 'no site at all'), 'good'),
  heard(
    'damaged',
    'is damaged and cannot be read',
    (page) => leaveThere(page, `${SITE}torn`, '{"version":1,"id":"to'),
    'let it go',
  ),
  heard('later', 'edited by a newer version', (page) => leaveThere(page, `${SITE}later`, '{"version":7}'), 'let it go'),
  heard('full', 'This browser keeps no more', async (page) => {
    await fillUp(page);
    await type(page, 'fill mark', '-95 mm');
  }),
  heard('deleted', 'was deleted in another tab', async (page) => {
    const { key } = await keptSite(page);
    await leaveThere(page, key, null);
  }),
  heard('elsewhere', 'was edited in another tab', async (page) => {
    const { key, text } = await keptSite(page);
    await leaveThere(page, key, text.replace(/"stamp":"[^"]*"/, '"stamp":"another"'));
  }),
  {
    name: 'sites-own',
    show: async (page) => {
      for (const title of ['Gate pond', 'Behind the shed, with the long stream to the gate']) {
        const site = { ...JSON.parse(scenario('courtyard')), title };
        await openFile(page, `${title}.json`, JSON.stringify(site));
        await page.getByRole('heading', { level: 1, name: title }).waitFor();
        await isWhole(page);
      }
      await page.locator('details.site > summary').click();
      await page.getByRole('button', { name: 'delete Gate pond' }).click();
    },
  },
];
