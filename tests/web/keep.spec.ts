import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { openCourtyard, openFile } from '../tools/views.ts';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';
import { commandAnswers, siteText } from './sites.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' }, serviceWorkers: 'block' });

const mark = (page: Page) => page.getByRole('textbox', { name: 'fill mark' });
const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const says = (page: Page) => page.getByRole('region', { name: 'The whole answer' }).locator('.says');
const own = (page: Page) => page.getByRole('group', { name: 'Your own' });
const sheet = (page: Page) => page.locator('details.site > summary').click();

async function setMark(page: Page, to: string): Promise<void> {
  await mark(page).fill(to);
  await mark(page).press('Enter');
}

const keptSites = (page: Page): Promise<string[]> =>
  page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('tumblebay site ')));
const isKept = (page: Page, words: string): Promise<boolean> =>
  page.evaluate((words) => Object.values(localStorage).some((text) => String(text).includes(words)), words);

test('a demo becomes a copy when it is edited, and stays a demo', async ({ page }) => {
  await page.goto('./#courtyard');
  await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  expect(await keptSites(page)).toEqual([]);
  await setMark(page, '-95 mm');
  await expect.poll(() => keptSites(page)).toHaveLength(1);
  expect(page.url()).toContain('#own=');
  await sheet(page);
  await page
    .getByRole('group', { name: 'Sites' })
    .getByRole('button', { name: 'Courtyard spring', exact: true })
    .click();
  await expect(mark(page)).toHaveValue('−110 mm');
  await sheet(page);
  await own(page).getByRole('button', { name: 'Courtyard spring', exact: true }).click();
  await expect(mark(page)).toHaveValue('−95 mm');
});

test('a reload in mid-edit, and the browser closed, lose nothing: the site, its steps back and forward', async ({
  page,
  context,
}) => {
  await page.goto('./#courtyard');
  for (const each of ['-90 mm', '-95 mm', '-85 mm']) {
    await setMark(page, each);
    await expect(mark(page)).toHaveValue(each.replace('-', '−'));
  }
  await page.getByRole('button', { name: 'undo' }).click();
  await expect(mark(page)).toHaveValue('−95 mm');
  await page.reload();
  await expect(mark(page)).toHaveValue('−95 mm');
  await page.getByRole('button', { name: 'redo' }).click();
  await expect(mark(page)).toHaveValue('−85 mm');
  await page.close();

  const next = await context.newPage();
  await next.goto('./');
  await expect(mark(next)).toHaveValue('−85 mm');
  for (const each of ['−95 mm', '−90 mm', '−110 mm']) {
    await next.getByRole('button', { name: 'undo' }).click();
    await expect(mark(next)).toHaveValue(each);
  }
});

test('sites are begun, named, copied, deleted and brought back', async ({ page }) => {
  await page.goto('./#courtyard');
  await sheet(page);
  await page.getByRole('button', { name: 'begin a new site' }).click();
  await expect(heading(page)).toHaveText('My site');
  await sheet(page);
  await page.getByRole('textbox', { name: 'its name' }).fill('Behind the shed');
  await page.getByRole('textbox', { name: 'its name' }).press('Enter');
  await expect(heading(page)).toHaveText('Behind the shed');
  await page.getByRole('button', { name: 'make a copy' }).click();
  await expect(heading(page)).toHaveText('Behind the shed, a copy');
  await sheet(page);
  await page.getByRole('button', { name: 'delete Behind the shed, a copy' }).click();
  await expect(heading(page)).toHaveText('Courtyard spring');
  await page.getByRole('button', { name: 'bring it back' }).click();
  await expect(heading(page)).toHaveText('Behind the shed, a copy');
  await sheet(page);
  await expect(own(page).getByRole('button', { name: /^Behind the shed/ })).toHaveCount(2);
});

test('a file that is dropped is opened; the same file again is the site it became', async ({ page }) => {
  await page.goto('./#courtyard');
  await expect(says(page)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  const text = siteText('courtyard').replace('Courtyard spring', 'Dropped');
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'dropped.json'));
    return transfer;
  }, text);
  await page.locator('tb-page').dispatchEvent('drop', { dataTransfer: data });
  await expect(heading(page)).toHaveText('Dropped');
  await openFile(page, 'dropped.json', text);
  await expect(heading(page)).toHaveText('Dropped');
  expect(await keptSites(page)).toHaveLength(1);
  await sheet(page);
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save the file' }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toBe('dropped.json');
  expect(JSON.parse(await readFile(await download.path(), 'utf8'))).toEqual(JSON.parse(text));
});

test('a full store is told at once, and the site can be saved', async ({ page }) => {
  await page.addInitScript(() => {
    const { setItem } = Storage.prototype;
    Storage.prototype.setItem = function (key: string, text: string) {
      if (key.startsWith('tumblebay site')) throw new DOMException('full', 'QuotaExceededError');
      setItem.call(this, key, text);
    };
  });
  await page.goto('./#courtyard');
  await setMark(page, '-95 mm');
  const told = page.getByText('This browser keeps no more');
  await expect(told).toBeVisible();
  const waiting = page.waitForEvent('download');
  await told.getByRole('button', { name: 'save the file' }).click();
  expect(await readFile(await (await waiting).path(), 'utf8')).toContain('-95 mm');
});

