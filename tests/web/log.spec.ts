import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const FALLS = `2031-06-02 08:00, 110 mm, on
2031-06-03 08:00, 128 mm, on
2031-06-03 09:00, 92 mm, off
2031-06-04 09:00, 95 mm, off
2031-06-04 10:00, 133 mm, on
2031-06-05 08:00, 149 mm, on
2031-06-06 08:00, 168 mm, on`;

const field = (page: Page) => page.getByRole('textbox', { name: 'The pond’s level, a line for each reading' });
const said = (page: Page) => page.getByRole('region', { name: 'What the log says' });
const wrong = (page: Page) => page.getByRole('status', { name: 'What is wrong in the log' });

async function open(page: Page, site = 'courtyard'): Promise<void> {
  await page.goto(`./#${site}`);
  await unfold(page);
}

async function unfold(page: Page): Promise<void> {
  await page.locator('summary', { hasText: 'is it leaking?' }).click();
  await expect(field(page)).toBeVisible();
}

test('a log tells how much is lost and where to look, in both systems of units, with its plot', async ({ page }) => {
  await open(page);
  await field(page).fill(FALLS);
  await expect(said(page)).toContainText(
    /It loses \d+ mm a day more than evaporation and splash explain: some \d+ L a day/,
  );
  await expect(said(page)).toContainText('so look at the falls and the stream first');
  await expect(said(page).locator('circle.dot')).toHaveCount(7);
  await page.getByRole('button', { name: 'inches and gallons' }).click();
  await expect(said(page)).toContainText(/It loses 0\.\d\d in a day .*: some \d+ gal a day/);
});

test('what can’t be read is told by its line, which a press marks; nothing typed is lost', async ({ page }) => {
  await open(page);
  const text = `${FALLS}\n06.06. 9:00, 170 mm\n2031-06-07 08:00, 187 L`;
  await field(page).fill(text);
  await expect(wrong(page).getByRole('listitem')).toHaveCount(2);
  await expect(wrong(page)).toContainText('day and month can be read two ways');
  await wrong(page).getByRole('button', { name: 'line 9' }).press('Enter');
  await expect(field(page)).toBeFocused();
  const marked = await field(page).evaluate((each: HTMLTextAreaElement) =>
    each.value.slice(each.selectionStart, each.selectionEnd),
  );
  expect(marked).toBe('2031-06-07 08:00, 187 L');
  await expect(field(page)).toHaveValue(text);
  await expect(said(page)).toContainText('It loses');
});

test('a log survives a reload, also where its demo becomes a site of one’s own, and stays with its site', async ({
  page,
}) => {
  await open(page);
  await field(page).fill(FALLS);
  await expect(said(page)).toContainText('It loses');
  await page.reload();
  await unfold(page);
  await expect(field(page)).toHaveValue(FALLS);
  await page.locator('summary', { hasText: 'set the valves' }).click();
  const half = page.getByRole('textbox', { name: 'share of the water through the bottom feed' });
  await half.fill('half');
  await half.press('Tab');
  await page.getByRole('button', { name: 'put these into the site' }).click();
  await expect(page).toHaveURL(/#own=/);
  await page.reload();
  await unfold(page);
  await expect(field(page)).toHaveValue(FALLS);
  await page.goto('about:blank');
  await open(page, 'low-edge');
  await expect(field(page)).toHaveValue('');
  await page.evaluate(() => localStorage.setItem('tumblebay log demo storm', '{"version":1,"te'));
  await page.goto('about:blank');
  await open(page, 'storm');
  await expect(page.getByText('The log that was kept here is damaged')).toBeVisible();
  await expect(field(page)).toHaveValue('{"version":1,"te');
});

test('a browser that keeps no more says so, and the log can be saved', async ({ page }) => {
  await open(page);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await field(page).fill(FALLS);
  await expect(page.getByText('This browser keeps no more: the log will be gone after a reload')).toBeVisible();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save the log' }).click();
  expect((await saving).suggestedFilename()).toBe('pond-log.txt');
});

test('a log is opened from a file; a file of another program and an endless one are told', async ({ page }) => {
  await open(page);
  const give = (name: string, text: string) =>
    page.locator('tb-log input[type=file]').setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  await give('log.csv', FALLS.replaceAll(',', ';').replaceAll('\n', '\r\n'));
  await expect(said(page)).toContainText('It loses');
  await give('site.json', '{"title": "a site"}');
  await expect(wrong(page)).toContainText('JSON, no log');
  await give('long.txt', 'x'.repeat(600_000));
  await expect(page.getByText('‘long.txt’ is longer than any log. Nothing was opened.')).toBeVisible();
});

test('levels on a ruler in the water are read the other way round', async ({ page }) => {
  await open(page);
  await field(page).fill('0 d, 400 mm, on\n1 d, 385 mm\n2 d, 368 mm\n3 d, 352 mm');
  await expect(said(page)).toContainText('Was it read on a ruler that stands in the water');
  await page.getByRole('button', { name: 'on a ruler in the water' }).click();
  await expect(said(page)).toContainText(/It loses \d/);
  await field(page).fill('0 d, 400 mm, on\n1 d, 385 mm');
  await expect(wrong(page)).toContainText('three readings or more');
});

for (const screen of screens) {
  test(`hinders nobody in ${screen.look} at ${screen.width} px, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await open(page);
    await field(page).fill(`${FALLS}\nwet`);
    await expect(said(page)).toBeVisible();
    await page.locator('tb-log summary', { hasText: 'how a log is written' }).click();
    await hindersNobody(page, 'tb-log');
  });
}