test('damaged sites and those of a newer version are told, saved and let go; the sound ones stand', async ({
  page,
}) => {
  await page.goto('./#courtyard');
  await setMark(page, '-95 mm');
  await expect.poll(() => keptSites(page)).toHaveLength(1);
  await page.evaluate(() => {
    localStorage.setItem('tumblebay site torn', '{"version":1,"id":"to');
    localStorage.setItem('tumblebay site later', '{"version":7}');
  });
  await page.reload();
  await expect(mark(page)).toHaveValue('−95 mm');
  await expect(page.getByText('edited by a newer version of this page')).toBeVisible();
  const told = page.getByText('A site kept in this browser is damaged');
  const waiting = page.waitForEvent('download');
  await told.getByRole('button', { name: 'save it as a file' }).click();
  expect(await readFile(await (await waiting).path(), 'utf8')).toBe('{"version":1,"id":"to');
  await told.getByRole('button', { name: 'let it go' }).click();
  await expect(told).toBeHidden();
  expect(await isKept(page, '{"version":7}')).toBe(true);
});

test('of two tabs neither writes over the other: both are kept, and it is told', async ({ page, context }) => {
  await page.goto('./#courtyard');
  await setMark(page, '-95 mm');
  await expect.poll(() => keptSites(page)).toHaveLength(1);
  const other = await context.newPage();
  await other.goto(page.url());
  await expect(mark(other)).toHaveValue('−95 mm');

  await setMark(page, '-90 mm');
  await expect(other.getByText('This site was edited in another tab.')).toBeVisible();
  await setMark(other, '-80 mm');
  await expect(other.getByText('Both are kept')).toBeVisible();
  await expect.poll(() => keptSites(page)).toHaveLength(2);
  await expect(heading(other)).toHaveText('Courtyard spring, from the other tab');
  await expect(mark(other)).toHaveValue('−80 mm');
  await other.getByRole('button', { name: 'show the other tab’s' }).click();
  await expect(mark(other)).toHaveValue('−90 mm');
  await expect(mark(page)).toHaveValue('−90 mm');
});

test('a link carries the case into a clean profile, which answers the same; edited, it is kept', async ({
  page,
  browser,
  baseURL,
}) => {
  await page.goto('./#courtyard');
  await setMark(page, '-95 mm');
  await page.getByRole('button', { name: 'inches and gallons' }).click();
  await page.getByRole('button', { name: 'share' }).click();
  const link = await page.getByRole('textbox', { name: 'the link' }).inputValue();
  await expect(page.locator('tb-whole-answer.pending')).toHaveCount(0);
  const figures = await says(page).textContent();

  const clean = await browser.newContext({ reducedMotion: 'reduce', serviceWorkers: 'block' });
  const there = await clean.newPage();
  await there.goto(link);
  await expect(says(there)).toHaveText(figures!);
  expect(figures).toMatch(/ in\b/);
  expect(await keptSites(there)).toEqual([]);
  await there.reload();
  await expect(says(there)).toHaveText(figures!);
  await setMark(there, '-4 in');
  await expect.poll(() => keptSites(there)).toHaveLength(1);

  await there.goto('about:blank');
  await there.goto(link.slice(0, -20));
  await expect(there.getByText('The link is not whole')).toBeVisible();
  await expect(says(there)).toHaveText(commandAnswers('courtyard').checks[0]!.says);
  await there.goto(`${baseURL}#s=9.new`);
  await expect(there.getByText('made by a newer version')).toBeVisible();
  await clean.close();
});

test('a link about the filling opens on the filling', async ({ page, browser }) => {
  const drawn = (of: Page): Promise<string> => of.locator('tb-plots').evaluate((plots) => Reflect.get(plots, 'trial'));
  await page.goto('./#courtyard');
  await page.getByRole('button', { name: 'When will it be full?' }).click();
  await expect.poll(() => drawn(page)).toBe('filling');
  await page.getByRole('button', { name: 'share' }).click();
  const link = await page.getByRole('textbox', { name: 'the link' }).inputValue();
  const clean = await browser.newContext({ reducedMotion: 'reduce', serviceWorkers: 'block' });
  const there = await clean.newPage();
  await there.goto(link);
  await expect.poll(() => drawn(there)).toBe('filling');
  await clean.close();
});

test('the link is put on the clipboard', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('./#courtyard');
  await page.getByRole('button', { name: 'share' }).click();
  await expect(page.getByText('The link is on the clipboard.')).toBeVisible();
  const link = await page.getByRole('textbox', { name: 'the link' }).inputValue();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(link);
  await page.getByRole('button', { name: 'close' }).click();
  await expect(page.getByRole('region', { name: 'Share' })).toBeHidden();
});

for (const screen of screens.filter(({ width }) => width === 360)) {
  test(`what keeping shows is sound for screen readers, and for thumbs, in ${screen.look}`, async ({ page }) => {
    await standIn(page, screen);
    await openCourtyard(page);
    await setMark(page, '-95 mm');
    await expect.poll(() => keptSites(page)).toHaveLength(1);
    await page.evaluate(() => localStorage.setItem('tumblebay site torn', '{'));
    await page.getByRole('button', { name: 'share' }).click();
    await expect(page.getByRole('region', { name: 'Share' })).toBeVisible();
    for (const each of [async () => {}, () => sheet(page)]) {
      await each();
      await hindersNobody(page, '.sheet, .share, .caution');
    }
  });
}
